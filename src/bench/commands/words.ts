import { limits } from '../../pattern/pattern'
import type { Command } from './command'

/** Commands of the words. */
export const keepWords: Command = {
  id: 'words-keep',
  label: 'Keep as my own words',
  keys: [],
  edits: true,
  reason: ({ wording }) => {
    if (wording.isOwn) return 'These are your own words already.'
    const { most } = limits.words
    const { length } = wording.text
    return length > most ? `Own words hold up to ${most} characters; these have ${length}.` : null
  },
  run: (bench) => {
    bench.wording.keep()
    bench.say('These words are your own now: no edit of the chart changes them.')
  },
}

export const writeWordsAgain: Command = {
  id: 'words-write',
  label: 'Write from the chart again',
  keys: [],
  edits: true,
  reason: ({ wording }) => (wording.isOwn ? null : 'The words are written from the chart already.'),
  run: ({ wording }) => {
    wording.asking = 'write again'
  },
}

export const widenWords: Command = {
  id: 'words-wide',
  label: 'More room for the words',
  keys: [],
  run: ({ wording }) => {
    wording.wide = !wording.wide
  },
}

export const makeFromWords: Command = {
  id: 'words-make',
  label: 'Make a chart from words',
  keys: [],
  run: ({ wording }) => {
    wording.asking = 'make'
  },
}
