import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { layOutBooklet } from '../../../src/booklet/booklet'
import type { Booklet, PageText } from '../../../src/booklet/page/page'
import { liveArea, papers, paperSizes } from '../../../src/booklet/page/paper'
import { usualSettings, type BookletSettings } from '../../../src/booklet/settings'
import { widthOf } from '../../../src/booklet/page/text'
import { typeScales } from '../../../src/booklet/page/typeScale'
import { setWords } from '../../../src/pattern/edits/words'
import { newPattern } from '../../../src/pattern/pattern'
import { workPattern } from '../../../src/pattern/work'
import { arbitraryWords } from '../../arbitraries'

const own = { wording: 'own' } as const
const layOut = (words: string | null, settings: Partial<BookletSettings> = own): Booklet =>
  layOutBooklet(workPattern(setWords(newPattern(12, 4), words)), { ...usualSettings, ...settings })

interface Line {
  readonly text: string
  readonly page: number
  readonly x: number
  readonly y: number
  readonly first: PageText
}

/** All lines, page by page and top to bottom; texts on one line are joined. */
const linesOf = ({ pages }: Booklet): Line[] =>
  pages.flatMap(({ texts }, page) => {
    const lines = new Map<number, PageText[]>()
    for (const text of texts.toSorted((a, b) => a.y - b.y || a.x - b.x)) {
      const key = Math.round(100 * text.y)
      lines.set(key, [...(lines.get(key) ?? []), text])
    }
    return [...lines.values()].map((parts) => {
      const [first] = parts as [PageText]
      return { text: parts.map(({ text }) => text).join(' '), page, x: first.x, y: first.y, first }
    })
  })
const textOf = (booklet: Booklet): string =>
  linesOf(booklet)
    .map(({ text }) => text)
    .join('\n')
const lineOf = (booklet: Booklet, text: string): Line => {
  const line = linesOf(booklet).find((one) => one.text === text)
  if (!line) throw new Error(`No line says ${JSON.stringify(text)}:\n${textOf(booklet)}`)
  return line
}

const words = [
  'Cast on 12 sts with the thin yarn.',
  '',
  'Cuff',
  'Rnd 1: knit.',
  '  on the thin loom, loosely',
  '',
  '',
  'Rnds 2-4: as rnd 1',
  'Cast off.',
]

