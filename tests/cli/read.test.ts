import { describe, expect, it } from 'vitest'
import { answer } from '../../src/cli/answer'
import { pegwright, seed, workFolder } from './call'
import { parsed } from './schema'

const folder = workFolder()

describe('read', () => {
  it('gives every real row, bands and references worked out, as JSON', async () => {
    const text =
      'Rnd 1: *k2, p2; rep from * to end. (8 sts)\nRnd 2: As Rnd 1.\nRep Rnds 1-2 once more.\n'
    const { exit, out, err } = await pegwright(['read', '--pegs', '8', '--json'], text)
    expect(err).toBe('')
    expect(exit).toBe(0)
    const { rows, findings } = parsed(out)
    expect(rows.map(({ label }) => label)).toEqual(['1', '2', '3', '4'])
    for (const row of rows)
      expect(row).toMatchObject({
        before: 8,
        takes: 8,
        makes: 8,
        after: 8,
        stitches: ['k', 'k', 'p', 'p', 'k', 'k', 'p', 'p'],
      })
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([])
  })

  it('counts decreases, and says where a round does not add up', async () => {
    const file = folder.put(
      'crown.txt',
      'Rnd 1: Knit.\nRnd 2: *k2, k2tog; rep from * to end. (6 sts)\nRnd 3: k5.\n',
    )
    const { exit, out } = await pegwright(['read', file, '--pegs', '8', '--json'])
    expect(exit).toBe(1)
    const { rows, findings } = parsed(out)
    expect(rows[1]).toMatchObject({ before: 8, takes: 8, makes: 6, after: 6 })
    // A loop that a round doesn't work stays on, as --help says of "after".
    expect(rows[2]).toMatchObject({ before: 6, takes: 5, makes: 5, after: 6 })
    const errors = findings.filter(({ severity }) => severity === 'error')
    expect(errors.map(({ row }) => row)).toContain('3')
    // The count of a round is said once, not by the reader and by the checks.
    expect(
      errors.filter(({ row, rule }) => row === '3' && rule === 'row-count').length,
    ).toBeLessThan(2)
  })

  it('fails for words that tell no row, and for no words at all', async () => {
    const prose = await pegwright(['read', '--pegs', '8'], 'This cuff is for the winter.\n')
    expect(prose.exit).toBe(1)
    expect(prose.out).toMatch(/^error no-rows: /)
    const strange = await pegwright(['read', '--pegs', '8'], 'Die Maschen wie sie erscheinen\n')
    expect(strange.exit).toBe(1)
    expect(strange.out.trimEnd().split('\n')).toHaveLength(1)
    expect(strange.out).toMatch(/^error not-english: /)
    const nothing = await pegwright(['read', '--pegs', '8'], ' \n')
    expect(nothing).toMatchObject({ exit: 2, out: '' })
    expect(nothing.err).toContain('There is nothing to read')
    const file = folder.put('nothing.txt', '')
    const checked = await pegwright(['check', '--words', file, '--pegs', '8'])
    expect(checked.exit).toBe(2)
    expect(checked.err).toContain('There is nothing to read')
  })

  it('says once that a row turns plainly', async () => {
    const text = 'Row 1: Knit pegs 1-18, turn.\nRow 2: Knit pegs 18-1, turn.\nRnd 3: knit.\n'
    const { out } = await pegwright(['read', '--pegs', '36', '--json'], text)
    expect(parsed(out).findings.map(({ rule, row }) => [rule, row])).toEqual([
      ['plain-turn', '1'],
      ['plain-turn', '2'],
    ])
  })

  it('prints a line a row, then a line a finding', async () => {
    const { exit, out } = await pegwright(
      ['read', '-', '--pegs', '6'],
      'Rnd 1: k4, p2.\nRnd 2: k4.\n',
    )
    expect(exit).toBe(1)
    const lines = out.trimEnd().split('\n')
    expect(lines[0]).toBe('Rnd 1: k4, p2 (6 loops)')
    expect(lines[1]).toMatch(/^Rnd 2: k\S+ \(6 loops\)$/)
    expect(lines.slice(2).some((line) => /^error \S+ Rnd 2.*: /.test(line))).toBe(true)
  })

  it('reads flat words in other terms', async () => {
    const args = ['read', '--pegs', '6', '--flat', '--terms', 'uk']
    const { exit, out } = await pegwright(
      [...args, '--json'],
      'Row 1: k1, skpo, yo, k3.\nRow 2: Purl.\n',
    )
    const { rows } = parsed(out)
    expect(rows.map(({ stitches }) => stitches.join(' '))).toEqual([
      'k skpo yo k k k',
      'p p p p p p',
    ])
    expect(exit).toBe(0)
  })

  it('takes the size that is asked for', async () => {
    const file = folder.put('sizes.txt', 'Rnd 1: k4 (6, 8), p2.\n')
    const first = await answer(['read', file, '--pegs', '6', '--json'])
    const third = await answer(['read', file, '--pegs', '10', '--size', '3', '--json'])
    expect(parsed(first.output).rows[0]?.stitches).toHaveLength(6)
    expect(parsed(third.output).rows[0]?.stitches).toHaveLength(10)
  })

  it('gives all of a long answer through a pipe', async () => {
    const text = Array.from(
      { length: 500 },
      (_, row) => `Rnd ${row + 1}: *k1, p1; rep from * to end.`,
    )
    const { exit, out } = await pegwright(['read', '--pegs', '200', '--json'], text.join('\n'))
    expect(out.length).toBeGreaterThan(400_000)
    expect(parsed(out).rows).toHaveLength(500)
    expect(exit).toBe(0)
  })
})

