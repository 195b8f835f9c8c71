import { namedOn } from '../../../src/pattern/charts'
import { expect, test, vi } from 'vitest'
import { setWords } from '../../../src/pattern/edits/words'
import { paint } from '../../../src/pattern/edits/paint'
import { setBand } from '../../../src/pattern/edits/rows'
import { setAside, setLoom } from '../../../src/pattern/edits/settings'
import { newPattern, type Pattern } from '../../../src/pattern/pattern'
import { smallBench } from '../render'
import { stitchOf } from '../../../src/stitches/vocabulary'

const withWords = (...lines: string[]) => smallBench(setWords(newPattern(12, 4), lines.join('\n')))
const agreeing = [
  'Rnd 1: *k2, p2; rep from * to end. (12 sts)',
  'Rnd 2: Knit.',
  'Rnd 3: As Rnd 1.',
  'Rnd 4: Knit.',
]
/** The chart that those words tell. */
const ribbed = (): Pattern =>
  [2, 3, 6, 7, 10, 11].reduce(
    (pattern, peg) => paint(paint(pattern, stitchOf('p'), 0, peg), stitchOf('p'), 2, peg),
    newPattern(12, 4),
  )
const ribbedBench = (lines: readonly string[] = agreeing) =>
  smallBench(setWords(ribbed(), lines.join('\n')))

test('words are written from the chart until someone types', () => {
  const bench = smallBench()
  const { wording } = bench
  expect(wording.standing).toEqual({ kind: 'written' })
  expect(wording.text).toBe('Rnds 1-6: Knit. (12 sts)')
  wording.type('Rnds 1-6: Knit all. (12 sts)', 0)
  expect(bench.work.words).toBe('Rnds 1-6: Knit all. (12 sts)')
  expect(wording.standing).toEqual({ kind: 'agree' })
})

test('what is typed in one go is taken back as one; a pause or a moved caret ends it', () => {
  const bench = smallBench()
  const type = (text: string, now: number) => bench.wording.type(text, now)
  type('a', 0)
  type('ab', 300)
  type('abc', 900)
  type('abc d', 3000)
  bench.wording.endTyping()
  type('abc de', 3100)
  const back = () => {
    bench.undo()
    return bench.work.words
  }
  expect(back()).toBe('abc d')
  expect(back()).toBe('abc')
  expect(back()).toBe(null)
})

test('an edit of the chart between two keys parts them', () => {
  const bench = smallBench()
  bench.wording.type('a', 0)
  bench.apply('Purl', (pattern) => paint(pattern, stitchOf('p'), 0, 0))
  bench.wording.type('ab', 100)
  bench.undo()
  expect(bench.work.words).toBe('a')
  bench.undo()
  bench.undo()
  expect(bench.work.words).toBe(null)
})

test('words that are kept stay when the chart changes, and are written anew only when told', () => {
  const bench = smallBench()
  bench.wording.keep()
  const kept = bench.wording.text
  bench.apply('Purl', (pattern) => paint(pattern, stitchOf('p'), 2, 4))
  expect(bench.wording.text).toBe(kept)
  expect(bench.wording.standing).toEqual({ kind: 'differ', rounds: 1, here: false })
  bench.goTo({ row: 2, peg: 0 })
  expect(bench.wording.standing).toEqual({ kind: 'differ', rounds: 1, here: true })
  bench.wording.writeAgain()
  expect(bench.wording.standing).toEqual({ kind: 'written' })
  expect(bench.wording.text).toContain('Rnd 3: k4, p1, k7.')
  bench.undo()
  expect(bench.wording.text).toBe(kept)
})

test('the same in other words is no difference', () => {
  const bench = ribbedBench([
    'Round 1: (K2, P2) three times',
    'Round 2: knit all pegs',
    'Round 3: as round 1',
    'Round 4: knit to end',
  ])
  expect(bench.wording.findings.map(({ message }) => message)).toEqual([])
  expect(bench.wording.standing).toEqual({ kind: 'agree' })
})

test('a difference is mended in the words or in the chart, and undo gives it back', () => {
  const wrong = agreeing.with(1, 'Rnd 2: k5, p1, k6.')
  for (const side of ['chart', 'words'] as const) {
    const bench = ribbedBench(wrong)
    const [finding] = bench.wording.findings
    expect(finding?.place.rows).toEqual([1])
    expect(finding?.place.pegs).toEqual([{ from: 5, to: 5 }])
    const fix = finding?.fixes.find(({ edit }) => {
      const after = edit(bench.pattern)
      return side === 'words'
        ? namedOn(after).words !== bench.work.words
        : namedOn(after).words === bench.work.words
    })
    if (!finding || !fix) throw new Error(`There is no fix of the ${side}`)
    bench.wording.mend(finding, fix.label)
    expect(bench.wording.standing).toEqual({ kind: 'agree' })
    bench.undo()
    expect(bench.wording.standing).toMatchObject({ kind: 'differ', rounds: 1 })
  }
})

