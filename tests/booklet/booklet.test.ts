import { withChart } from '../../src/pattern/edits/chart'
import { chartOn } from '../../src/pattern/charts'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { layOutBooklet } from '../../src/booklet/booklet'
import { pageTexts, type Booklet } from '../../src/booklet/page/page'
import { liveArea, papers, paperSizes } from '../../src/booklet/page/paper'
import { chartChoices, usualSettings, type BookletSettings } from '../../src/booklet/settings'
import { widthOf } from '../../src/booklet/page/text'
import { typeScales } from '../../src/booklet/page/typeScale'
import { checkPattern } from '../../src/checks/check'
import { paint, paintAll } from '../../src/pattern/edits/paint'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { placed } from '../../src/pattern/row'
import { workPattern } from '../../src/pattern/work'
import { starterCharts } from '../../src/shelf/seeds'
import { traditions } from '../../src/stitches/sign'
import { termSets } from '../../src/languages/terms'
import { stitchOf, standardVocabulary } from '../../src/stitches/vocabulary'
import { cautions } from '../../src/words/statements'
import { writeWords } from '../../src/words/write'
import { arbitraryPattern } from '../arbitraries'
import { languages, termOf } from '../../src/languages/languages'
import { cellsFrom } from '../cells'

const draftMark = languages.us.drawings.draft

const layOut = (pattern: Pattern, settings: Partial<BookletSettings> = {}): Booklet =>
  layOutBooklet(workPattern(pattern), { ...usualSettings, ...settings })

/** The lines of each page, top to bottom, with texts on one line joined. */
function linesOf(booklet: Booklet): string[][] {
  return booklet.pages.map(({ texts }) => {
    const lines = new Map<number, string[]>()
    for (const { y, text } of texts.toSorted((a, b) => a.y - b.y || a.x - b.x)) {
      const key = Math.round(100 * y)
      lines.set(key, [...(lines.get(key) ?? []), text])
    }
    return [...lines.values()].map((parts) => parts.join(' '))
  })
}
const textOf = (booklet: Booklet): string => linesOf(booklet).flat().join('\n')

const field = (columns: number, rows: number, cells?: (row: number) => string[]): Pattern => {
  const pattern = newPattern(columns, rows)
  const made = chartOn(pattern).rows.map((row, i) =>
    cells ? { ...row, cells: cellsFrom(cells(i)) } : row,
  )
  return withChart(pattern, { rows: made })
}

const settings = fc.record({
  paper: fc.constantFrom(...paperSizes),
  chart: fc.constantFrom(...chartChoices),
  largePrint: fc.boolean(),
  words: fc.boolean(),
  cell: fc.option(fc.double({ min: 1, max: 9, noNaN: true })),
})

function expectInside(booklet: Booklet): void {
  const paper = papers[booklet.paper]
  const area = liveArea(paper)
  for (const page of booklet.pages) {
    expect([page.width, page.height]).toEqual([paper.width, paper.height])
    for (const { text, x, y, face, size } of pageTexts(page)) {
      const width = face === 'fallback' ? 0 : widthOf(text, size, face)
      expect(x).toBeGreaterThanOrEqual(area.x - 0.01)
      expect(x + width).toBeLessThanOrEqual(area.x + area.width + 0.01)
      expect(y).toBeGreaterThan(text === draftMark ? size : area.y)
      expect(y).toBeLessThan(paper.height - 3)
    }
    for (const { x, y, scale, scene } of page.pictures) {
      expect(x).toBeGreaterThanOrEqual(area.x - 0.01)
      expect(y).toBeGreaterThanOrEqual(area.y - 0.01)
      expect(x + scale * scene.width).toBeLessThanOrEqual(area.x + area.width + 0.01)
      expect(y + scale * scene.height).toBeLessThanOrEqual(area.y + area.height + 0.01)
    }
  }
}

