import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Booklet } from '../../src/booklet/page/page'
import { paperSizes } from '../../src/booklet/page/paper'
import { typeScales } from '../../src/booklet/page/typeScale'
import { mirror } from '../../src/pattern/edits/mirror'
import { paint, paintAll } from '../../src/pattern/edits/paint'
import { addStep } from '../../src/pattern/edits/piece'
import { setWords } from '../../src/pattern/edits/words'
import { secondByItself } from '../../src/pattern/pair'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { chartsInOrder, onChart } from '../../src/pattern/charts'
import { workPiece } from '../../src/pattern/workPiece'
import { starterCharts } from '../../src/shelf/seeds'
import { termSets } from '../../src/languages/terms'
import { cautions, runsOf } from '../../src/words/statements'
import { writePiece } from '../../src/words/piece/write'
import { ferryMitt, keeperSock, withPiece } from '../words/piece/pieces'
import { allText, layOut, oneLine, pageText, timesIn, titlesOf } from './read'
import { stitchOf } from '../../src/stitches/vocabulary'

const pieces = [
  ['mitt', ferryMitt()],
  ['sock', keeperSock()],
] as const

/** "Work Heel, Rows 1-30:", under its heading, with no number of times. */
const leadOfOne = /^Work [^,]+, (Row|Rnd)s? [\d-]+:$/

/** Lines of the words, longest labels and all, as they are printed. */
const linesOf = (pattern: Pattern): string[] =>
  writePiece(workPiece(pattern))
    .blocks.flatMap(({ lines }) => lines.map(({ text }) => oneLine(text)))
    .filter((text) => !leadOfOne.test(text))

/** Lines of the size of headings, in the order of the pages. */
const headingsOf = ({ pages }: Booklet, size: number): string[] =>
  pages.flatMap(({ texts }) =>
    texts.filter((text) => text.size === size).map(({ text }) => text.trim()),
  )

describe.each(pieces)('the whole %s', (_, pattern) => {
  test.each(paperSizes)('has each line of its words whole on one page of %s, in order', (paper) => {
    for (const largePrint of [false, true]) {
      const booklet = layOut(
        { ...pattern, ...withPiece(pattern, { pair: 'none' }) },
        { paper, largePrint },
      )
      const pages = pageText(booklet)
      const all = pages.join(' ')
      const lines = linesOf(withPiece(pattern, { pair: 'none' }))
      expect(lines.length).toBeGreaterThan(8)
      let at = all.lastIndexOf('Instructions ')
      for (const line of lines) {
        expect(pages.some((page) => page.includes(line))).toBe(true)
        const next = all.indexOf(line, at)
        expect(next, line).toBeGreaterThanOrEqual(at)
        at = next + line.length
      }
    }
  })

  test('prints each line as often as the words have it', () => {
    const alone = withPiece(pattern, { pair: 'none' })
    const words = linesOf(alone).join(' ')
    const text = allText(layOut(alone, { charts: false }))
    for (const line of new Set(linesOf(alone)))
      expect([line, timesIn(text, line)]).toEqual([line, timesIn(words, line)])
  })

  test('has a chart under the name of each section, in the order of use', () => {
    const booklet = layOut(pattern, { second: false })
    const titles = titlesOf(booklet).filter((title) => title.startsWith('Row chart'))
    const names = chartsInOrder(pattern).map(({ name }) => name)
    expect(titles).toHaveLength(names.length)
    const headings = headingsOf(booklet, typeScales.usual.heading)
    expect(headings.filter((text) => names.includes(text))).toEqual(names)
  })

  test('has one key, one more for the charts of the second, and one list of abbreviations', () => {
    const headings = headingsOf(layOut(pattern), typeScales.usual.heading)
    const alone = headingsOf(layOut(pattern, { second: false }), typeScales.usual.heading)
    const isMirrored = pattern.pair === 'mirrored'
    expect(alone.filter((text) => text === 'Key')).toHaveLength(1)
    expect(headings.filter((text) => text === 'Key')).toHaveLength(isMirrored ? 2 : 1)
    expect(headings.filter((text) => text === 'Abbreviations')).toHaveLength(1)
  })

  test('shows the piece from the side on its first page, and its size', () => {
    const booklet = layOut(pattern)
    const [first] = booklet.pages
    expect(first?.pictures.map(({ scene }) => scene.title)).toContainEqual(
      expect.stringMatching(/^The piece from the side/),
    )
    expect(pageText(booklet)[0]).toMatch(/Finished size: about 16 cm round and [\d.]+ cm from/)
  })

  test('a heading is never the last line of a page', () => {
    for (const largePrint of [false, true])
      for (const paper of paperSizes) {
        const { text } = typeScales[largePrint ? 'large' : 'usual']
        for (const { texts, pictures } of layOut(pattern, { largePrint, paper }).pages)
          for (const { y, size } of texts.filter((item) => item.size > text)) {
            const below = [
              ...texts.filter((item) => item.size === text).map((item) => item.y),
              ...pictures.map((item) => item.y + item.scale * item.scene.height),
            ]
            expect(size).toBeGreaterThan(text)
            expect(below.some((other) => other > y)).toBe(true)
          }
      }
  })
})