test('a row that is called for again says once what is wrong with it', () => {
  const bench = withWords('Rnd 1: k11.', 'Rnd 2: As Rnd 1.', 'Rep Rnds 1-2 once more.')
  const counts = bench.wording.findings.filter(({ rule }) => rule === 'row-count')
  expect(counts).toHaveLength(1)
})

test('the caret takes the place of the bench to the stitch it stands at', () => {
  const bench = ribbedBench()
  const { wording } = bench
  const at = (line: number, word: string) => {
    const start = agreeing.slice(0, line).join('\n').length + (line > 0 ? 1 : 0)
    return start + (agreeing[line] ?? '').indexOf(word)
  }
  const move = (place: number) => wording.moveCaret({ from: place, to: place }, true)
  move(at(0, 'p2'))
  expect(bench.spot).toEqual({ row: 0, peg: 2 })
  move(at(1, 'Knit'))
  expect(bench.spot).toEqual({ row: 1, peg: 2 })
  move(at(2, 'As'))
  expect(bench.spot).toEqual({ row: 2, peg: 2 })
  wording.moveCaret({ from: 0, to: 0 }, false)
  expect(bench.spot).toEqual({ row: 2, peg: 2 })
})

test('a place that the words at the caret tell of already stays', () => {
  const bench = ribbedBench()
  bench.goTo({ row: 0, peg: 7 })
  const at = agreeing[0]?.indexOf('p2') ?? 0
  bench.wording.moveCaret({ from: at, to: at }, true)
  expect(bench.spot).toEqual({ row: 0, peg: 7 })
})

test('worked the other way, the words go from the last peg to the first', () => {
  const flat = setLoom(newPattern(12, 2), { shape: 'bar' })
  const bench = smallBench(setWords(flat, 'Row 1: Knit.\nRow 2: k3, k9.'))
  const placeAt = (word: string) => {
    const at = bench.wording.text.indexOf(word)
    bench.wording.moveCaret({ from: at, to: at }, true)
    return bench.spot
  }
  expect(placeAt('k3')).toEqual({ row: 1, peg: 11 })
  expect(placeAt('k9')).toEqual({ row: 1, peg: 8 })
})

test('the line of the current row is lit, and the words of its stitch', () => {
  const bench = ribbedBench()
  const lit = () => {
    const { lit } = bench.wording
    const part = (range: { from: number; to: number } | null | undefined) =>
      range ? bench.wording.text.slice(range.from, range.to) : null
    return [part(lit?.line)?.trim(), part(lit?.stitch)]
  }
  bench.goTo({ row: 0, peg: 3 })
  expect(lit()).toEqual([agreeing[0], 'p2'])
  bench.goTo({ row: 2, peg: 3 })
  expect(lit()).toEqual([agreeing[2], null])
})

test('words written from the chart are lit by their lines, and the caret moves the place', () => {
  const bench = smallBench(setBand(ribbed(), 0, 1, 3))
  bench.goTo({ row: 1, peg: 0 })
  const { text, lit } = bench.wording
  expect(lit && text.slice(lit.line.from, lit.line.to)).toBe('Rnd 2: Knit.')
  const at = text.indexOf('Rnd 7')
  expect(at).toBeGreaterThan(0)
  bench.wording.moveCaret({ from: at, to: at }, true)
  expect(bench.spot.row).toBe(2)
})

test('what stands at the caret is shown, or what stands on its line', () => {
  const bench = ribbedBench(agreeing.with(1, 'Rnd 2: k5, p1, k6.').with(3, 'Rnd 4: Knitt.'))
  const { wording } = bench
  const shown = (place: number) => {
    wording.moveCaret({ from: place, to: place }, false)
    return wording.atCaret.map(({ rule }) => rule)
  }
  expect(shown(0)).toEqual([])
  expect(shown(wording.text.indexOf('Rnd 2'))).toEqual(['words-differ'])
  expect(shown(wording.text.indexOf('Knitt') + 2)).toContain('unknown-word')
})

test('a line that does not add up differs once, and its fix mends all of it', () => {
  const bench = ribbedBench(agreeing.with(0, 'Rnd 1: *k2, p1; rep from * to end, k1. (12 sts)'))
  const { wording } = bench
  expect(wording.findings.map(({ rule }) => rule)).toEqual(['row-count'])
  expect(wording.differences).toBe(1)
  const differing = wording.findings
  expect(differing[0]?.place.rows).toEqual([0, 2])
  const [fix] = differing[0]?.fixes ?? []
  if (!differing[0] || !fix) throw new Error('There is no fix')
  wording.mend(differing[0], fix.label)
  expect(wording.standing).toEqual({ kind: 'agree' })
  expect(wording.findings).toEqual([])
})