describe('words of more rows than a chart has', () => {
  it('are counted to the end, and it is said from where on nothing else was checked', async () => {
    const lines = Array.from({ length: 610 }, (_, n) => `Rnd ${n + 1}: k${n % 7}, p${8 - (n % 7)}.`)
    const args = ['read', folder.put('long.txt', lines.join('\n')), '--pegs', '8', '--json']
    const { exit, output } = await answer(args)
    const { rows, findings } = parsed(output)
    expect([exit, rows.length]).toEqual([0, 610])
    expect(findings.filter(({ rule }) => rule === 'no-room')).toEqual([
      expect.objectContaining({
        severity: 'warning',
        row: '601',
        message: expect.stringMatching(/room for 600 of these 610 rows.*only the counts/) as string,
      }),
    ])
    const wrong = folder.put('long-wrong.txt', [...lines, 'Rnd 611: k7.'].join('\n'))
    expect((await answer(['read', wrong, '--pegs', '8'])).exit).toBe(1)
  })
})

describe('wrong-side rows', () => {
  const file = folder.put('sides.txt', 'Row 1 (RS): Knit.\nRow 2 (WS): Purl.\n')
  const hints = async (...more: string[]) => {
    const { output } = await answer(['read', file, '--pegs', '8', '--flat', '--json', ...more])
    return parsed(output).findings.filter(({ rule }) => rule === 'wrong-side')
  }

  it('of flat words hint at --needles, unless it is said', async () => {
    expect(await hints()).toEqual([
      expect.objectContaining({
        severity: 'hint',
        advice: expect.stringContaining('--needles') as string,
      }),
    ])
    expect(await hints('--needles')).toEqual([])
  })
})

describe('read cannot use', () => {
  const threeSizes = folder.put('three.txt', 'Rnd 1: k16 (18, 20), p8.\n')
  const oneSize = folder.put('one-size.txt', 'Rnd 1: k24.\n')

  it('says why in one line on the standard error, and exits with 2', async () => {
    const { exit, out, err } = await pegwright(['read', '--pegs', '2'])
    expect([exit, out]).toEqual([2, ''])
    expect(err).toMatch(/^--pegs must be .*"2"\.\n$/)
  })

  it.each([
    [['read'], /--pegs/],
    [['read', '--pegs', '2'], /from 3 to 400.*"2"/],
    [['read', '--pegs', '401'], /from 3 to 400.*"401"/],
    [['read', '--pegs', 'many'], /"many"/],
    [['read', '--pegs'], /--pegs/],
    [['read', '--pegs', '-4'], /--pegs/],
    [['read', '--pegs', '24', '--loud'], /--loud/],
    [['read', '--pegs', '24', '--as', 'rows'], /--as/],
    [['read', '--pegs', '24', '--direction', 'left'], /clockwise or counterclockwise.*"left"/],
    [['read', '--pegs', '24', '--terms', 'fr'], /us or uk.*"fr"/],
    [['read', '--pegs', '24', '--size', '0'], /"0"/],
    [['read', '--pegs', '24', '--flat', '--direction', 'clockwise'], /Leave out --direction/],
    [['read', '--pegs', '24', '--needles'], /Add --flat/],
    [['read', threeSizes, '--pegs', '24', '--size', '9'], /have 3 sizes; --size says 9/],
    [['read', oneSize, '--pegs', '24', '--size', '2'], /have one size.*leave it out/],
    [['read', 'no-such-words.txt', '--pegs', '24'], /no-such-words\.txt.*no such file/],
    [['read', 'one.txt', 'two.txt', '--pegs', '24'], /one file; 2/],
    [['unpick'], /"unpick".*read, check, write, draw/],
    [[], /read, check, write, draw/],
  ])('%j', async (args, reason) => {
    const { exit, output, complaints } = await answer(args)
    expect(exit).toBe(2)
    expect(output).toBe('')
    expect(complaints).toEqual([expect.stringMatching(reason)])
    expect(complaints[0]).not.toContain('\n')
  })

  const long = 'yarrow'.repeat(40)
  it.each([
    [[long]],
    [['read', '--pegs', long]],
    [['read', '--pegs', '24', `--${long}`]],
    [['read', '--pegs', '24', '--direction', long]],
    [['write', seed('shingle-mitt'), '--chart', long]],
  ])('repeats no more than the beginning of what was typed', async (args) => {
    const { complaints } = await answer(args)
    expect(complaints).toEqual([expect.stringContaining('yarrow') as string])
    expect(complaints[0]).not.toContain('yarrow'.repeat(20))
  })
})