describe('a pair', () => {
  test('that is mirrored has the second written out, with its own charts', () => {
    const mitt = ferryMitt()
    const text = allText(layOut(mitt))
    const [first = '', second = ''] = text.split('Second of the pair')
    expect(first).toContain('2/2 LC, k2')
    expect(second).toContain('2/2 RC, k2')
    expect(second).not.toContain('2/2 LC')
    for (const line of linesOf(secondByItself(mitt))) expect(second).toContain(line)
    const charts = titlesOf(layOut(mitt)).filter((title) => title.startsWith('Row chart'))
    expect(charts).toHaveLength(4)
  })

  test('that is mirrored and worked the other way says that its pegs are numbered so', () => {
    const numbered = 'Its pegs are numbered the other way round from those of the first.'
    const sock = starterCharts.find(({ id }) => id === 'fog-watch-socks')?.pattern()
    if (!sock) throw new Error('no sock among the starter charts')
    const [first = '', second = ''] = allText(layOut(sock)).split('Second of the pair')
    expect(first).not.toContain(numbered)
    expect(second).toContain(numbered)
    expect(allText(layOut(ferryMitt()))).not.toContain(numbered)
  })

  test('that is mirrored has the crosses of both in the key and the abbreviations', () => {
    const titles = titlesOf(layOut(ferryMitt()))
    expect(titles).toContain('left cross, two over two')
    expect(titles).toContain('right cross, two over two')
    const [first = ''] = allText(layOut(ferryMitt())).split('Second of the pair')
    expect(first).toContain('right cross, two over two. Over 4 pegs')
  })

  test('whose second is left out says so', () => {
    const { warnings, ...booklet } = layOut(ferryMitt(), { second: false })
    expect(warnings.map(({ message }) => message)).toEqual([
      expect.stringMatching(/second of the pair .* not/i),
    ])
    expect(allText({ ...booklet, warnings })).not.toContain('2/2 RC')
  })

  test('that is alike has a sentence', () => {
    const text = allText(layOut(keeperSock()))
    expect(timesIn(text, 'Make a second one in the same way.')).toBe(1)
    expect(text).toContain('Make two alike.')
    expect(text).not.toContain('Second of the pair')
  })
})

test('a chart that is worked whole and once has no line over its rows but the heading', () => {
  const text = allText(layOut(keeperSock()))
  expect(text).toMatch(/ Heel Row 1: /)
  expect(text).not.toContain('Work Heel')
  expect(text).toContain('Work Leg, Rnd 1, 30 times:')
})

