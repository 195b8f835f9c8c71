import type { LoomSetup } from '../../pattern/pattern'
import type { Standing, WordsState } from './state.svelte'

const said: Readonly<Record<Exclude<Standing['kind'], 'differ'>, string>> = {
  written: 'Written from the chart',
  agree: 'My own words: they agree',
  unknown: 'My own words: they could not be read',
}

/**
 * How the words stand to the chart, in one sentence without its stop: the same wherever it is said.
 */
export function standingSaid(
  { standing, differences }: Pick<WordsState, 'standing' | 'differences'>,
  shape: LoomSetup['shape'],
): string {
  if (standing.kind !== 'differ') return said[standing.kind]
  const { rounds } = standing
  if (rounds === 0) return 'My own words: they differ in how it is worked'
  const many = `${rounds} ${shape === 'ring' ? 'round' : 'row'}${rounds === 1 ? '' : 's'}`
  return differences > 0
    ? `My own words: they differ in ${many}`
    : `My own words: ${many} of them could not be read`
}
