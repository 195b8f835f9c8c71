import type { LoomSetup } from '../../pattern/pattern'
import type { Standing, WordsState } from './state.svelte'

const said: Readonly<Record<Exclude<Standing['kind'], 'differ'>, string>> = {
  written: 'Written from the chart',
  agree: 'My own words agree with the chart',
  'not read yet': 'My own words',
  unknown: 'My own words could not be read',
}

/** What is wrong in words that tell the chart all the same, as they are worked; empty: nothing. */
function wrongSaid(errors: WordsState['errors']): string {
  const many = errors.length
  if (many === 0) return ''
  const noun = errors.every(({ rule }) => countRules.includes(rule)) ? 'count' : 'thing'
  return many === 1 ? `; 1 ${noun} in them is wrong` : `; ${many} ${noun}s in them are wrong`
}

/** Rules of the reader that compare a count with the stitches. */
const countRules: readonly string[] = ['row-count', 'stated-count', 'stated-pegs', 'stated-rows']

/**
 * How the words stand to the chart, in one sentence without its stop: the same wherever it is said.
 */
export function standingSaid(
  { standing, differences, errors }: Pick<WordsState, 'standing' | 'differences' | 'errors'>,
  shape: LoomSetup['shape'],
): string {
  if (standing.kind === 'agree') return said.agree + wrongSaid(errors)
  if (standing.kind !== 'differ') return said[standing.kind]
  const { rounds } = standing
  if (rounds === 0) return 'My own words differ from the chart in how it is worked'
  const many = `${rounds} ${shape === 'ring' ? 'round' : 'row'}${rounds === 1 ? '' : 's'}`
  return differences > 0
    ? `My own words differ from the chart in ${many}`
    : `My own words: ${many} of them could not be read`
}