test('an abbreviation is explained without a word standing twice', () => {
  const text = allText(layOut(ferryMitt()))
  expect(text).toContain('Abbreviations k U-wrap knit in this pattern. Lay the yarn')
  expect(text).not.toContain('knit. U-wrap knit')
  const tucks = allText(layOut(paint(ferryMitt(), stitchOf('tuck'), 0, 0)))
  expect(tucks).toMatch(/ tuck [A-Z]/)
  expect(tucks).not.toMatch(/tuck tuck\./)
})

describe('what it takes', () => {
  const swatch = { stitches: 40, rows: 42, grams: 12.5 }

  test('is told with yarn, weight and time, and nothing of how they are reckoned', () => {
    const text = allText(layOut(withPiece(ferryMitt(), { pace: 25, swatch })))
    expect(text).toMatch(/About \d+ m of yarn, \d+ g, for one: double it for a pair\./)
    expect(text).toMatch(/About 1 h \d+ min for one, at 25 stitches a minute\./)
    expect(text).toContain('The yarn is estimated from the gauge')
    // How it is reckoned is the designer's business, not the knitter's.
    expect(text).not.toMatch(/our own|reckon|moves of the hands/)
  })

  test('does not speak of what the designer has not said', () => {
    const text = allText(layOut({ ...ferryMitt(), gauge: null }))
    expect(text).toContain('Yarn and stitch counts')
    expect(text).not.toMatch(/not known/)
  })

  test('of one chart is told only with a pace or a swatch', () => {
    const cuff = newPattern()
    expect(allText(layOut(cuff))).not.toContain('Yarn and stitch counts')
    expect(allText(layOut(withPiece(cuff, { pace: 20 })))).toContain('Yarn and stitch counts')
  })
})

describe('own words', () => {
  const own = 'Every round: knit two, purl two'
  const mitt = setWords(onChart(ferryMitt(), 'Cuff'), own)

  test('of a section take the place of its chart’s words when they are chosen', () => {
    const text = allText(layOut(mitt, { wording: 'own', second: false }))
    expect(timesIn(text, own)).toBe(1)
    expect(text).not.toContain('Rnds 1-2: *k2, p2')
    expect(text).toContain('*k2, 2/2 LC, k2')
  })

  test('of a section off the bench too, and only when they are chosen', () => {
    const turned = onChart(mitt, 'Plait')
    expect(timesIn(allText(layOut(turned, { wording: 'own' })), own)).toBe(1)
    expect(allText(layOut(turned))).not.toContain(own)
  })
})

describe('one chart', () => {
  test('names and explains how it is begun and ended, and the yarn where the gauge tells it', () => {
    const piece = newPattern()
    const text = allText(layOut(piece))
    expect(text).toContain(
      'Cast on 36 pegs by e-wrap, in the round, from peg 1 on. Wind the yarn once round each peg',
    )
    expect(text).toContain(
      'Bind off all 36 loops with the basic bind-off. Knit the first peg; *knit the next peg',
    )
    expect(text).toContain('Weave in the ends.')
    expect(text).not.toContain('yarn is estimated')
    const measured = allText(layOut({ ...piece, gauge: { stitches: 20, rows: 28 } }))
    expect(measured).toMatch(/Yarn and stitch counts .* About \d+(\.\d)? m of yarn\./)
  })

  test.each(termSets)('tells another cast-on and bind-off, in %s terms', (terms) => {
    const cuff = newPattern()
    const [, chart] = cuff.steps
    const pattern = withPiece(
      { ...cuff, style: { ...cuff.style, terms } },
      {
        steps: [
          { kind: 'cast on', how: 'drawstring', pegs: null },
          ...(chart ? [chart] : []),
          { kind: 'bind off', how: 'gather', pegs: null },
        ],
      },
    )
    const text = allText(layOut(pattern))
    expect(text).toContain('36 pegs with the drawstring cast-on, in the round')
    expect(text).toMatch(/off all 36 loops by gathering them\./)
    expect(text).toContain('Weave in the ends.')
    expect(text).not.toMatch(/off and weave/)
    const words = allText(layOut(setWords(pattern, 'Rnds 1-12: knit'), { wording: 'own' }))
    expect(words).toContain('with the drawstring cast-on')
    expect(words).toContain('by gathering them')
  })

  test('with one step more is a whole piece', () => {
    const plain = addStep(newPattern(), 2, {
      kind: 'plain',
      stitch: stitchOf('p'),
      amount: { rows: 3 },
    })
    const text = allText(layOut(plain))
    expect(text).toContain('Purl 3 rnds')
    expect(titlesOf(layOut(plain)).some((title) => title.startsWith('The piece'))).toBe(true)
  })
})

