import type * as parts from '../../words/reader'

/** What reads and compares words is large, and the first picture of the bench needs it not: it comes a moment later. */
export type Reader = typeof parts

let loaded = $state.raw<Reader | null>(null)
let missing = $state<string | null>(null)

/** The reader; null as long as it is not there. */
export const reader = (): Reader | null => loaded
/** Why there is no reader; null: there is one, or it is on its way. */
export const readerMissing = (): string | null => missing

/** Never rejects. */
export async function loadReader(): Promise<void> {
  try {
    loaded = await import('../../words/reader')
    missing = null
  } catch {
    missing = 'the part that reads words could not be fetched; reload the page'
  }
}
