/** Nobody buys a pattern that cannot be worked: with an error each page says that it is a draft. */
import { languages } from '../../src/languages/languages'
import { withChart } from '../../src/pattern/edits/chart'
import { chartOn, namedOn } from '../../src/pattern/charts'
import { describe, expect, test } from 'vitest'
import type { Booklet } from '../../src/booklet/page/page'
import { checkPattern } from '../../src/checks/check'
import { chartErrors, pieceErrors } from '../../src/checks/open'
import { openFindings } from '../../src/checks/open'
import { checkPiece } from '../../src/checks/piece/check'
import { asDraft } from '../../src/drawing/draft'
import { flatChart } from '../../src/drawing/flat'
import { ringChart } from '../../src/drawing/ring'
import { paint, paintAll } from '../../src/pattern/edits/paint'
import { onChart } from '../../src/pattern/charts'
import { rotateColumns } from '../../src/pattern/edits/turn-round'
import { setAside } from '../../src/pattern/edits/settings'
import { setWords } from '../../src/pattern/edits/words'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { workPattern } from '../../src/pattern/work'
import { workPiece } from '../../src/pattern/workPiece'
import { starterCharts } from '../../src/shelf/seeds'
import { compare } from '../../src/words/compare/compare'
import { toldOf } from '../../src/words/compare/told/told'
import { read } from '../../src/words/read/read'
import { readSettingsOf } from '../../src/words/read/reading'
import { keeperSock } from '../words/piece/pieces'
import { layOut } from './read'
import { stitchOf } from '../../src/stitches/vocabulary'

const draftMark = languages.us.drawings.draft

const crossed = paint(newPattern(8, 40), stitchOf('2/2 LC'), 3, 2)
const cut = rotateColumns(crossed, 4)

const marksOf = ({ pages }: Booklet): number[] =>
  pages.map(({ texts }) => texts.filter(({ text }) => text === draftMark).length)

const severitiesOf = (pattern: Pattern) => [
  ...checkPattern(workPattern(pattern)).findings.map(({ severity }) => severity),
  ...checkPiece(workPiece(pattern), namedOn(pattern).name).map(({ severity }) => severity),
]

describe('with an error', () => {
  test('each page has the mark once, bold, over what is printed', () => {
    for (const largePrint of [false, true])
      for (const chart of ['flat', 'ring', 'both'] as const) {
        const booklet = layOut(cut, { largePrint, chart, paper: 'a5' })
        expect(booklet.pages.length).toBeGreaterThan(1)
        expect(new Set(marksOf(booklet))).toEqual(new Set([1]))
        for (const { texts } of booklet.pages) {
          const mark = texts.find(({ text }) => text === draftMark)
          expect(mark?.face).toBe('bold')
          const others = texts.filter((text) => text !== mark).map(({ y, size }) => y - size)
          expect(mark?.y).toBeLessThan(Math.min(...others))
        }
      }
  })

  test('the first warning says why, with the number that stands under Findings', () => {
    const [first] = layOut(cut, { cell: 1 }).warnings
    const errors = severitiesOf(cut).filter((one) => one === 'error').length
    expect(errors).toBe(1)
    expect(first).toEqual({
      message: '1 error is listed under Findings, so each page says DRAFT.',
      advice: 'Fix it before you publish.',
    })
  })

  test('errors of a chart that is not on the bench mark all pages, and count once', () => {
    const sock = keeperSock()
    const [first, ...rows] = chartOn(sock).rows
    const row = first && { ...first, cells: [stitchOf('2/2 LC'), ...first.cells.slice(1)] }
    const wrong = withChart(sock, { rows: row ? [row, ...rows] : rows })
    const away = onChart(wrong, wrong.charts[1]?.name ?? '')
    expect(pieceErrors(workPattern(wrong)).length).toBeGreaterThan(0)
    expect(chartErrors(workPattern(away))).toEqual([])
    const booklet = layOut(away)
    expect(new Set(marksOf(booklet))).toEqual(new Set([1]))
    const listed = severitiesOf(away).filter((one) => one === 'error').length
    expect(booklet.warnings[0]?.message).toMatch(new RegExp(`^${listed} errors? (is|are) listed`))
  })
})

