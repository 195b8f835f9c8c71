import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { chartErrors } from '../../src/checks/open'
import { rotateColumns } from '../../src/pattern/edits/turn-round'
import { onChart } from '../../src/pattern/charts'
import { setWords } from '../../src/pattern/edits/words'
import { workPattern } from '../../src/pattern/work'
import { readFile, writeFile } from '../../src/shelf/format'
import { plainText } from '../../src/words/text'
import { answer } from '../../src/cli/answer'
import { pegwright, seed, workFolder } from './call'

const folder = workFolder()
const result = readFile(readFileSync(seed('hawser-band'), 'utf8'))
if (!result.ok) throw new Error(result.message)
const work = workPattern(result.pattern)

describe('write', () => {
  it.each(['us', 'uk'] as const)('prints the whole instructions in %s terms', async (terms) => {
    const { exit, output } = await answer(['write', seed('hawser-band'), '--terms', terms])
    expect(exit).toBe(0)
    expect(output).toBe(plainText(work, terms))
    expect(output).toMatch(terms === 'us' ? /bind off/i : /cast off/i)
  })

  it('prints own words as they stand, unless the words of the chart are asked for', async () => {
    const words = 'Rnds 1-4: my own way.\n  As I say it.'
    const file = folder.put('own.json', writeFile(setWords(result.pattern, words)))
    expect((await answer(['write', file])).output).toBe(`${words}\n`)
    expect((await answer(['write', file, '--from-charts'])).output).toBe(plainText(work))
    expect((await answer(['write', file, '--terms', 'uk'])).output).toBe(plainText(work, 'uk'))
  })

  it('prints own words of one chart of a piece under its name, once', async () => {
    const sock = readFile(readFileSync(seed('fog-watch-socks'), 'utf8'))
    if (!sock.ok) throw new Error(sock.message)
    const words = 'Rnd 1: as I say it.'
    const file = folder.put('sock.json', writeFile(setWords(onChart(sock.pattern, 'Leg'), words)))
    const { output } = await answer(['write', file])
    expect(output.split(words)).toHaveLength(2)
    expect(output).toMatch(/\nHeel\n/)
    const asCharted = (await answer(['write', seed('fog-watch-socks')])).output
    expect(output).not.toBe(asCharted)
    expect((await answer(['write', file, '--from-charts'])).output).toBe(asCharted)
  })

  it('takes a pattern from the standard input', async () => {
    const text = readFileSync(seed('hawser-band'), 'utf8')
    expect((await pegwright(['write', '-'], text)).out).toBe(plainText(work))
  })
})

describe('draw', () => {
  it.each(['rows', 'ring'])('writes the chart as %s', async (as) => {
    const file = join(folder.path, `${as}.svg`)
    const { exit, out } = await pegwright(['draw', seed('hawser-band'), '--as', as, '-o', file])
    expect([exit, out]).toEqual([0, ''])
    const svg = readFileSync(file, 'utf8')
    expect(svg).toMatch(/^<\?xml[^]*<svg [^]*<\/svg>\n$/)
    expect(svg).toContain('<path')
  })

  it('marks the drawing of a chart with errors as a draft', async () => {
    const broken = rotateColumns(result.pattern, 1)
    const file = folder.put('broken.json', writeFile(broken))
    expect(chartErrors(workPattern(broken)).length).toBeGreaterThan(0)
    expect(chartErrors(work)).toEqual([])
    const drawn = async (name: string) =>
      (await answer(['draw', name, '--as', 'rows', '-o', '-'])).output
    expect(await drawn(file)).toMatch(/font-weight="bold"[^>]*>DRAFT</)
    expect(await drawn(seed('hawser-band'))).not.toContain('DRAFT')
  })

  it.each([
    [['draw', seed('hawser-band'), '-o', 'out.svg'], /--as rows/],
    [
      ['draw', seed('hawser-band'), '--as', 'rows', '-o', join(folder.path, 'none', 'out.svg')],
      /no folder .*none; make it first/,
    ],
    [['draw', seed('drift-net-panel'), '--as', 'ring', '-o', 'out.svg'], /rake.*say --as rows/],
    [['draw', seed('hawser-band'), '--as', 'square', '-o', 'out.svg'], /rows or ring.*"square"/],
    [['draw', seed('hawser-band'), '--as', 'rows'], /-o OUT\.svg/],
    [['draw', '--as', 'rows', '-o', 'out.svg'], /takes one file; 0/],
    [
      ['draw', seed('hawser-band'), '--as', 'rows', '-o', 'no/such/out.svg'],
      /out\.svg cannot be written/,
    ],
    [['write'], /takes one file; 0/],
    [['write', 'none.json'], /no such file/],
  ])('cannot use %j', async (args, reason) => {
    const { exit, output, complaints } = await answer(args)
    expect(exit).toBe(2)
    expect(output).toBe('')
    expect(complaints).toEqual([expect.stringMatching(reason)])
    expect(complaints[0]).not.toContain('\n')
    expect(existsSync('out.svg')).toBe(false)
  })
})
