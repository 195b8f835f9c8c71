import { excerpt } from '../../pattern/excerpt'

/**
 * No fault but the browser's note that sizes it told of changed something's size again: it tells of
 * that in the next frame.
 */
const browsersNote = /^(?:Uncaught )?(?:Error: )?ResizeObserver loop\b/

/**
 * What the window tells of a mistake of the program, as people are told; null where it is none.
 * `reason` is an error event, or what a promise was refused with.
 */
export function programFault(reason: unknown, keeping: string): string | null {
  const said =
    reason instanceof ErrorEvent || reason instanceof Error ? reason.message : String(reason)
  return browsersNote.test(said) ? null : `This did not work (${excerpt(said)}). ${keeping}`.trim()
}
