import type { Knit } from '../../loom/move'
import { setLoom, setMaking } from '../../pattern/edits/settings'
import type { Draft } from './draft'
import type { Both } from './setting'

type Stated = Pick<Draft, 'rule' | 'message' | 'advice' | 'edits'>

const knitNames: Readonly<Record<Knit, string>> = {
  'e-wrap': 'e-wrap',
  'u-wrap': 'u-wrap',
  flat: 'flat knit',
  true: 'true knit',
}

/** What the words state for the whole piece, where the chart has it otherwise. */
export function draftsStated({ reading: { stated }, work: { pattern } }: Both): Draft[] {
  const { loom, making } = pattern
  const { knit, direction, pegs } = stated
  const list: Stated[] = []
  if (knit !== undefined && knit !== making.knit)
    list.push({
      rule: 'knit-differs',
      message: `In the words, knit means ${knitNames[knit]}; in the chart it means ${knitNames[making.knit]}.`,
      advice: 'Make both name the same plain knit.',
      edits: [{ label: `Let knit mean ${knitNames[knit]}`, edit: (p) => setMaking(p, { knit }) }],
    })
  if (direction !== undefined && direction !== loom.direction)
    list.push({
      rule: 'direction-differs',
      message: `The words are worked ${direction}, the chart ${loom.direction}.`,
      advice: 'Make both go the same way: crosses worked the other way lean the other way.',
      edits: [{ label: `Work ${direction}`, edit: (p) => setLoom(p, { direction }) }],
    })
  if (pegs !== undefined && pegs !== loom.pegs)
    list.push({
      rule: 'pegs-differ',
      message: `The words are for ${pegs} pegs, the chart is for ${loom.pegs}.`,
      advice: 'Make both name the same number of pegs.',
      edits: [{ label: `Fit the chart on ${pegs} pegs`, edit: (p) => setLoom(p, { pegs }) }],
    })
  return list.map((one) => ({
    ...one,
    row: null,
    rows: [],
    read: null,
    places: [],
    range: null,
    rewrites: [],
  }))
}
