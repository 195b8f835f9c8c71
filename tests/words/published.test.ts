/** Rows of printed books (title, year and place: tests/published/data), in today's wording. */
import { describe, expect, it } from 'vitest'
import { workRow } from '../../src/loom/work'
import type { Stitch } from '../../src/stitches/stitch'
import { writeRow } from '../../src/words/sentence'
import { readExamples, stitchesOf } from '../published/examples'
import { columnsOf, expand, takesOf } from '../published/notation'
import { habits, loomWith, rowOn } from '../published/onLoom'
import { expandSentence } from './expand'

const examples = readExamples(new URL('../published/data/worked-examples.json', import.meta.url))

function write(stitches: readonly Stitch[]) {
  const loops = takesOf(stitches)
  const pegs = Math.max(loops, columnsOf(stitches))
  const row = { ...rowOn(stitches, 0, pegs - 1, 'forward'), isPart: false }
  const run = workRow(loomWith(loops, pegs), row, habits)
  return { row, run, sentence: writeRow(run, 'ring', 'us') }
}

/** Runs of a list of stitches: the words of a book that repeats nothing inside its repeat. */
const runsOf = (list: readonly Stitch[]) =>
  list.filter((stitch, index) => stitch !== list[index - 1]).length

describe('rows of printed books', () => {
  const rows = examples.flatMap((example) =>
    example.rows.map((row) => [`${example.id}, row ${row.row}`, example, row] as const),
  )

  it.each(rows)('%s reads back stitch by stitch', (_, example, row) => {
    const { row: laid, run, sentence } = write(stitchesOf(example, row))
    expect(run.miscount).toBeNull()
    expect(expandSentence(sentence, run.loops, 'us')).toEqual(
      laid.sites.map(({ stitch }) => stitch.id),
    )
  })

  it.each(rows.filter(([, , row]) => (row.repeats ?? 0) > 2))(
    '%s takes no more words than the repeat in the book',
    (_, example, { before_repeat = '', repeat = '', after_repeat = '', repeats = 0 }) => {
      const block = expand(repeat)
      const list = [
        ...expand(before_repeat),
        ...Array.from({ length: repeats }, () => block).flat(),
        ...expand(after_repeat),
      ]
      const { sentence, row } = write(list)
      const extra = row.sites.length > list.length ? 1 : 0
      const printed =
        runsOf(expand(before_repeat)) + runsOf(block) + runsOf(expand(after_repeat)) + extra
      const written = sentence.replace('; rep from * to', ',').split(', ').length
      expect(written, `${example.id}: ${sentence}`).toBeLessThanOrEqual(printed + 1)
    },
  )

  it.each([
    ['rib-3x3-54', 'every round', '*k3, p3; rep from * to end.'],
    ['rib-2x2-service-sock', 'cuff', '*k2, p2; rep from * to end.'],
    ['welt-sock-26', '4', 'Purl.'],
    ['cable-6-lambert', '8', '*3/3 LC; rep from * to end.'],
    ['twist-8-cooper', 'twist row', 'k6, 4/4 RC, k6.'],
    ['plait-14-dillmont', '1', 'p4, 3/3 RC, p4.'],
    ['openwork-4-dillmont390', '5', '*k2tog, yo, k2; rep from * to end.'],
    ['pique-14', '1-2', '*p6, (p1, k1) 4 times; rep from * to end.'],
  ])('%s, row %s: %s', (id, name, sentence) => {
    const example = examples.find((one) => one.id === id)
    const row = example?.rows.find((one) => one.row === name)
    if (!example || !row) throw new Error(`There is no row ${name} in ${id}.`)
    expect(write(stitchesOf(example, row)).sentence).toBe(sentence)
  })
})
