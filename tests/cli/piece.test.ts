import { removeChart } from '../../src/pattern/edits/piece'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import * as v from 'valibot'
import { describe, expect, it } from 'vitest'
import { answer } from '../../src/cli/answer'
import { paint } from '../../src/pattern/edits/paint'
import { setWords } from '../../src/pattern/edits/words'
import type { Pattern } from '../../src/pattern/pattern'
import { onChart } from '../../src/pattern/charts'
import { workPattern } from '../../src/pattern/work'
import { workPiece } from '../../src/pattern/workPiece'
import { writeFile } from '../../src/shelf/format'
import { pieceText } from '../../src/words/piece/text'
import { plainText } from '../../src/words/text'
import { ferryMitt, keeperSock, withPiece, withSteps } from '../words/piece/pieces'
import { pegwright, seed, workFolder } from './call'
import { oneFile, severalSections } from './schema'
import { stitchOf } from '../../src/stitches/vocabulary'

const folder = workFolder()
let files = 0
const put = (pattern: Pattern): string => folder.put(`piece-${++files}.json`, writeFile(pattern))

const mitt = ferryMitt()
/** One decrease too many in the first round of the plait. */
const spoilt = onChart(paint(onChart(mitt, 'Plait'), stitchOf('k2tog'), 0, 0), 'Cuff')

describe('write', () => {
  it('prints the words of the whole piece', async () => {
    const { exit, out, err } = await pegwright(['write', put(mitt)])
    expect([exit, err]).toEqual([0, ''])
    expect(out).toBe(pieceText(workPiece(mitt)))
    expect(out).toContain('Work Cuff, Rnds 1-2, 6 times:')
  })

  it('prints words that read back to all the rows of the piece', async () => {
    const words = (await pegwright(['write', put(mitt)])).out
    const { exit, out } = await pegwright(['read', '--pegs', '32'], words)
    const rows = out.split('\n').filter((line) => /^(?:Rnd|Row) /.test(line))
    expect(rows).toHaveLength(workPiece(mitt).rows)
    expect(exit).toBe(0)
    expect(out).not.toMatch(/^error/m)
  })

  it.each(['us', 'uk'] as const)('prints one chart in %s terms', async (terms) => {
    const args = ['write', put(mitt), '--chart', 'Plait', '--terms', terms]
    const { exit, output } = await answer(args)
    expect(exit).toBe(0)
    expect(output).toBe(plainText(workPattern(onChart(mitt, 'Plait')), terms))
    expect(output).not.toContain('Cuff')
  })

  it('tells how a piece of one chart is cast on where that is not the plain way', async () => {
    const [, chart] = mitt.steps
    const one = withPiece(removeChart(mitt, 'Plait'), {
      pair: 'none',
      steps: [
        { kind: 'cast on', how: 'chain', pegs: null },
        ...(chart ? [chart] : []),
        { kind: 'bind off', how: 'basic', pegs: null },
      ],
    })
    const { output } = await answer(['write', put(one)])
    expect(output).toContain('Cast on 32 pegs with the chain cast-on')
  })
})