describe('warnings', () => {
  test('a section that no step works is named, and not printed', () => {
    const steps = keeperSock().steps.filter(
      (step) => step.kind !== 'chart' || step.chart !== 'Heel',
    )
    const { warnings, ...booklet } = layOut(withPiece(keeperSock(), { steps }))
    expect(warnings.map(({ message }) => message)).toEqual([expect.stringContaining('“Heel”')])
    expect(allText({ ...booklet, warnings })).not.toContain('German turn')
  })

  test('neither charts nor words', () => {
    const { warnings } = layOut(keeperSock(), { charts: false, words: false })
    expect(warnings[0]?.message).toContain('Neither charts nor words')
  })

  test('letters of names and notes that cannot be printed', () => {
    const pattern = addStep(keeperSock(), 1, { kind: 'note', text: 'Now 編 it.' })
    expect(layOut(pattern).warnings[0]?.message).toContain('編')
  })
})

test('cautions stand in a booklet for babies, once', () => {
  const sock = keeperSock()
  const baby = { ...sock, making: { ...sock.making, forBaby: true } }
  const text = allText(layOut(baby))
  const list = cautions(baby, runsOf(workPiece(baby)))
  for (const caution of list) expect(timesIn(text, caution)).toBe(1)
  expect(allText(layOut(sock))).not.toContain('Cautions')
})

test('cautions name ladders where a baby piece has some, and only there', () => {
  const plain = newPattern(24, 3)
  const baby = { ...plain, making: { ...plain.making, forBaby: true } }
  const open = paintAll(baby, stitchOf('none'), { from: 1, to: 2 }, { from: 4, to: 6 })
  expect(allText(layOut(open))).toContain(
    'leaves a ladder that small fingers and toes can catch in',
  )
  expect(allText(layOut(baby))).not.toContain('ladder')
  expect(allText(layOut({ ...open, making: plain.making }))).not.toContain('ladder')
})

describe('how often a chart is worked', () => {
  const said = (pattern: Pattern, chart: 'flat' | 'ring' | 'both' = 'flat') =>
    allText(layOut(pattern, { second: false, words: false, chart }))

  test('stands under the name of each that is worked more than once', () => {
    const text = said(ferryMitt())
    expect(text).toContain('Cuff Work this chart 6 times.')
    expect(text).toContain('Plait Work this chart 3 times, later once.')
    expect(timesIn(said(ferryMitt(), 'both'), 'Work this chart 6 times.')).toBe(2)
    const sock = starterCharts.find(({ id }) => id === 'fog-watch-socks')?.pattern()
    expect(sock && said(sock)).toMatch(
      /Cuff Work this chart 16 times\..*Leg Work this chart 5 times/,
    )
  })

  test('is not said of charts that are worked once', () => {
    const cuff = starterCharts[0].pattern()
    expect(said(cuff)).not.toContain('Work this chart')
    const mitt = starterCharts.find(({ id }) => id === 'shingle-mitt')?.pattern()
    expect(mitt && said(mitt)).not.toContain('Work this chart')
  })
})

test('the key names the turn as the words do', () => {
  const text = allText(layOut(keeperSock()))
  expect(text).toMatch(/turn; DS on peg \d+/)
  expect(text).toContain('DS German turn: double stitch on the last peg')
})

