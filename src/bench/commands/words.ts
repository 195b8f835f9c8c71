import { limits } from '../../pattern/pattern'
import type { Command } from './command'

/** Commands of the words. */
export const keepWords: Command = {
  id: 'words-keep',
  label: 'Make them mine',
  keys: [],
  edits: true,
  reason: ({ wording }) => {
    if (wording.isOwn) return 'These words are yours already.'
    const { most } = limits.words
    const { length } = wording.text
    return length > most
      ? `Own words can have up to ${most} characters; these have ${length}.`
      : null
  },
  run: (bench) => {
    bench.wording.keep()
    bench.say('These words are yours now. Changing the chart won’t change them.')
  },
}

export const writeWordsAgain: Command = {
  id: 'words-write',
  label: 'Write from the chart',
  keys: [],
  edits: true,
  reason: ({ wording }) => (wording.isOwn ? null : 'The words are written from the chart already.'),
  run: (bench) => bench.ask('write again'),
}

export const makeFromWords: Command = {
  id: 'words-make',
  label: 'Chart from words',
  keys: [],
  run: (bench) => bench.ask('chart from words'),
}