describe('check', () => {
  it('finds nothing wrong with a sound piece', async () => {
    for (const pattern of [mitt, keeperSock()]) {
      const { exit, output } = await answer(['check', put(pattern)])
      expect([exit, output]).toEqual([0, ''])
    }
  })

  it('looks at every chart and names it, and tells each error once', async () => {
    const file = put(spoilt)
    const { exit, out } = await pegwright(['check', file])
    expect(exit).toBe(1)
    const lines = out.trimEnd().split('\n')
    expect(lines[0]).toMatch(/: error row-count Plait, Rnd 1, pegs \d+-\d+: \S/)
    expect(out).not.toContain('In the chart')
    expect(lines[0]?.startsWith(`${file}: `)).toBe(true)
  })

  it('says what is wrong with the piece, with its step', async () => {
    const { steps } = keeperSock()
    const { exit, output } = await answer(['check', put(withSteps(keeperSock(), steps.slice(1)))])
    expect(exit).toBe(1)
    expect(output).toMatch(/: error piece-\S+( Leg)?: .*[Ss]tep 1\b/)
    const open = await answer(['check', put(withSteps(keeperSock(), steps.slice(0, -1)))])
    expect(open.exit).toBe(1)
    expect(open.output).toMatch(/: error piece-\S+: .*40 loops/)
  })

  it('gives rows of all charts in the order of use, and names them, with --json', async () => {
    // Nothing is bound off either.
    const open = withSteps(spoilt, spoilt.steps.slice(0, -1))
    const { output } = await answer(['check', put(onChart(open, 'Plait')), '--json'])
    const { rows, findings } = v.parse(severalSections, JSON.parse(output))
    expect(rows.map(({ chart, label }) => `${chart} ${label}`)).toEqual([
      'Cuff 1',
      'Cuff 2',
      'Plait 1',
      'Plait 2',
      'Plait 3',
      'Plait 4',
    ])
    const counts = findings.filter(({ rule }) => rule === 'row-count')
    expect(counts.map(({ chart, row }) => [chart, row])).toEqual([['Plait', '1']])
    const ofPiece = findings.filter(({ rule }) => rule.startsWith('piece-'))
    expect(ofPiece.length).toBeGreaterThan(0)
    for (const { row, pegs } of ofPiece) expect([row, pegs]).toEqual([null, null])
  })

  it('names no chart where there is one', async () => {
    const { output } = await answer(['check', seed('lamp-room-cuff'), '--json'])
    expect(v.parse(oneFile, JSON.parse(output)).rows.length).toBeGreaterThan(1)
  })

  it('holds the own words of every chart against its chart', async () => {
    const own = onChart(setWords(onChart(mitt, 'Plait'), 'Rnds 1-4: purl'), 'Cuff')
    const { output } = await answer(['check', put(own), '--json'])
    const { findings } = v.parse(severalSections, JSON.parse(output))
    expect(findings.filter(({ chart }) => chart === 'Plait').length).toBeGreaterThan(0)
    expect(findings.filter(({ chart }) => chart === 'Cuff')).toEqual([])
  })

  it('compares words with the chart that is named', async () => {
    const words = folder.put('plait.txt', 'Rnd 1: *k2, 2/2 LC, k2; rep from * to end.\nRnds 2-4: k')
    const wrong = await answer(['check', put(mitt), '--words', words])
    expect(wrong.exit).toBe(1)
    const right = await answer(['check', put(mitt), '--words', words, '--chart', 'Plait'])
    expect([right.exit, right.output]).toEqual([0, ''])
  })
})

describe('draw', () => {
  const drawn = async (...args: string[]): Promise<string> => {
    const file = join(folder.path, `${++files}.svg`)
    expect(await answer(['draw', put(mitt), ...args, '-o', file])).toMatchObject({ exit: 0 })
    return readFileSync(file, 'utf8')
  }

  it('draws the piece from the side', async () => {
    const svg = await drawn('--as', 'side')
    expect(svg).toContain('The piece from the side')
    for (const text of ['Cuff × 6', 'Plait × 3', 'cast on', 'bind off'])
      expect(svg).toContain(`>${text}<`)
  })

  it('draws the chart that is named, else the one on the bench', async () => {
    expect(await drawn('--as', 'rows')).toBe(await drawn('--as', 'rows', '--chart', 'Cuff'))
    expect(await drawn('--as', 'ring', '--chart', 'Plait')).not.toBe(
      await drawn('--as', 'ring', '--chart', 'Cuff'),
    )
  })
})

describe('cannot use', () => {
  const file = put(mitt)

  it.each([
    [['write', file, '--chart', 'Thumb'], /no chart "Thumb"; there are "Cuff", "Plait"\./],
    [['write', seed('lamp-room-cuff'), '--chart', 'Thumb'], /"Thumb"; there is "/],
    [['draw', file, '--as', 'rows', '--chart', 'Thumb', '-o', 'out.svg'], /"Cuff", "Plait"/],
    [['draw', file, '--as', 'side', '--chart', 'Cuff', '-o', 'out.svg'], /--as side draws/],
    [['draw', file, '--as', 'front', '-o', 'out.svg'], /rows or ring or side.*"front"/],
    [['check', file, '--chart', 'Cuff'], /all charts of a pattern file are checked/],
    [['check', '--words', file, '--pegs', '8', '--chart', 'Cuff'], /none is named/],
    [['read', file, '--pegs', '8', '--chart', 'Cuff'], /read has no option --chart/],
  ])('%j', async (args, reason) => {
    const { exit, output, complaints } = await answer(args)
    expect([exit, output]).toEqual([2, ''])
    expect(complaints).toEqual([expect.stringMatching(reason)])
    expect(existsSync('out.svg')).toBe(false)
  })
})
