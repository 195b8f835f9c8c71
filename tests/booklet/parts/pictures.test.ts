import { removeChart } from '../../../src/pattern/edits/piece'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { liveArea, papers, paperSizes } from '../../../src/booklet/page/paper'
import { typeScales } from '../../../src/booklet/page/typeScale'
import { walkRow } from '../../../src/loom/walk'
import type { Pictures } from '../../../src/pattern/piece'
import { onChart } from '../../../src/pattern/charts'
import { workPattern } from '../../../src/pattern/work'
import { handsContext } from '../../../src/words/hands/context'
import { stepFigures } from '../../../src/words/hands/figures'
import { ferryMitt, keeperSock, withPiece } from '../../words/piece/pieces'
import { allText, layOut, oneLine, pageText } from '../read'

const mitt = ferryMitt()
const shown = (...pictures: Pictures[]) => withPiece(mitt, { pictures, pair: 'none' })
/** The first cross of the plait: two loops are taken, two moved, two put, two knitted ... */
const cross: Pictures = { chart: 'Plait', row: 0, from: 2, to: 9 }

/** The figures of these moves, reckoned by themselves. */
function figuresOf({ chart: section, row, from, to }: Pictures) {
  const work = workPattern(onChart(mitt, section))
  const run = work.firstRuns[row]
  if (!run) throw new Error(`There is no row ${row + 1}.`)
  return stepFigures(walkRow(run, work.run.habits).slice(from, to + 2), handsContext(mitt))
}

const areStrips = (title: string): boolean => /^Pegs \d+ to \d+ seen from the outside/.test(title)

describe('step pictures', () => {
  test('stand under the name of the stitch, numbered, in order, with their sentences', () => {
    const text = allText(layOut(shown(cross)))
    expect(text).toContain('How it is worked: 2/2 left cross on pegs 3 to 6')
    expect(text).toContain('Round 1 of Plait.')
    const figures = figuresOf(cross)
    expect(figures.length).toBeGreaterThan(3)
    let at = text.indexOf('How it is worked')
    figures.forEach(({ sentence }, index) => {
      const next = text.indexOf(`${index + 1} `, at)
      expect(next).toBeGreaterThan(at)
      at = next
      const words = oneLine(sentence).split(' ').slice(0, 4).join(' ')
      expect(text.slice(at)).toContain(words)
    })
  })

  test('name each stitch where there are several', () => {
    const text = allText(layOut(shown({ chart: 'Cuff', row: 0, from: 0, to: 3 })))
    expect(text).toContain('How it is worked: Round 1 of Cuff')
    expect(text).toContain('U-wrap knit on pegs 1 and 2')
    expect(text).toContain('Purl on pegs 3 and 4')
  })

  test('never stand on another page than their sentences, and never outside it', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...paperSizes),
        fc.boolean(),
        fc.nat(20),
        fc.integer({ min: 0, max: 20 }),
        fc.constantFrom('Plait', 'Cuff'),
        (paper, largePrint, from, more, section) => {
          const asked: Pictures = { chart: section, row: 0, from, to: Math.min(31, from + more) }
          const { pages } = layOut(shown(asked), { paper, largePrint, charts: false, words: false })
          const area = liveArea(papers[paper])
          const { text } = typeScales[largePrint ? 'large' : 'usual']
          const figures = figuresOf(asked)
          const numbers: string[] = []
          let drawn = 0
          for (const { texts, pictures } of pages) {
            const strips = pictures.filter(({ scene }) => areStrips(scene.title))
            drawn += strips.length
            const here = texts.filter(
              ({ text: said, face, size }) =>
                /^\d+$/.test(said) && face === 'bold' && size === text,
            )
            numbers.push(...here.map(({ text: said }) => said))
            // As many numbers as pictures on the page, each right below its picture.
            expect(here).toHaveLength(strips.length)
            here.forEach(({ x, y }, index) => {
              const picture = strips[index]
              expect(picture?.x).toBeCloseTo(x, 6)
              const foot = (picture?.y ?? 0) + (picture?.scale ?? 1) * (picture?.scene.height ?? 0)
              expect(y).toBeGreaterThan(foot)
              expect(y - foot).toBeLessThan(3 * typeScales[largePrint ? 'large' : 'usual'].unit)
            })
            for (const { x, scale, scene } of strips)
              expect(x + scale * scene.width).toBeLessThanOrEqual(area.x + area.width + 0.01)
          }
          expect(drawn).toBe(figures.length)
          expect(numbers).toEqual(figures.map((_, index) => String(index + 1)))
        },
      ),
      { numRuns: 60 },
    )
  })

  test('are large: pegs at least 6 mm apart where there are no more than 16', () => {
    const { pages } = layOut(shown(cross, { chart: 'Cuff', row: 0, from: 0, to: 3 }))
    const strips = pages.flatMap(({ pictures }) =>
      pictures.filter(({ scene }) => areStrips(scene.title)),
    )
    expect(strips.length).toBeGreaterThan(4)
    for (const { scale, scene } of strips) {
      const pegs = scene.layers.filter(({ key }) => key.startsWith('peg ')).length
      expect((scale * scene.width) / (pegs + 0.9)).toBeGreaterThanOrEqual(6)
    }
  })

  test('are left out when they are not wanted', () => {
    expect(allText(layOut(shown(cross), { pictures: false }))).not.toContain('How it is worked')
  })

  test('of a piece of one chart stand after its words', () => {
    const heel = removeChart(keeperSock(), 'Leg')
    const one = withPiece(heel, {
      pair: 'none',
      pictures: [{ chart: 'Heel', row: 0, from: 20, to: 22 }],
      steps: [
        { kind: 'cast on', how: 'e-wrap', pegs: null },
        { kind: 'chart', chart: 'Heel', times: 1 },
        { kind: 'bind off', how: 'basic', pegs: null },
      ],
    })
    const text = pageText(layOut(one)).join(' ')
    expect(text.indexOf('How it is worked')).toBeGreaterThan(text.indexOf('bind-off and weave'))
    expect(text).toContain('German turn on peg 21')
  })
})

describe('pictures that cannot be drawn are told', () => {
  test.each([
    [{ chart: 'Thumb', row: 0, from: 0, to: 1 }, /no chart of this name/],
    [{ chart: 'Plait', row: 9, from: 0, to: 1 }, /row 10 .* it has 4/],
    [{ chart: 'Plait', row: 1, from: 40, to: 41 }, /moves 41 to 42 .* row 2 has 32 moves/],
    [{ chart: 'Plait', row: 1, from: 30, to: 41 }, /on to move 42; the row has 32 moves/],
  ] as const)('%j', (pictures, message) => {
    const { warnings } = layOut(shown(pictures))
    expect(warnings.map((one) => one.message)).toEqual([expect.stringMatching(message)])
  })
})