test('what is not wanted is left out', () => {
  fc.assert(
    fc.property(fc.boolean(), fc.boolean(), (charts, words) => {
      const booklet = layOut(ferryMitt(), { charts, words })
      const printed = titlesOf(booklet).filter((title) => title.startsWith('Row chart'))
      expect(printed).toHaveLength(charts ? 4 : 0)
      expect(timesIn(allText(booklet), 'Bind off all 32 loops')).toBe(words ? 2 : 0)
    }),
    { numRuns: 4 },
  )
})

test('the second of a flat pair says that it begins at the other end; that of a ring has no need to', () => {
  const flat = (pattern: Pattern): Pattern => ({
    ...pattern,
    loom: { ...pattern.loom, shape: 'bar' },
  })
  const pair = withPiece(newPattern(20, 4), { pair: 'mirrored' })
  const after = (pattern: Pattern) =>
    allText(layOut(pattern, { second: true })).split('Second of the pair')[1] ?? ''
  expect(after(flat(pair))).toMatch(/^ ?Peg 1 is at the left as you face the loom/)
  expect(after(pair)).not.toMatch(/Peg 1 is at/)
})

test('the crosses of a flat pair are explained for each of the two, since they are other moves', () => {
  const flat = newPattern(20, 4)
  const crossed = paint({ ...flat, loom: { ...flat.loom, shape: 'bar' } }, stitchOf('2/2 LC'), 0, 4)
  const text = allText(layOut(withPiece(crossed, { pair: 'mirrored' }), { second: true }))
  const [first = '', second = ''] = text.split('Second of the pair')
  const told = (part: string) => /cross, two over two\. ([^.]*)\./.exec(part)?.[1]
  expect(told(first)).toBe(told(allText(layOut(crossed))))
  const mirrored = mirror(crossed)
  expect(told(second)).toBe(told(allText(layOut(mirrored))))
  // The same moves from the other end: the mirror image.
  expect(told(second)).toBe(told(first))
  expect(second).toContain('right cross, two over two')
})

test('a sock says how long its foot is and for which shoe; a tube says nothing of feet', () => {
  const sock = starterCharts.find(({ id }) => id.startsWith('fog'))?.pattern()
  if (!sock) throw new Error('no sock among the starter charts')
  const text = allText(layOut(sock))
  // Half the short rows of the heel, its last round, 40 of the foot, half those of the toe, 30 to 10 cm.
  expect(text).toContain('Foot: about 24.2 cm from heel to toe.')
  // The feet are 5 to 10 % longer: 242 / 0.95 = 255, 242 / 0.9 = 269; shoes by Paris points:
  // (255 + 15) / 6.67 = 40.5, (269 + 15) / 6.67 = 42.6 (tests/published/standards.test.ts).
  expect(text).toContain('Fits feet of about 25.4 to 26.9 cm (EU 40-43), about 24.8 cm round.')
  expect(text).not.toContain('A foot of that length')
  expect(allText(layOut(keeperSock()))).toContain('Foot: about')
  expect(allText(layOut(ferryMitt()))).not.toContain('Foot')
})

test('the round of a thumb opening shows the pegs that it does not work, and the key names them', () => {
  const mitt = starterCharts.find(({ id }) => id === 'shingle-mitt')?.pattern()
  if (!mitt) throw new Error('no mitt')
  const booklet = layOut(mitt, { chart: 'both' })
  const grey = booklet.pages.flatMap(({ pictures }) =>
    pictures.filter(
      ({ scene }) =>
        /^(Row|Ring) chart/.test(scene.title) &&
        scene.layers.some(({ items }) => items.some(({ ink }) => ink === 'unworked')),
    ),
  )
  // Of the thumb, as rows and as a ring.
  expect(grey).toHaveLength(2)
  expect(allText(booklet)).toContain('not worked in this row')
})