describe('own words in the booklet', () => {
  test('stand line by line, with their empty lines and spaces at the start', () => {
    // Those before them fill the first page.
    const before = Array.from({ length: 20 }, (_, n) => `Yarn ${n + 1}, thin.`)
    const booklet = layOut([...before, ...words].join('\n'))
    const { unit } = typeScales.usual
    const at = (text: string) => lineOf(booklet, text.trim())
    const [first, inset, later, last] = [3, 4, 7, 8].map((index) => at(words[index] ?? ''))
    if (!first || !inset || !later || !last) throw new Error('A line is left out')
    expect(inset.y - first.y).toBeCloseTo(unit, 6)
    expect(later.y - inset.y).toBeCloseTo(3 * unit, 6)
    expect(last.y - later.y).toBeCloseTo(unit, 6)
    expect(inset.x).toBeGreaterThan(last.x)
  })

  test('hang beside the labels of their rows, as the words of the chart do', () => {
    const look = (booklet: Booklet) =>
      booklet.pages.flatMap(({ texts }) => {
        const label = texts.find(({ text }) => text === 'Rnds 1-4:')
        const told = texts.find(({ text, y }) => text !== label?.text && y === label?.y)
        return label && told
          ? [[label.x, label.face, label.size, told.x, told.face, told.size]]
          : []
      })
    const mine = layOut('Cuff\nRnds 1-4: knit.\nCast off.')
    expect(look(mine)).toHaveLength(1)
    expect(look(mine)).toEqual(look(layOut(null)))
    const [[, , , beside] = []] = look(mine)
    expect(lineOf(mine, 'Cast off.').x).toBe(beside)
    // Without a label of a row there is nothing to hang beside.
    expect(lineOf(layOut('Knit four rounds.'), 'Knit four rounds.').x).toBe(20)
  })

  test('have in bold what the reader knows as a heading, with the lines under it', () => {
    const booklet = layOut(words.join('\n'))
    expect(lineOf(booklet, 'Cuff').first.face).toBe('bold')
    expect(lineOf(booklet, 'Instructions').first.face).toBe('bold')
    const titled = textOf(layOut(['Cuff', 'Cast on 12 sts.', 'Rnd 1: knit.'].join('\n')))
    expect(titled).not.toContain('Instructions')
  })

  test('are the chosen ones: the chart writes no line beside them, and they none beside the chart', () => {
    const [mine, charted] = [textOf(layOut(words.join('\n'))), textOf(layOut(words.join('\n'), {}))]
    expect(mine).toContain('Rnds 2-4: as rnd 1')
    expect(mine).not.toContain('Rnds 1-4')
    expect(charted).toContain('Rnds 1-4: Knit. (12 sts)')
    expect(charted).not.toContain('as rnd 1')
    expect(textOf(layOut(words.join('\n'), { ...own, words: false }))).not.toContain('as rnd 1')
    expect(textOf(layOut(null))).toContain('Rnds 1-4: Knit. (12 sts)')
  })

  test('are told how to begin and end where they do not tell it', () => {
    const said = (text: string) => {
      const printed = textOf(layOut(text))
      return [
        'Cast on 12 pegs by e-wrap, in the round, from peg 1 on.',
        'Bind off all 12 loops with the basic bind-off.',
      ].map((line) => printed.includes(line))
    }
    expect(said('Rnds 1-4: knit.')).toEqual([true, true])
    expect(said(words.join('\n'))).toEqual([false, false])
  })

  test('that begin with a heading are told how to begin under one, not under the abbreviations', () => {
    const order = (text: string) =>
      textOf(layOut(text))
        .split('\n')
        .filter((line) => /^(?:Instructions:?|Cast on .*|Cuff|Rnd 1: .*)$/.test(line))
    const begun = 'Cast on 12 pegs by e-wrap, in the round, from peg 1 on.'
    const round = 'Rnd 1: k12.'
    expect(order(`Cuff\n${round}`)).toEqual(['Instructions', begun, 'Cuff', round])
    expect(order(`Instructions:\n${round}`)).toEqual(['Instructions:', begun, round])
  })

  test('that explain their own stitches explain them alone', () => {
    const explained = textOf(
      layOut(['Abbreviations', 'k: knit', '', 'Cuff', 'Rnd 1: k12.'].join('\n')),
    )
    expect(explained.match(/Abbreviations/g)).toHaveLength(1)
    expect(explained).toContain('k: knit')
    expect(textOf(layOut('Rnd 1: k12.')).match(/Abbreviations/g)).toHaveLength(1)
  })

  test.each(paperSizes)(
    'flow over the pages of %s whole and in order, in large print too',
    (paper) => {
      const long = Array.from(
        { length: 90 },
        (_, n) =>
          `Rnd ${n + 1}: *k2, p2, knit the next one loosely; rep from * to end of round ${n + 1}.`,
      )
      for (const largePrint of [false, true]) {
        const booklet = layOut(long.join('\n'), { ...own, paper, largePrint })
        const pages = booklet.pages.map((_, page) =>
          linesOf(booklet)
            .filter((line) => line.page === page)
            .map(({ text }) => text)
            .join(' ')
            .replaceAll(/\s+/g, ' '),
        )
        const found = long.map((line) => pages.findIndex((page) => page.includes(line)))
        expect(found.every((page) => page >= 0)).toBe(true)
        expect(found).toEqual(found.toSorted((a, b) => a - b))
        expect(new Set(found).size).toBeGreaterThan(1)
        const { first } = linesOf(booklet).find(({ text }) => text.startsWith('Rnd 90:')) ?? {}
        expect(first?.size).toBe(typeScales[largePrint ? 'large' : 'usual'].text)
      }
    },
  )

  test('of any letters stay inside the margins', () => {
    fc.assert(
      fc.property(
        arbitraryWords,
        fc.constantFrom(...paperSizes),
        fc.boolean(),
        (text, paper, big) => {
          const booklet = layOut(text, { ...own, paper, largePrint: big })
          const area = liveArea(papers[paper])
          for (const { texts } of booklet.pages)
            for (const { x, text: said, face, size } of texts) {
              const width = face === 'fallback' ? 0 : widthOf(said, size, face)
              expect(x).toBeGreaterThanOrEqual(area.x - 0.01)
              expect(x + width).toBeLessThanOrEqual(area.x + area.width + 0.01)
            }
        },
      ),
      { numRuns: 60 },
    )
  })

  test.each([
    ['Rnd 1: knit.\nBind off loosely.', 1],
    ['Rnd 1: knit.', 1],
    ['Rnd 1: knit.\nBind off loosely and weave in all ends.', 0],
    ['Rnd 1: knit.\nBind off. Sew the ends in.', 0],
  ])('%j: how the ends are finished is said once', (words, times) => {
    const said = linesOf(layOut(words)).filter(({ text }) => text === 'Weave in the ends.')
    expect(said).toHaveLength(times)
  })

  test('with letters that cannot be printed are named', () => {
    const warning = layOut('Rnd 1: knit 編').warnings.find(({ message }) =>
      message.startsWith('The fonts'),
    )
    expect(warning?.message).toContain('編')
    expect(warning?.advice).toContain('your own words')
  })
})
