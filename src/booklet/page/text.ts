import fontWidths from './fontWidths.json'

/**
 * Measures and breaks text without a page to measure it on: by the advance widths of the fonts that
 * the PDF embeds (Atkinson Hyperlegible, and DejaVu Sans for letters it does not have).
 * tests/booklet/readFont.ts makes the table from the font files.
 */
export const faces = ['regular', 'bold', 'fallback'] as const
export type Face = (typeof faces)[number]
export type Weight = Exclude<Face, 'fallback'>

/** Stands for a letter that no embedded font has. */
export const missingLetter = '\u25a1'

function readTable(runs: Readonly<Record<string, readonly number[]>>): Map<number, number> {
  const widths = new Map<number, number>()
  for (const [first, list] of Object.entries(runs))
    list.forEach((width, i) => widths.set(Number(first) + i, width))
  return widths
}

const tables: Readonly<Record<Face, ReadonlyMap<number, number>>> = {
  regular: readTable(fontWidths.regular),
  bold: readTable(fontWidths.bold),
  fallback: readTable(fontWidths.fallback),
}

/** A piece of text that is written in one font. */
export interface FaceRun {
  readonly face: Face
  readonly text: string
}

/** Which font writes which part of the text. Letters that none has become `missingLetter`. */
export function faceRuns(text: string, weight: Weight): FaceRun[] {
  const runs: { face: Face; text: string }[] = []
  for (const letter of plainSpaces(text)) {
    const code = letter.codePointAt(0) ?? 0
    const face: Face = tables[weight].has(code) ? weight : 'fallback'
    const written = face === weight || tables.fallback.has(code) ? letter : missingLetter
    const last = runs.at(-1)
    if (last?.face === face) last.text += written
    else runs.push({ face, text: written })
  }
  return runs
}

/** The letters of a text that no embedded font has, each once. */
export const lettersMissing = (text: string): string[] => [
  ...new Set(
    [...plainSpaces(text)].filter((letter) => {
      const code = letter.codePointAt(0) ?? 0
      return !tables.regular.has(code) && !tables.fallback.has(code)
    }),
  ),
]

/** Spaces that must not be broken at are written as plain ones, so that searching finds them. */
const plainSpaces = (text: string): string => text.normalize('NFC').replace(/[\s\u00a0]/gu, ' ')

function widthOfRun({ face, text }: FaceRun): number {
  let width = 0
  for (const letter of text) width += tables[face].get(letter.codePointAt(0) ?? 0) ?? 0
  return width / 1000
}

/** Width in mm of a line set in letters of `size` mm. */
export const widthOf = (text: string, size: number, weight: Weight = 'regular'): number =>
  size * faceRuns(text, weight).reduce((sum, run) => sum + widthOfRun(run), 0)

/** Counts such as "(24 sts)", ranges such as "1 to 4" and a short last word stay on one line. */
const keepTogether = (text: string): string =>
  text
    .replace(/\bpegs? \d+(?:(?:, | and | to )\d+)*/gu, (pegs) => pegs.replaceAll(' ', '\u00a0'))
    .replace(/(\d) to (?=\d)/gu, '$1\u00a0to\u00a0')
    .replace(/(\d) (?=[a-z]{2,4}\b)/gu, '$1\u00a0')
    .replace(/ (?=\S{1,3}$)/u, '\u00a0')

/**
 * Break a text into lines no wider than `measure` mm. Words that are wider by themselves are
 * broken where they must be. At least one line, which may be empty.
 */
export function breakLines(
  text: string,
  measure: number,
  size: number,
  weight: Weight = 'regular',
): string[] {
  const lines: string[] = []
  for (const paragraph of text.split(/\r?\n/u)) {
    let line = ''
    for (const word of keepTogether(paragraph).split(/ +/u)) {
      const longer = line === '' ? word : `${line} ${word}`
      if (widthOf(longer, size, weight) <= measure) {
        line = longer
        continue
      }
      if (line !== '') lines.push(line)
      const pieces = cutWord(word, measure, size, weight)
      lines.push(...pieces.slice(0, -1))
      line = pieces.at(-1) ?? ''
    }
    lines.push(line)
  }
  return lines
}

function cutWord(word: string, measure: number, size: number, weight: Weight): string[] {
  const pieces: string[] = []
  let piece = ''
  for (const letter of word) {
    if (piece !== '' && widthOf(piece + letter, size, weight) > measure) {
      pieces.push(piece)
      piece = ''
    }
    piece += letter
  }
  return [...pieces, piece]
}
