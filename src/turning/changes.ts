import { placed } from '../pattern/row'
import { runsRightToLeft } from '../loom/direction'
import type { Pattern, Run } from '../pattern/pattern'
import type { Step } from '../pattern/piece'
import { partRowsOf } from './partRows'
import { sidesOf, type NowAndThen } from './sides'
import { leansThatSwap, looksTheSame } from './stitches'
import { counted } from '../languages/english/forms'
import { pegsNamed } from '../languages/english/pegs'

/** One thing that changes: a sentence, and where it is said in words, both wordings. */
export interface Change {
  readonly text: string
  readonly lines?: readonly { readonly now: string; readonly then: string }[]
}

export interface Changes {
  readonly changes: readonly Change[]
  /** Sentences on what stays. */
  readonly stays: readonly string[]
}

/** What a fact says of two versions of a piece. */
interface ToldChange {
  readonly changes?: readonly Change[]
  readonly stays?: readonly string[]
}
type Fact = (now: Pattern, then: Pattern, sides: readonly NowAndThen[]) => ToldChange

const say = (...texts: readonly string[]): Change[] => texts.map((text) => ({ text }))

/**
 * What turning a piece round changes and what it leaves, found by holding both versions against
 * each other. Both have the same charts and steps; columns and pegs may be numbered otherwise.
 */
export function changesBetween(now: Pattern, then: Pattern): Changes {
  const sides = sidesOf(now, then)
  const told = facts.map((fact) => fact(now, then, sides))
  return {
    changes: told.flatMap(({ changes }) => changes ?? []),
    stays: told.flatMap(({ stays }) => stays ?? []),
  }
}

/** "Heel: " where there is more than one chart to speak of. */
const ofChart = ({ now }: NowAndThen, sides: readonly NowAndThen[]): string =>
  sides.length > 1 ? `${now.name}: ` : ''

const direction: Fact = (now, then) => {
  const [way, other] = [sightOf(now), sightOf(then)]
  if (now.loom.direction === then.loom.direction)
    return { stays: [`The loom is worked ${now.loom.direction}, peg 1 at the ${way.side}.`] }
  return {
    changes: say(
      `The loom is worked ${then.loom.direction} instead of ${now.loom.direction}, seen from above.`,
      `Peg 1 stands at the ${other.side} instead of the ${way.side}, and ${way.row} 1 runs ${other.run} instead of ${way.run}.`,
    ),
  }
}

function sightOf({ loom }: Pattern) {
  const row = loom.shape === 'ring' ? 'round' : 'row'
  return runsRightToLeft(loom.direction)
    ? { row, side: 'right', run: 'right to left' }
    : { row, side: 'left', run: 'left to right' }
}

const look: Fact = (_now, _then, sides) =>
  looksTheSame(sides)
    ? { stays: ['The look of the fabric: each stitch stays where it is on the right side.'] }
    : {}

const leans: Fact = (now, _then, sides) => {
  const swaps = looksTheSame(sides) ? [] : leansThatSwap(sides, now.style.terms)
  if (swaps.length > 0) return { changes: say(...swaps) }
  const leaning = sides.some(({ now: { work } }) =>
    work.chart.rows.some((row) => placed(row).some(({ stitch }) => stitch.mirror !== stitch.id)),
  )
  return leaning ? { stays: ['Crosses, decreases and increases lean as they do.'] } : {}
}

const same = (a: Run | null, b: Run | null): boolean => a?.from === b?.from && a?.to === b?.to

const shortRows: Fact = (_now, _then, sides) => {
  const changes: Change[] = []
  const stays: string[] = []
  for (const side of sides) {
    const others = partRowsOf(side.then.pattern)
    partRowsOf(side.now.pattern).forEach(({ rows, pegs, turns }, index) => {
      const other = others[index]
      if (!other) return
      const numbers = side.now.work.numbers
      const name = `${ofChart(side, sides)}${turns ? 'short rows' : 'part rows'} ${numbers[rows.from]}-${numbers[rows.to]}`
      const head = name.charAt(0).toUpperCase() + name.slice(1)
      if (same(pegs, other.pegs)) stays.push(`${head} lie on ${pegsNamed(pegs)}.`)
      else
        changes.push({
          text: `${head} move from ${pegsNamed(pegs)} to ${pegsNamed(other.pegs)}.`,
        })
    })
  }
  return { changes, stays }
}