describe('pages', () => {
  test('nothing stands outside the margins, whatever is printed', () => {
    fc.assert(
      // Thousands of rows are slow to work, and a failure to shrink.
      fc.property(arbitraryPattern({ rows: 40 }), settings, (pattern, how) => {
        expectInside(layOut(pattern, how))
      }),
      { numRuns: 30, endOnFailure: true },
    )
  })

  test.each(paperSizes)('a chart of 200 columns and 600 rows fits on %s', (paper) => {
    expectInside(layOut(field(200, 600), { paper, words: false }))
  })

  test.each(starterCharts.map(({ id, pattern }) => [id, pattern()] as const))(
    '%s: every line of the words stands whole on one page',
    (_, pattern) => {
      for (const paper of paperSizes) {
        const pages = linesOf(layOut(pattern, { paper })).map((lines) =>
          lines.join(' ').replace(/\s+/gu, ' '),
        )
        for (const { text } of writeWords(workPattern(pattern), pattern.style.terms).lines)
          expect(pages.some((page) => page.includes(text.replace(/\s+/gu, ' ')))).toBe(true)
      }
    },
  )

  test.each(starterCharts.map(({ id, pattern }) => [id, pattern()] as const))(
    '%s: no page has but a few lines, and the source of the signs stands under their key',
    (_, pattern) => {
      for (const paper of paperSizes) {
        const { pages } = layOut(
          { ...pattern, making: { ...pattern.making, forBaby: true } },
          { paper },
        )
        pages.forEach(({ texts, pictures }, index) => {
          // Beside its foot.
          const lines = new Set(texts.map(({ y }) => Math.round(10 * y))).size - 1
          expect(lines >= 6 || pictures.length > 0, `${paper}, page ${index + 1}`).toBe(true)
          const has = (part: string) => texts.some(({ text }) => text.includes(part))
          if (has('Source:')) expect(has('Key')).toBe(true)
        })
      }
    },
  )

  test('a heading is never the last line of a page', () => {
    for (const { pattern } of starterCharts)
      for (const largePrint of [false, true]) {
        const { text, heading } = typeScales[largePrint ? 'large' : 'usual']
        for (const { texts, pictures } of layOut(pattern(), { largePrint, chart: 'both' }).pages)
          for (const { y, size } of texts.filter((item) => item.size === heading)) {
            const below = [
              ...texts.filter((item) => item.size === text).map((item) => item.y),
              ...pictures.map((item) => item.y),
            ]
            expect(size).toBe(heading)
            expect(below.some((other) => other > y)).toBe(true)
          }
      }
  })

  test('the title and the page number stand in the foot of each page', () => {
    const booklet = layOut(starterCharts[0]?.pattern() ?? newPattern(), { largePrint: true })
    const count = booklet.pages.length
    expect(count).toBeGreaterThan(1)
    linesOf(booklet).forEach((lines, i) =>
      expect(lines.at(-1)).toBe(`${booklet.title} ${i + 1} of ${count}`),
    )
  })

  test('large print is set in at least 22 points (common practice for low vision)', () => {
    const booklet = layOut(starterCharts[0]?.pattern() ?? newPattern(), { largePrint: true })
    const points = booklet.pages.flatMap(({ texts }) => texts.map(({ size }) => (size * 72) / 25.4))
    // Page numbers and the line on the symbols' source may be smaller.
    expect(Math.min(...points)).toBeCloseTo(18, 6)
    expect(points.filter((size) => size >= 22 - 1e-6).length).toBeGreaterThan(points.length / 2)
  })
})

