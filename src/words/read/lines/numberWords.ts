const small = [
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen',
  'sixteen seventeen eighteen nineteen twenty',
]
  .join(' ')
  .split(' ')

const ordinals = [
  'first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth',
  'fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth',
]
  .join(' ')
  .split(' ')

const values = new Map<string, number>([
  ...small.map((word, value) => [word, value] as const),
  ...ordinals.map((word, index) => [word, index + 1] as const),
  ['thirty', 30],
  ['forty', 40],
  ['fifty', 50],
  ['sixty', 60],
])

/** Alternatives of a regular expression: "one|two|...", "first|second|...". */
export const numberWordsPattern = small.slice(1).join('|')
export const ordinalWordsPattern = ordinals.join('|')

const ordinalWords = new Set(ordinals)
export const isOrdinalWord = (word: string): boolean => ordinalWords.has(word)

/** How often "twice" is. */
export const timesWords: ReadonlyMap<string, number> = new Map([
  ['once', 1],
  ['twice', 2],
  ['thrice', 3],
])

/** "three" is 3, "second" is 2; -1 for a word that is no number. */
export const readNumber = (word: string): number => values.get(word) ?? -1