describe('own words with errors', () => {
  const plain = newPattern(12, 4)
  const own = { wording: 'own' } as const
  const wrongSocks = (): Pattern => {
    const socks = starterCharts.find(({ id }) => id === 'fog-watch-socks')?.pattern()
    if (!socks) throw new Error('no socks among the starter charts')
    return setWords(onChart(socks, 'Leg'), 'Rnd 1: k2, kwool')
  }

  test.each([
    ['a round left out', 'Rnds 1-2: knit\nRnd 4: knit', 1],
    ['a count that is wrong', 'Rnds 1-4: knit (13 sts)', 1],
    ['a round that differs', 'Rnds 1-3: knit\nRnd 4: purl', 1],
  ])('%s: each page is a draft where they are printed, and none where not', (_, words, errors) => {
    const pattern = setWords(plain, words)
    const booklet = layOut(pattern, own)
    expect(new Set(marksOf(booklet))).toEqual(new Set([1]))
    expect(booklet.warnings[0]?.message).toBe(
      `${errors} error is listed under Findings, so each page says DRAFT.`,
    )
    for (const settings of [{}, { ...own, words: false }])
      expect(new Set(marksOf(layOut(pattern, settings)))).toEqual(new Set([0]))
  })

  test('what was set aside makes no draft, and words that agree do not', () => {
    const wrong = setWords(plain, 'Rnds 1-4: knit (13 sts)')
    const work = workPattern(wrong)
    const { findings } = toldOf(
      compare(read(namedOn(wrong).words ?? '', readSettingsOf(wrong)), work),
    )
    const [told] = findings
    const aside = told ? setAside(wrong, told.id, true) : wrong
    for (const pattern of [aside, setWords(plain, 'Rnds 1-4: knit')])
      expect(new Set(marksOf(layOut(pattern, own)))).toEqual(new Set([0]))
  })

  test('those of a chart that does not lie on the bench are named', () => {
    const wrong = wrongSocks()
    expect(new Set(marksOf(layOut(wrong, own)))).toEqual(new Set([1]))
    const away = onChart(wrong, 'Foot')
    const booklet = layOut(away, own)
    expect(new Set(marksOf(booklet))).toEqual(new Set([1]))
    expect(booklet.warnings[0]?.message).toBe(
      'Your own words of “Leg” have errors, so each page says DRAFT.',
    )
    expect(new Set(marksOf(layOut(away)))).toEqual(new Set([0]))
  })
})

describe('without an error', () => {
  test.each(starterCharts.map(({ id, pattern }) => [id, pattern()] as const))(
    '%s has no mark',
    (_, pattern) => {
      const booklet = layOut(pattern)
      expect(new Set(marksOf(booklet))).toEqual(new Set([0]))
      expect(booklet.warnings.filter(({ message }) => message.includes(draftMark))).toEqual([])
    },
  )

  test('its open warnings are counted as under Findings, and a baby is named', () => {
    const floats = paintAll(
      newPattern(24, 6),
      stitchOf('sl'),
      { from: 2, to: 2 },
      { from: 0, to: 11 },
    )
    const count = severitiesOf(floats).filter((one) => one === 'warning').length
    expect(count).toBe(1)
    expect(layOut(floats).warnings[0]).toEqual({
      message: '1 warning is open: see Findings.',
      advice: 'Mend it, or set it aside.',
    })
    const baby = { ...floats, making: { ...floats.making, forBaby: true } }
    const more = severitiesOf(baby).filter((one) => one === 'warning').length
    const said = layOut(baby).warnings.find(({ message }) =>
      message.endsWith('open: see Findings.'),
    )
    expect(said?.message).toMatch(new RegExp(`^${more} warnings? (is|are) open`))
    expect(said?.advice).toContain('for a baby or child')
    for (const { pattern } of starterCharts)
      expect(
        layOut(pattern())
          .warnings.map(({ message }) => message)
          .join(' '),
      ).not.toContain('open')
  })

  test('a miscount that the chart shows itself is one error in all that count', () => {
    const socks = starterCharts.find(({ id }) => id === 'fog-watch-socks')?.pattern()
    if (!socks) throw new Error('no socks among the starter charts')
    const sock = onChart(socks, 'Leg')
    const rows = chartOn(sock).rows.map((row, index) =>
      index === 2 ? { ...row, cells: [stitchOf('none'), ...row.cells.slice(1)] } : row,
    )
    const wrong = withChart(sock, { rows })
    const work = workPattern(wrong)
    const open = openFindings(work)
    expect(open.map(({ rule }) => rule)).toContain('row-count')
    const ids = checkPattern(work).findings.map(({ id }) => id)
    expect(open.map(({ id }) => id)).toEqual(ids)
    const errors = open.filter(({ severity }) => severity === 'error').length
    expect(pieceErrors(work)).toHaveLength(errors)
    expect(layOut(wrong).warnings[0]?.message).toMatch(
      new RegExp(`^${errors} errors? (is|are) listed`),
    )
  })

  test('warnings and hints alone make no draft', () => {
    const floats = paintAll(
      newPattern(24, 6),
      stitchOf('sl'),
      { from: 2, to: 2 },
      { from: 0, to: 11 },
    )
    const severities = severitiesOf(floats)
    expect(severities).toContain('warning')
    expect(severities).not.toContain('error')
    expect(new Set(marksOf(layOut(floats)))).toEqual(new Set([0]))
  })
})

describe('a drawing in a file', () => {
  test.each([
    ['rows', flatChart],
    ['ring', ringChart],
  ])('%s: the mark stands over the drawing, which stays as it is', (_, draw) => {
    const scene = draw(workPattern(cut))
    const draft = asDraft(scene, 'us')
    const [mark, ...layers] = draft.layers
    const [text] = mark?.items ?? []
    if (text?.kind !== 'text') throw new Error('no mark')
    expect([text.text, text.weight]).toEqual([draftMark, 'bold'])
    const band = draft.height - scene.height
    expect(text.y).toBeLessThan(band)
    expect(text.x).toBeLessThanOrEqual(draft.width)
    expect(layers).toEqual(scene.layers.map((layer) => ({ ...layer, y: layer.y + band })))
  })
})