describe('what is printed', () => {
  test('the key holds exactly the stitches of the chart, with sign, abbreviation and name', () => {
    fc.assert(
      fc.property(
        fc.subarray(['p', 'k', 'ew', 'sl', 'tuck', 'mb', 'none'], { minLength: 1 }),
        fc.constantFrom(...termSets),
        fc.constantFrom(...traditions),
        (ids, terms, symbols) => {
          const pattern = field(36, 2, () =>
            Array.from({ length: 36 }, (_, i) => ids[i % ids.length] ?? 'k'),
          )
          const cells = chartOn(pattern).rows.flatMap((row) => row.cells)
          const style = { ...pattern.style, terms, symbols }
          const booklet = layOut({ ...pattern, style }, { words: false })
          const used = [...new Set(cells)].flatMap((cell) => cell ?? [])
          const titles = booklet.pages.flatMap(({ pictures }) =>
            pictures.map(({ scene }) => scene.title),
          )
          const known = new Set(
            standardVocabulary.stitches.map((stitch) => termOf(stitch, 'us').name),
          )
          expect(titles.filter((title) => known.has(title)).sort()).toEqual(
            used.map((stitch) => termOf(stitch, 'us').name).sort(),
          )
          const text = textOf(booklet)
          for (const stitch of used) {
            expect(text).toContain(termOf(stitch, terms).abbr)
            expect(text).toContain(termOf(stitch, terms).name)
          }
        },
      ),
      { numRuns: 25 },
    )
  })

  test.each(starterCharts.map(({ id, pattern }) => [id, pattern()] as const))(
    '%s: the key has as many signs as the chart has stitches',
    (_, pattern) => {
      const used = new Set(chartOn(pattern).rows.flatMap((row) => placed(row).map((p) => p.stitch)))
      const names = [...used].map((stitch) => termOf(stitch, 'us').name).sort()
      const titles = layOut(pattern, { second: false }).pages.flatMap(({ pictures }) =>
        pictures.map(({ scene }) => scene.title),
      )
      expect(titles.filter((title) => names.includes(title)).sort()).toEqual(names)
    },
  )

  test('turns and unworked pegs stand in the key of a heel, and only there', () => {
    const { turns, unworked } = languages.us.booklet
    const heel = starterCharts.find(({ id }) => id.includes('heel'))?.pattern() ?? newPattern()
    expect(textOf(layOut(heel))).toContain(turns['German turn'])
    expect(textOf(layOut(heel))).toContain(unworked)
    expect(textOf(layOut(newPattern()))).not.toContain(unworked)
  })

  // The Craft Yarn Council asks for this line wherever its symbols are used.
  test('the source of the symbols stands by the key when they are used', () => {
    const pattern = newPattern()
    const line = "Source: Craft Yarn Council's www.YarnStandards.com"
    const jis = { ...pattern, style: { ...pattern.style, symbols: 'jis' as const } }
    expect(textOf(layOut(pattern))).toContain(line)
    expect(textOf(layOut(jis))).not.toContain(line)
  })

  test('signs from memory are not printed under that name', () => {
    const lines = (pattern: Pattern) => textOf(layOut(pattern)).split('YarnStandards')[0] ?? ''
    const plain = newPattern(12, 2)
    const mixed = paint(
      paint(paint(plain, stitchOf('sl'), 0, 0), stitchOf('mb'), 0, 2),
      stitchOf('2/2 LC'),
      1,
      4,
    )
    expect(lines(paint(mixed, stitchOf('p'), 0, 5))).toMatch(
      /k, p \u2013 Source: Craft Yarn Council's www\.$/,
    )
    const all = Array.from({ length: 12 }, (_, peg) => peg).reduce(
      (p, peg) => paint(p, stitchOf('sl'), 0, peg),
      newPattern(12, 1),
    )
    expect(textOf(layOut(all))).not.toContain('YarnStandards')
  })

  test('title, designer, loom, direction and knit kind stand on the first page', () => {
    const pattern = { ...newPattern(), title: 'Ropewalk cuff', designer: 'Ada Quill' }
    const [first = []] = linesOf(layOut(pattern))
    const text = first.join(' ')
    for (const part of ['Ropewalk cuff', 'Ada Quill', '36 pegs', '9.5 mm', 'clockwise', 'u-wrap'])
      expect(text).toContain(part)
  })

  test('cautions are printed for baby things only', () => {
    const pattern = newPattern()
    const baby = { ...pattern, making: { ...pattern.making, forBaby: true } }
    const flat = (asked: Pattern) => textOf(layOut(asked)).replace(/\s+/gu, ' ')
    const list = cautions(baby, [])
    expect(list.length).toBeGreaterThan(3)
    for (const caution of list) {
      expect(flat(baby)).toContain(caution)
      expect(flat(pattern)).not.toContain(caution)
    }
  })

  test.each([
    [9.5, 1, 'let the yarn pass no more than 1 peg before it is caught'],
    [5, 2, 'let the yarn pass no more than 2 pegs before it is caught'],
    [16, 0, 'slip no peg.'],
  ])('on pegs %d mm apart the caution allows what the check does: %d', (pitch, most, said) => {
    const plain = newPattern(36, 2)
    const baby = {
      ...plain,
      loom: { ...plain.loom, pitch },
      making: { ...plain.making, forBaby: true },
    }
    expect(textOf(layOut(baby)).replace(/\s+/gu, ' ')).toContain(said)
    const floats = (pegs: number) => {
      const slipped = paintAll(baby, stitchOf('sl'), { from: 1, to: 1 }, { from: 3, to: 2 + pegs })
      const { findings } = checkPattern(workPattern(slipped))
      return findings.filter(({ rule }) => rule === 'float').length
    }
    expect(floats(most + 1)).toBe(1)
    if (most > 0) expect(floats(most)).toBe(0)
  })

  test('words are left out when they are not wanted', () => {
    const line = 'Bind off all 36 loops with the basic bind-off.'
    expect(textOf(layOut(newPattern()))).toContain(line)
    expect(textOf(layOut(newPattern(), { words: false }))).not.toContain(line)
  })
})

