import type { Work } from '../../pattern/work'
import type { Comparison } from '../../words/compare/compare'
import type { Reading, ReadSettings } from '../../words/read/reading'
import { nowhere, type Finding } from '../../pattern/finding'

export const nothingRead = (text: string, settings: ReadSettings): Reading => ({
  text,
  settings,
  tokens: [],
  rows: [],
  bands: [],
  edges: [],
  sections: [],
  remarks: [],
  stated: {},
})

export const nothingCompared = (reading: Reading, work: Work): Comparison => ({
  reading,
  work,
  differences: [],
  agreement: [],
  pairs: [],
})

export const faultFinding = (fault: string): Finding => ({
  id: 'words, fault',
  rule: 'fault',
  severity: 'error',
  place: nowhere,
  message: `These words could not be read: something in the program failed (${fault}).`,
  advice: 'Your words are still there. Undo the last change, or write it another way.',
  fixes: [],
})
