import { setAside } from '../../src/pattern/edits/settings'
import { setWords } from '../../src/pattern/edits/words'
import { namedOn } from '../../src/pattern/charts'
import { compare } from '../../src/words/compare/compare'
import { toldOf } from '../../src/words/compare/told/told'
import { read } from '../../src/words/read/read'
import { readSettingsOf } from '../../src/words/read/reading'
import { readFileSync } from 'node:fs'
import * as v from 'valibot'
import { describe, expect, it } from 'vitest'
import { paint } from '../../src/pattern/edits/paint'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { workPattern } from '../../src/pattern/work'
import { readFile, writeFile } from '../../src/shelf/format'
import { writeWords } from '../../src/words/write'
import { answer } from '../../src/cli/answer'
import { pegwright, seed, workFolder } from './call'
import { parsed, severalFiles } from './schema'
import { stitchOf } from '../../src/stitches/vocabulary'

const folder = workFolder()

function open(name: string): Pattern {
  const result = readFile(readFileSync(seed(name), 'utf8'))
  if (!result.ok) throw new Error(result.message)
  return result.pattern
}

const cuff = open('lamp-room-cuff')
/** One decrease too many in its first round. */
const wrong = paint(cuff, stitchOf('k2tog'), 0, 0)
const wordsOf = (pattern: Pattern): string =>
  writeWords(workPattern(pattern), 'us')
    .lines.map(({ text }) => text)
    .join('\n')

describe('check', () => {
  it('finds nothing wrong with a starter chart', async () => {
    const { exit, err } = await pegwright(['check', seed('lamp-room-cuff')])
    expect(err).toBe('')
    expect(exit).toBe(0)
  })

  it('prints a finding a line, with the file, the round and the pegs', async () => {
    const file = folder.put('wrong.json', writeFile(wrong))
    const { exit, out } = await pegwright(['check', file])
    expect(exit).toBe(1)
    const lines = out.trimEnd().split('\n')
    expect(lines[0]?.startsWith(`${file}: error row-count Rnd 1`)).toBe(true)
    expect(lines[0]).toMatch(/: error row-count Rnd 1, pegs \d+-\d+: \S.*\. \S.*\.$/)
  })

  it('gives one object of rows and findings with --json', async () => {
    const file = folder.put('wrong-too.json', writeFile(wrong))
    const { exit, output } = await answer(['check', file, '--json'])
    expect(exit).toBe(1)
    const { rows, findings } = parsed(output)
    const { passes } = workPattern(cuff)
    expect(rows.map(({ label }) => label)).toEqual(passes.map(({ number }) => String(number)))
    expect(rows[0]?.stitches[0]).toBe('k2tog')
    expect(findings.find(({ rule }) => rule === 'row-count')).toMatchObject({
      severity: 'error',
      row: '1',
    })
  })

  it('names the file of each row and finding where there are several', async () => {
    const bad = folder.put('bad.json', writeFile(wrong))
    const { exit, out } = await pegwright(['check', seed('lamp-room-cuff'), bad, '--json'])
    expect(exit).toBe(1)
    const { rows, findings } = v.parse(severalFiles, JSON.parse(out))
    expect([...new Set(rows.map(({ file }) => file))]).toEqual([seed('lamp-room-cuff'), bad])
    expect(
      findings.filter(({ severity }) => severity === 'error').every(({ file }) => file === bad),
    ).toBe(true)
  })

  it('checks words alone', async () => {
    const words = folder.put('words.txt', 'Rnd 1: Knit.\nRnd 2: k2, 2/2 LC, k1.\n')
    const { exit, output } = await answer(['check', '--words', words, '--pegs', '8'])
    expect(exit).toBe(1)
    expect(output).toMatch(new RegExp(`^${words}: error \\S+ Rnd 2`, 'm'))
  })

  it('says once what is wrong with a line that is called for again', async () => {
    const words = folder.put(
      'again.txt',
      'Rnd 1: k11.\nRnd 2: As Rnd 1.\nRep Rnds 1-2 twice more.\n',
    )
    const args = ['check', '--words', words, '--pegs', '12']
    const { exit, output } = await answer(args)
    expect(exit).toBe(1)
    expect(output.split('\n').filter((line) => line.includes('row-count'))).toEqual([
      expect.stringMatching(/: error row-count Rnd 1/),
    ])
    const { rows, findings } = parsed((await answer([...args, '--json'])).output)
    expect(rows).toHaveLength(6)
    expect(findings.filter(({ rule }) => rule === 'row-count')).toHaveLength(1)
  })

  it('says again what is wrong with another line', async () => {
    const words = folder.put('both.txt', 'Rnd 1: k11.\nRnd 2: As Rnd 1.\nRnd 3: p11.\n')
    const { output } = await answer(['check', '--words', words, '--pegs', '12'])
    const named = output.split('\n').flatMap((line) => /row-count (Rnd \d)/.exec(line)?.[1] ?? [])
    expect(named).toEqual(['Rnd 1', 'Rnd 3'])
  })

  it('holds the own words in a pattern file against its chart', async () => {
    const words = wordsOf(cuff)
    const same = folder.put('own-same.json', writeFile(setWords(cuff, words)))
    expect(await answer(['check', same])).toMatchObject({ exit: 0, output: '' })
    const differing = setWords(cuff, words.replace('k', 'p'))
    const other = folder.put('own-other.json', writeFile(differing))
    const { exit, output } = await answer(['check', other, '--json'])
    expect(exit).toBe(1)
    const { rows, findings } = parsed(output)
    expect(rows).toHaveLength(workPattern(cuff).passes.length)
    expect(findings.map(({ rule, row }) => [rule, row])).toEqual([['words-differ', '1']])
    const [told] = toldOf(
      compare(
        read(namedOn(differing).words ?? '', readSettingsOf(differing)),
        workPattern(differing),
      ),
    ).findings
    const calm = folder.put('own-aside.json', writeFile(setAside(differing, told?.id ?? '', true)))
    expect(await answer(['check', calm])).toMatchObject({ exit: 0, output: '' })
  })

  it('tells a round whose stitches do not add up once, as the bench does', async () => {
    const pattern = folder.put('plain.json', writeFile(newPattern(12, 1)))
    const words = folder.put('off.txt', 'Rnd 1: p1, k4, p1, k6. (13 sts)\n')
    const { output } = await answer(['check', pattern, '--words', words, '--json'])
    const { findings } = v.parse(severalFiles, JSON.parse(output))
    const ofWords = findings.filter(({ file }) => file === words)
    expect(ofWords.map(({ rule, pegs }) => [rule, pegs])).toEqual([
      ['words-differ', null],
      ['stated-count', null],
    ])
  })

  it('holds words against their pattern', async () => {
    const pattern = folder.put('cuff.json', writeFile(cuff))
    const same = folder.put('same.txt', wordsOf(cuff))
    expect(await answer(['check', pattern, '--words', same])).toMatchObject({
      exit: 0,
      complaints: [],
    })
    const [first = '', ...rest] = wordsOf(cuff).split('\n')
    const other = folder.put('other.txt', [first.replace('k', 'p'), ...rest].join('\n'))
    const { exit, out } = await pegwright(['check', pattern, '--words', other, '--json'])
    expect(exit).toBe(1)
    const { findings } = v.parse(severalFiles, JSON.parse(out))
    const differing = findings.filter(({ rule }) => rule === 'words-differ')
    expect(differing).toHaveLength(1)
    expect(differing[0]).toMatchObject({ file: other, row: '1', severity: 'error' })
    expect(differing[0]?.message).toMatch(/the words purl .* the chart knits/)
  })
})

