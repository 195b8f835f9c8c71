/**
 * Rows of printed books (title, year and place: tests/published/data) in today's wording. The
 * notation is told in tests/published/notation.ts.
 */
import { castOnOf, type Example, type ExampleRow } from '../../published/examples'
import { expand, takesOf } from '../../published/notation'

/** "(yo,k1)x6" is "(yo, k1) 6 times", "C3/3F" is "C6F"; "k*" is "knit to end". */
export function inWords(line: string): string {
  return line
    .replace(/,/g, ', ')
    .replace(/\)x(\d+)/g, ') $1 times')
    .replace(
      /C(\d)\/(\d)([FB])/g,
      (_, front: string, back: string, where: string) => `C${Number(front) + Number(back)}${where}`,
    )
    .replace(
      /k\*, (.*)$/,
      (_, after: string) => `k to last ${takesOf(expand(after.replace(/ /g, '')))} sts, ${after}`,
    )
    .replace(/k\*$/, 'knit to end')
}

const stitches = (line: string): number => (line ? takesOf(expand(line)) : 0)

function repeated(before: string, repeat: string, after: string): string {
  const last = stitches(after)
  const to = last > 0 ? `to last ${last} sts, ${inWords(after)}` : 'to end'
  return `${before ? `${inWords(before)}, ` : ''}*${inWords(repeat)}; rep from * ${to}`
}

function sentenceOf({ plus = 0 }: Example, row: ExampleRow): string {
  const { canonical, before_repeat = '', repeat = '', after_repeat = '' } = row
  if (canonical !== undefined) {
    const edge = Math.floor(plus / 2)
    const plain = (count: number) => (count > 0 ? `k${count}` : '')
    return repeated(plain(edge), canonical, plain(plus - edge))
  }
  if (repeat) return repeated(before_repeat, repeat, after_repeat)
  return [before_repeat, after_repeat].filter(Boolean).map(inWords).join(', ')
}

export interface Worded {
  readonly text: string
  readonly pegs: number
  readonly flat: boolean
  /** The example's row that each real row comes from. */
  readonly rows: readonly ExampleRow[]
}

/** An example as a designer would write it today, a line for each row or range of rows. */
export function wordsOf(example: Example): Worded {
  const flat = example.shape === 'flat'
  const rows: ExampleRow[] = []
  const lines = example.rows.map((row) => {
    const [, first, last] = /^(\d+)-(\d+)/.exec(row.row) ?? []
    const times = first && last ? Number(last) - Number(first) + 1 : 1
    const from = rows.length + 1
    for (let n = 0; n < times; n++) rows.push(row)
    const count = row.stated_after ?? row.sts_after
    const said = count === undefined ? '' : ` (${count} sts)`
    const word = flat ? 'Row' : 'Rnd'
    const numbers = times === 1 ? `${word} ${from}` : `${word}s ${from}-${rows.length}`
    return `${numbers}: ${sentenceOf(example, row)}.${said}`
  })
  return { text: lines.join('\n'), pegs: castOnOf(example), flat, rows }
}