describe('sheets', () => {
  const booklet = layOut(field(96, 200), { words: false })
  const sheets = booklet.pages.filter(({ texts }) =>
    texts.some(({ text }) => /^Sheet [A-Z]+$/u.test(text)),
  )

  test('say which rounds and pegs they hold; together they hold all, in order', () => {
    const said = sheets.map(({ texts }) => texts.map(({ text }) => text).join(' '))
    const numbers = said.map((text) =>
      (/Rounds (\d+)-(\d+), pegs (\d+)-(\d+)/u.exec(text) ?? []).slice(1).map(Number),
    )
    const cells = numbers.reduce(
      (sum, [r0 = NaN, r1 = NaN, p0 = NaN, p1 = NaN]) => sum + (r1 - r0 + 1) * (p1 - p0 + 1),
      0,
    )
    expect(cells).toBe(96 * 200)
    expect(numbers[0]?.slice(0, 3)).toEqual([1, numbers[0]?.[1], 1])
    expect(numbers.at(-1)?.[1]).toBe(200)
    expect(numbers.at(-1)?.[3]).toBe(96)
  })

  test('repeat row and peg numbers on each', () => {
    for (const page of sheets) {
      const [, chart] = page.pictures
      const numbers = (chart?.scene.layers ?? [])
        .filter(({ key }) => key === 'numbers')
        .flatMap(({ items }) => items)
      expect(numbers.length).toBeGreaterThan(10)
    }
  })

  test('an overview before them shows a letter for each', () => {
    const overview = booklet.pages[0]?.pictures.at(-1)?.scene
    const letters = overview?.layers.flatMap(({ items }) =>
      items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])),
    )
    expect(letters).toHaveLength(sheets.length)
    expect(letters?.toSorted()[0]).toBe('A')
  })

  test('crosses that leave no line to cut at are whole on one of two sheets, and that is told', () => {
    const plait = (row: number): string[] => {
      const shift = row % 2 === 0 ? 0 : 2
      const crosses = Array.from({ length: (96 - 2 * shift) / 4 }, () => ['2/2 LC', '', '', ''])
      const edge = Array.from({ length: shift }, () => 'k')
      return [...edge, ...crosses.flat(), ...edge]
    }
    const text = textOf(layOut(field(96, 30, plait), { words: false, paper: 'a5' }))
    expect(text).toMatch(/Pegs \d+-\d+ stand on both sheets/u)
    expect(textOf(layOut(field(96, 30), { words: false, paper: 'a5' }))).not.toContain(
      'both sheets',
    )
  })
})

describe('warnings', () => {
  test('a ring that could not be read is left out, with its numbers, and the flat chart printed', () => {
    const { warnings, pages } = layOut(field(96, 200), { chart: 'ring' })
    expect(warnings.map(({ message }) => message)).toEqual([
      expect.stringMatching(/96 pegs and 200 rows would have cells of 0\.\d mm on A4; 2\.5 mm/u),
    ])
    const titles = pages.flatMap(({ pictures }) => pictures.map(({ scene }) => scene.title))
    expect(titles.some((title) => title.startsWith('Row chart'))).toBe(true)
  })

  test('cells asked for too small are printed as small as can be read', () => {
    const { warnings } = layOut(newPattern(), { cell: 1.2 })
    expect(warnings).toHaveLength(1)
    expect(warnings[0]?.message).toContain('1.2 mm')
    expect(warnings[0]?.advice).toContain('2.5 mm')
    expect(layOut(newPattern(), { cell: 90 }).warnings[0]?.message).toContain('90 mm')
    expect(layOut(newPattern(), { cell: 2.5 }).warnings).toEqual([])
  })

  test('letters that cannot be printed are named', () => {
    const { warnings } = layOut({ ...newPattern(), title: 'Cuff 編' })
    expect(warnings[0]?.message).toContain('編')
  })
})
