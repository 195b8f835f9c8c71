import { Chance } from './chance'
import { spoiltFile } from './files'
import { judgeFile, judgeText, type Step } from './judge'
import { spoiltText } from './texts'

export const kinds = ['texts', 'files'] as const
export type Kind = (typeof kinds)[number]

export interface FuzzCase {
  /** The text that is read, to be shown where it fails. */
  readonly input: string
  /** What it is read for, where that is not in the text. */
  readonly settings: string
  /** Throws where something comes of it that must not; true: it was of use. */
  readonly run: (step: Step) => boolean
}

/** The case of this number: the same whenever it is asked for. */
export function caseOf(kind: Kind, seed: number, index: number): FuzzCase {
  const chance = new Chance(seed, index)
  // What takes long is done to every fourth.
  const long = index % 4 === 0
  if (kind === 'files') {
    const input = spoiltFile(chance)
    return { input, settings: '', run: (step) => judgeFile(input, long, step) }
  }
  const one = spoiltText(chance)
  return {
    input: one.text,
    settings: JSON.stringify(one.settings),
    run: (step) => {
      judgeText(one, long, step)
      return true
    },
  }
}