/** Several things wrong, of rows and of none, by reader and comparison. */
const faulty = [
  'Cuff',
  'Work counterclockwise.',
  'Rnd 1: *k2, p2; rep from * to end. (13 sts)',
  'Rnd 2: k5, p1, k6.',
  'Rnd 3: k2, frobnicate, p2, *k2, p2; rep from * to end.',
  'Rnd 4: k11.',
]

test.each([
  ['a line above that is wrong in the same way', 3, 'Rnd 2: k5, p2, k4.'],
  ['a line above that is put right', 3, 'Rnd 2: Knit.'],
  ['a line above that is taken out', 3, null],
  ['a line above without a word that can be read', 3, 'Rnd 2: grumble.'],
  ['a heading', 0, 'Cuff\n\nFor thick yarn.'],
])('findings keep their names beside %s', (_, at, other) => {
  const bench = ribbedBench(faulty)
  const { wording } = bench
  const edited = other === null ? faulty.toSpliced(at, 1) : faulty.with(at, other)
  const line = faulty[at] ?? ''
  const elsewhere = wording.findings.filter(({ id }) => !id.includes(`"${line}"`))
  expect(elsewhere.length).toBeGreaterThan(3)
  wording.type(edited.join('\n'), 0)
  const now = wording.findings.map(({ id }) => id)
  expect(now).toEqual(expect.arrayContaining(elsewhere.map(({ id }) => id)))
  expect(new Set(now).size).toBe(now.length)
})

test('a finding that is set aside stays aside beside other edits, and comes back with its line', () => {
  const bench = ribbedBench(faulty)
  const { wording } = bench
  const short = wording.findings.find(({ rule }) => rule === 'row-count')
  if (!short) throw new Error('Nothing says that round 4 is short')
  bench.apply('Aside', (pattern) => setAside(pattern, short.id, true))
  expect(wording.aside.map(({ id }) => id)).toEqual([short.id])
  expect(wording.findings.map(({ rule }) => rule)).not.toContain('row-count')
  wording.type(faulty.with(3, 'Rnd 2: k10.').join('\n'), 0)
  expect(wording.aside).toHaveLength(1)
  expect(wording.findings.filter(({ rule }) => rule === 'row-count')).toHaveLength(1)
  wording.type(faulty.with(5, 'Rnd 4: k10.').join('\n'), 5000)
  expect(wording.aside).toEqual([])
  expect(wording.findings.filter(({ rule }) => rule === 'row-count')).toHaveLength(1)
})

test('lines that read alike are told apart by their section', () => {
  const bench = withWords('Rnds 1-4: Knit.', '', 'Leg', 'Row 1: k11.', '', 'Toe', 'Row 1: k11.')
  const counts = () =>
    bench.wording.findings.filter(({ rule }) => rule === 'row-count').map(({ id }) => id)
  expect(counts()).toEqual([
    expect.stringMatching(/^words, row-count, "Row 1: k11\.".*, Leg$/),
    expect.stringMatching(/^words, row-count, "Row 1: k11\.".*, Toe$/),
  ])
})

test('pegs that the words state otherwise are one finding, at their place', () => {
  const { wording } = withWords('Cast on 14 sts.', 'Rnds 1-4: k12.')
  const found = wording.findings.map(({ rule, place: { text } }) => [
    rule,
    text && wording.text.slice(text.from, text.to),
  ])
  expect(found).toEqual([['pegs-differ', 'Cast on 14']])
})

test('wrong-side rows of a bar hint at the setting for needles, which the hint can set', () => {
  const bar = setLoom(newPattern(12, 2), { shape: 'bar' })
  const bench = smallBench(setWords(bar, 'Row 1 (RS): Knit.\nRow 2 (WS): Purl.'))
  const hint = bench.wording.findings.find(({ rule }) => rule === 'wrong-side')
  expect(hint?.severity).toBe('hint')
  if (hint) bench.wording.mend(hint, 'Read as a needle pattern')
  expect(bench.pattern.readAs.needles).toBe(true)
  expect(bench.wording.standing).toEqual({ kind: 'agree' })
  expect(bench.wording.findings).toEqual([])
})

