import type { Layout } from '../../../pattern/layout'
import { widthOf, type Item, type WordItem } from './hunks'

/** Words and chart fill the pegs with repeats of other widths. */
export interface OtherRepeat {
  /** Pegs that a repeat takes, and how often it is worked. */
  readonly words: { readonly pegs: number; readonly times: number }
  readonly chart: { readonly pegs: number; readonly times: number }
  /** Pegs from the start of the repeat on that both work alike, and how each goes on to its end. */
  readonly alike: number
  readonly rests: { readonly words: readonly Item[]; readonly chart: readonly Item[] }
}

/** The stitches of the words up to where the same words are worked again, over and over; null: they are not. */
function repeatOf(words: readonly WordItem[]): readonly WordItem[] | null {
  const [first] = words
  const left = words.findIndex(({ range }) => range.from !== first?.range.from)
  const back = words.findIndex(({ range }, at) => at > left && range.from === first?.range.from)
  if (left < 0 || back < 0 || words.length % back !== 0) return null
  const isAgain = words.every(
    ({ range, letter }, at) =>
      range.from === words[at % back]?.range.from && letter === words[at % back]?.letter,
  )
  return isAgain ? words.slice(0, back) : null
}

/**
 * Are the words one repeat, the chart another one of a width that neither holds the other's nor lies in it?
 * Then stitch by stitch nearly everything differs, and the one thing that does is the repeat.
 */
export function otherRepeat(
  words: readonly WordItem[],
  chart: readonly Item[],
  { copies, copyRuns }: Layout,
): OtherRepeat | null {
  const own = repeatOf(words)
  const [copy] = copyRuns
  if (!own || !copy || copies < 2) return null
  const [wide, width] = [widthOf(own), copy.to - copy.from + 1]
  if (wide % width === 0 || width % wide === 0 || widthOf(chart) !== copies * width) return null
  let alike = 0
  while (alike < own.length && own[alike]?.letter === chart[alike]?.letter) alike++
  const same = widthOf(own.slice(0, alike))
  let [end, pegs] = [alike, same]
  while (pegs < width) pegs += chart[end++]?.stitch.width ?? width
  return {
    words: { pegs: wide, times: words.length / own.length },
    chart: { pegs: width, times: copies },
    alike: same,
    rests: { words: own.slice(alike), chart: chart.slice(alike, Math.max(alike, end)) },
  }
}
