import type { RowEnd } from '../../../loom/row'
import type { Run } from '../../../pattern/pattern'
import type { Terms } from '../../../languages/terms'
import type { Stitch } from '../../../stitches/stitch'
import { isCounted } from '../../tokens'
import type { Item } from '../within/hunks'
import type { OtherRepeat } from '../within/otherRepeat'
import type { Path } from '../within/path'
import type { Differing } from '../within/row'
import { termOf } from '../../../languages/languages'
import { someListed } from '../../read/rows/wordsOfRows'
import { pegsNamed } from '../../../languages/english/pegs'

/** "pegs 3-4, 7-8 and 11-12"; of very many only the first are named. */
export function placesNamed(places: readonly Run[]): string {
  const [first] = places
  if (!first) return 'no peg'
  if (places.length === 1) return pegsNamed(first)
  const names = places.map(({ from, to }) =>
    from === to ? `${from + 1}` : `${from + 1}-${to + 1}`,
  )
  return `pegs ${someListed(names, (count) => `${count} more places`)}`
}

/** "k2, p1, k2tog", cut short where there are very many. */
export function stitchesNamed(stitches: readonly Stitch[], terms: Terms): string {
  const runs: { stitch: Stitch; count: number }[] = []
  for (const stitch of stitches) {
    const last = runs.at(-1)
    if (last?.stitch === stitch) last.count++
    else runs.push({ stitch, count: 1 })
  }
  const names = runs.slice(0, 8).map(({ stitch, count }) => {
    const { abbr } = termOf(stitch, terms)
    if (isCounted(stitch, terms)) return `${abbr}${count}`
    return count === 1 ? abbr : `${count} times ${abbr}`
  })
  return `${names.join(', ')}${runs.length > names.length ? ' ...' : ''}`
}

const verbs: Readonly<Record<string, readonly [they: string, it: string]>> = {
  k: ['knit', 'knits'],
  p: ['purl', 'purls'],
  sl: ['slip', 'slips'],
}

/** What is done at one place, to follow "the words" and "the chart". */
function deed(items: readonly Item[], terms: Terms, person: 0 | 1, many: boolean): string {
  const [first] = items
  const alike = first && items.every(({ letter }) => letter === first.letter)
  const verb = alike && verbs[first.stitch.id]
  if (verb) return verb[person]
  const named = stitchesNamed(
    items.map(({ stitch }) => stitch),
    terms,
  )
  return `${person === 0 ? 'have' : 'has'} ${named}${many ? ' each time' : ''}`
}

/** "the words purl pegs 3-4, the chart knits them." */
export function stitchesDiffer(places: readonly Differing[], terms: Terms): string {
  const [first] = places
  if (!first) return ''
  const { words, chart } = first
  const many = places.length > 1
  const pegs = placesNamed(places.map((place) => place.pegs))
  const on = (deedDone: string) =>
    deedDone.startsWith('ha') ? `${deedDone} on ${pegs}` : `${deedDone} ${pegs}`
  if (words.length === 0) return `the chart ${on(deed(chart, terms, 1, many))}, the words do not.`
  const said = on(deed(words, terms, 0, many))
  if (chart.length === 0) {
    const more = stitchesNamed(
      words.map(({ stitch }) => stitch),
      terms,
    )
    return `the words have ${more} more than the chart${many ? ' each time' : ''}, at ${pegs}.`
  }
  const drawn = deed(chart, terms, 1, many)
  const them = drawn.startsWith('ha')
    ? ''
    : first.pegs.from === first.pegs.to && !many
      ? ' it'
      : ' them'
  return `the words ${said}, the chart ${drawn}${them}.`
}

/** "your words cover 35 pegs; the chart has 36. They first differ at peg 5: the words purl it, ..." */
export function countsDiffer(
  { words, chart }: { readonly words: number; readonly chart: number },
  [place]: readonly Differing[],
  terms: Terms,
): string {
  const counts = `your words cover ${words} ${words === 1 ? 'peg' : 'pegs'}; the chart has ${chart}`
  if (!place || (place.words.length === 0 && place.chart.length === 0)) return `${counts}.`
  const there = (done: string) => `${done} ${done.startsWith('ha') ? 'there' : 'it'}`
  const said =
    place.words.length > 0 ? `the words ${there(deed(place.words, terms, 0, false))}` : ''
  const drawn =
    place.chart.length > 0 ? `the chart ${there(deed(place.chart, terms, 1, false))}` : ''
  const both = [said, drawn].filter(Boolean).join(', ')
  return `${counts}. They first differ at peg ${place.pegs.from + 1}: ${both}.`
}

const ends: Readonly<Record<RowEnd, (peg: number) => string>> = {
  on: () => 'no turn',
  'German turn': (peg) => `a German turn on peg ${peg}`,
  wrap: (peg) => `a wrap and turn after peg ${peg}`,
}

const stepsOf = ({ heading, run }: Path): [first: number, last: number] =>
  heading === 'forward' ? [run.from + 1, run.to + 1] : [run.to + 1, run.from + 1]

/** "the words work pegs 1 to 10, the chart pegs 1 to 12." */
export function pathsDiffer(words: Path, chart: Path): string {
  const [saidFirst, saidLast] = stepsOf(words)
  const [first, last] = stepsOf(chart)
  const samePegs = saidFirst === first && saidLast === last
  const sameEnd = words.end === chart.end
  const said = [
    ...(samePegs ? [] : [`work pegs ${saidFirst} to ${saidLast}`]),
    ...(sameEnd ? [] : [`end with ${ends[words.end](saidLast)}`]),
  ]
  const drawn = [
    ...(samePegs ? [] : [`works pegs ${first} to ${last}`]),
    ...(sameEnd ? [] : [`ends with ${ends[chart.end](last)}`]),
  ]
  return `the words ${said.join(' and ')}, the chart ${drawn.join(' and ')}.`
}

/** "the repeat in the words is 10 sts, worked 4 times; the chart’s is 8 sts, worked 5 times. ..." */
export function repeatsDiffer({ words, chart, alike, rests }: OtherRepeat, terms: Terms): string {
  const both = `the repeat in the words is ${words.pegs} sts, worked ${words.times} times; the chart's is ${chart.pegs} sts, worked ${chart.times} times.`
  if (rests.words.length === 0 || rests.chart.length === 0 || alike > chart.pegs) return both
  const [own, other] = [rests.words, rests.chart].map((items) =>
    stitchesNamed(
      items.map(({ stitch }) => stitch),
      terms,
    ),
  )
  return alike === 0
    ? `${both} It is ${own} in the words, ${other} in the chart.`
    : `${both} The words end it with ${own} after the first ${alike} sts, the chart with ${other}.`
}