test('long words are kept at every key, and read when the keys rest', () => {
  vi.useFakeTimers()
  const line = 'Rnds 1-4: Knit every peg of the round. (12 sts)\n'
  const long = line + '\n'.repeat(70_000)
  const bench = smallBench(setWords(newPattern(12, 4), long))
  const { wording } = bench
  expect(wording.standing).toEqual({ kind: 'agree' })
  wording.type(long.replace('Knit', 'Purl'), 0)
  expect(bench.work.words?.startsWith('Rnds 1-4: Purl')).toBe(true)
  expect(wording.text).toBe(bench.work.words)
  expect(wording.standing).toEqual({ kind: 'agree' })
  vi.advanceTimersByTime(1000)
  expect(wording.standing).toMatchObject({ kind: 'differ', rounds: 4 })
  // What is taken back is read at once, and so is what a repair is asked for.
  bench.undo()
  expect(wording.standing).toEqual({ kind: 'agree' })
  bench.redo()
  const [finding] = wording.findings
  const fix = finding?.fixes.find(({ label }) => label.startsWith('Rewrite'))
  wording.type(`${wording.text}My note`, 5000)
  if (finding && fix) wording.mend(finding, fix.label)
  expect(wording.standing).toEqual({ kind: 'agree' })
  expect(bench.work.words?.endsWith('My note')).toBe(true)
  vi.useRealTimers()
})

test('a round left out of a repeat is one round in the head of the words and one mark on the chart', () => {
  const chart = setBand(ribbed(), 1, 3, 3)
  const bench = smallBench(
    setWords(
      chart,
      [agreeing[0], agreeing[1], agreeing[2], 'Rep Rnds 2-4 twice more. (9 rnds in all)'].join(
        '\n',
      ),
    ),
  )
  const { wording } = bench
  expect(wording.standing).toMatchObject({ kind: 'differ', rounds: 1 })
  expect(new Set(bench.marks.map(({ row }) => row))).toEqual(new Set([3]))
  // The chart may be right: where only the words differ it is not shown as an error of the chart.
  expect(bench.marks.map(({ severity }) => severity)).not.toContain('error')
  const [missing] = wording.findings.filter(({ rule }) => rule === 'row-missing-in-words')
  if (!missing) throw new Error('Nothing is missing')
  expect(missing.fixes).toHaveLength(2)
  wording.mend(missing, 'Remove Rnd 4 from the chart, with new numbers in the words')
  expect(wording.standing).toEqual({ kind: 'agree' })
  expect(wording.findings).toEqual([])
})

test('where rounds of a repeat are left out, a round that agrees is not one of those that differ', () => {
  const { wording, goTo } = (() => {
    const bench = smallBench(
      setWords(
        setBand(ribbed(), 0, 3, 3),
        [agreeing[0], agreeing[1], 'Rep Rnds 1-4 twice more. (12 rnds in all)'].join('\n'),
      ),
    )
    return { wording: bench.wording, goTo: (row: number) => bench.goTo({ row, peg: 0 }) }
  })()
  goTo(1)
  expect(wording.standing).toEqual({ kind: 'differ', rounds: 2, here: false })
  goTo(3)
  expect(wording.standing).toEqual({ kind: 'differ', rounds: 2, here: true })
})

test('a round of the words that a repeat tells again is one that differs', () => {
  const { wording } = ribbedBench([...agreeing, 'Rnd 5: Purl.', 'Rep Rnd 5 twice more.'])
  expect(wording.standing).toMatchObject({ kind: 'differ', rounds: 1 })
})

test('a line that does not add up has the mends of its difference at the caret', () => {
  const bench = ribbedBench(agreeing.with(0, 'Rnd 1: *k2, p2, k1; rep from * to end. (12 sts)'))
  const { wording } = bench
  wording.moveCaret({ from: 12, to: 12 }, false)
  const [finding] = wording.atCaret
  expect(wording.atCaret.map(({ rule }) => rule)).toEqual(['row-count'])
  expect(finding?.fixes.map(({ label }) => label)).toEqual(['Rewrite Rnds 1 and 3 from the chart'])
  expect(finding?.lacking).toBe(
    'When your words fill all 12 pegs, the chart can be changed to match.',
  )
  if (finding) wording.mend(finding, 'Rewrite Rnds 1 and 3 from the chart')
  expect(wording.standing).toEqual({ kind: 'agree' })
})

test.each([
  ['lines left out', [agreeing[0], agreeing[3]], ['row-missing-in-words']],
  [
    'lines left out that a repeat names',
    [agreeing[0], 'Rnd 4: Knit.', 'Rep Rnds 2-4 once more.'],
    ['row-missing-in-words'],
  ],
  [
    'a line with a stitch too few',
    agreeing.with(3, 'Rnd 4: k5, p1, k5.').map(String),
    ['row-count'],
  ],
])('one slip is one finding: %s', (_, lines, rules) => {
  const said = lines.filter((line) => line !== undefined)
  const isBand = said.some((line) => line.startsWith('Rep'))
  const chart = isBand ? setBand(ribbed(), 1, 3, 2) : ribbed()
  const { wording } = smallBench(setWords(chart, said.join('\n')))
  expect(wording.findings.map(({ rule }) => rule)).toEqual(rules)
})