describe('check cannot use', () => {
  const broken = folder.put('broken.json', '{ "pegwright": 1, ')
  const beginning = folder.put('beginning.json', '{broken')
  const foreign = folder.put('letter.txt', 'Dear all')

  it.each([
    [['check'], /--words/],
    [['check', 'none.json'], /none\.json.*no such file/],
    [['check', broken], /broken\.json.*damaged/],
    [['check', beginning], /beginning\.json.*damaged at line 1, column 2/],
    [
      ['check', '--words', foreign, '--pegs', '-4'],
      /must be a whole number from 3 to 400; it is "-4"/,
    ],
    [['check', foreign], /letter\.txt.*not a Pegwright file/],
    [['check', folder.path], /it is a folder/],
    [['check', '--words', 'none.txt', '--pegs', '24'], /none\.txt.*no such file/],
    [['check', '--words', foreign], /--pegs/],
    [['check', seed('lamp-room-cuff'), '--pegs', '24'], /--pegs is for words/],
    [['check', seed('lamp-room-cuff'), '--words', foreign, '--pegs', '5'], /--pegs says 5/],
  ])('%j', async (args, reason) => {
    const { exit, output, complaints } = await answer(args)
    expect(exit).toBe(2)
    expect(output).toBe('')
    expect(complaints).toEqual([expect.stringMatching(reason)])
    expect(complaints[0]).not.toContain('\n')
  })

  it.each([
    [['check', broken, '--json']],
    [['check', 'none.json', '--json']],
    [['read', foreign, '--pegs', '2', '--json']],
  ])('%j: the JSON has the reason too', async (args) => {
    const { exit, output, complaints } = await answer(args)
    expect(exit).toBe(2)
    expect(complaints).toHaveLength(1)
    expect(JSON.parse(output)).toEqual({ rows: [], findings: [], unusable: complaints })
  })

  it('one file of several, and still checks the others', async () => {
    const file = folder.put('wrong-three.json', writeFile(wrong))
    const { exit, output, complaints } = await answer(['check', broken, file])
    expect(exit).toBe(2)
    expect(complaints).toEqual([expect.stringMatching(/broken\.json/)])
    expect(output).toContain(`${file}: error row-count`)
  })
})