const repeats: Fact = (_now, _then, sides) => ({
  changes: sides.flatMap((side) => {
    const { repeat } = side.now.work.chart
    const other = side.then.work.chart.repeat
    if (!repeat || !other || same(repeat, other)) return []
    return say(
      `${ofChart(side, sides)}the repeat is on ${pegsNamed(other)}, no longer on ${pegsNamed(repeat)}.`.replace(
        /^t/,
        'T',
      ),
    )
  }),
})

const pegsOf = (step: Step): Run | null =>
  step.kind === 'pegs' ? step.run : 'pegs' in step ? step.pegs : null

const steps: Fact = (now, then) => {
  const moved = now.steps.flatMap((step, index) => {
    const run = pegsOf(step)
    const other = then.steps[index]
    const to = other ? pegsOf(other) : null
    if (!run || !to || same(run, to)) return []
    const what = step.kind === 'pegs' ? 'pegs in work' : step.kind
    return say(`Step ${index + 1}, ${what}: ${pegsNamed(to)} instead of ${pegsNamed(run)}.`)
  })
  return { changes: moved }
}

/** Lines of the words that differ, shown as a taste. */
const mostLines = 2

const words: Fact = (_now, _then, sides) => {
  const all = sides.flatMap((side) => {
    const chart = ofChart(side, sides)
    return side.now.lines.flatMap(({ text }, index) => {
      const other = side.then.lines[index]?.text ?? ''
      return other === text ? [] : [{ now: chart + text, then: chart + other }]
    })
  })
  if (all.length === 0) return { stays: ['The words from the chart.'] }
  const text = `${counted(all.length, 'line')} of the words from the chart ${all.length === 1 ? 'changes' : 'change'}${all.length > mostLines ? ', such as' : ''}:`
  return { changes: [{ text, lines: all.slice(0, mostLines) }] }
}

const ownWords: Fact = (_now, _then, sides) => {
  const changes: Change[] = []
  const stays: string[] = []
  for (const side of sides) {
    const { differences } = side.then
    if (differences === null) continue
    const head = sides.length > 1 ? `${side.now.name}: my own words` : 'My own words'
    if (differences === 0) stays.push(`${head}, which agree with the chart then too.`)
    else
      changes.push({
        text:
          `${head} stay as they are and will differ from the chart in ` +
          `${counted(differences, 'place')} (now ${side.now.differences ?? 0}).`,
      })
  }
  return { changes, stays }
}

const pictures: Fact = (now) => {
  const count = now.pictures.length
  if (count === 0) return {}
  return {
    changes: say(
      `${counted(count, 'stretch', 'stretches')} of step pictures: the same stitches, with their moves as they are worked then.`,
    ),
  }
}

const findings: Fact = (_now, _then, sides) => {
  const count = (at: 'now' | 'then') =>
    sides.reduce((sum, side) => sum + side[at].report.findings.length, 0)
  const [before, after] = [count('now'), count('then')]
  const none = (n: number) => (n === 0 ? 'none' : String(n))
  if (before !== after)
    return { changes: say(`Findings in the charts: ${none(after)} instead of ${none(before)}.`) }
  return { stays: [`Findings in the charts: ${none(before)}.`] }
}

const measures: Fact = ({ loom, steps: all }, then, sides) => {
  const rows = sides.reduce((sum, { now }) => sum + now.work.passes.length, 0)
  const thenRows = sides.reduce((sum, side) => sum + side.then.work.passes.length, 0)
  if (loom.pegs !== then.loom.pegs || rows !== thenRows) return {}
  return {
    stays: [
      `${counted(loom.pegs, 'peg')}, ${counted(rows, 'row')} in ${counted(sides.length, 'chart')}, ` +
        `${counted(all.length, 'step')} from cast-on to bind-off.`,
    ],
  }
}

/** In the order in which they are told. */
const facts: readonly Fact[] = [
  direction,
  look,
  leans,
  shortRows,
  repeats,
  steps,
  words,
  ownWords,
  pictures,
  findings,
  measures,
]
