import { chartOn, namedOn } from '../../../src/pattern/charts'
import { describe, expect, test } from 'vitest'
import { checkAfresh } from '../../../src/checks/check'
import { checkPiece } from '../../../src/checks/piece/check'
import { pieceRules } from '../../../src/checks/rules'
import type { BindOff } from '../../../src/loom/move'
import { addChart } from '../../../src/pattern/edits/piece'
import { setHeading, setRun } from '../../../src/pattern/edits/turning'
import { rotateColumns } from '../../../src/pattern/edits/turn-round'
import { shortRowChart } from '../../../src/pattern/generate/shortRows'
import { usualHeel } from '../../../src/pattern/generate/wish'
import type { Finding, Severity } from '../../../src/pattern/finding'
import { newPattern, type Pattern, type Run } from '../../../src/pattern/pattern'
import type { Step } from '../../../src/pattern/piece'
import { workPiece } from '../../../src/pattern/workPiece'
import { patternOf } from '../../pattern/edits/chart-text'
import { stitchOf } from '../../../src/stitches/vocabulary'

const castOn: Step = { kind: 'cast on', how: 'e-wrap', pegs: null }
const bindOff: Step = { kind: 'bind off', how: 'basic', pegs: null }
const knit = (rows: number): Step => ({ kind: 'plain', stitch: stitchOf('k'), amount: { rows } })
const chart = (name = 'Chart', times = 1): Step => ({ kind: 'chart', chart: name, times })

const withSteps = (pattern: Pattern, ...steps: Step[]): Pattern => ({
  ...pattern,
  steps,
})

const on = (from: number, to: number): Step => ({ kind: 'pegs', run: { from, to }, toAndFro: true })
const allPegs: Step = { kind: 'pegs', run: null, toAndFro: false }
const open: Step = { kind: 'pegs', run: null, toAndFro: true }
const off = (from: number, to: number, how: BindOff = 'basic'): Step => ({
  kind: 'bind off',
  how,
  pegs: { from, to },
})

/** 20 pegs, with a heel that takes one peg past each side of pegs 1 to 10. */
function heeled(): Pattern {
  const pattern = newPattern(20, 2)
  const heel = shortRowChart(pattern.loom, usualHeel(pattern.loom))
  if (!heel.ok) throw new Error(heel.message)
  return addChart(pattern, 'Heel', heel.chart)
}

const mirrored = (pattern: Pattern): Pattern => ({
  ...pattern,
  pair: 'mirrored',
})

const forBaby = (pattern: Pattern): Pattern => ({
  ...pattern,
  making: { ...pattern.making, forBaby: true },
})

/** The steps of a piece in a few words each. */
const told = ({ steps }: Pattern): string =>
  steps
    .map((step) => {
      switch (step.kind) {
        case 'chart':
          return `${step.chart} x${step.times}`
        case 'plain':
          return 'rows' in step.amount
            ? `${step.amount.rows} of ${step.stitch.id}`
            : `${step.amount.mm} mm`
        case 'pegs':
          return `on ${pegsTold(step.run)}${step.toAndFro ? ' to and fro' : ''}`
        case 'note':
          return 'note'
        default:
          return `${step.kind} ${step.how} ${pegsTold(step.pegs)}`
      }
    })
    .join(', ')

const pegsTold = (run: Run | null): string => (run ? `${run.from + 1}-${run.to + 1}` : 'all')

const found = (pattern: Pattern): string[] =>
  checkPiece(workPiece(pattern)).map(({ message }) => message)

const ring = newPattern(12, 2)
const bar: Pattern = { ...ring, loom: { ...ring.loom, shape: 'bar' } }
const rope = patternOf('p 2/2_LC . . . p p 2/2_RC . . . p')
/** Each case: what is wrong, a piece with it, the message, and what is said and offered besides. */
interface Advised {
  readonly advice: string
  readonly severity: Severity
  readonly step: number | null
  /** All mends in order, each with the steps that it leaves. */
  readonly fixes: readonly string[]
}
const cases: [rule: string, pattern: Pattern, message: string, advised: Advised][] = [
  [
    'piece-cast-on',
    withSteps(ring, chart(), bindOff),
    'Step 1 (Chart) begins on an empty loom.',
    {
      advice: 'Cast on before it.',
      severity: 'error',
      step: 0,
      fixes: ['Cast on all pegs before it => cast on e-wrap all, Chart x1, bind off basic all'],
    },
  ],
  [
    'piece-cast-on',
    withSteps(ring, castOn, bindOff, chart(), knit(2), bindOff),
    'Step 2 (bind off) takes everything off the loom, but step 3 (Chart) still needs loops.',
    {
      advice: 'Bind off at the end, or cast on again for a part of its own.',
      severity: 'error',
      step: 1,
      fixes: [
        'Remove step 2 => cast on e-wrap all, Chart x1, 2 of k, bind off basic all',
        'Cast on all pegs before step 3 => cast on e-wrap all, bind off basic all, cast on e-wrap all, Chart x1, 2 of k, bind off basic all',
      ],
    },
  ],
  [
    'piece-bind-off',
    withSteps(ring, castOn, chart()),
    '12 loops are still on the loom after the last step.',
    {
      advice: 'Bind them off, gather or graft them.',
      severity: 'error',
      step: 1,
      fixes: [
        'Bind off all loops at the end => cast on e-wrap all, Chart x1, bind off basic all',
        'Gather all loops at the end => cast on e-wrap all, Chart x1, bind off gather all',
      ],
    },
  ],
  [
    'piece-cast-on-held',
    withSteps(ring, castOn, castOn, bindOff),
    'Step 2 (cast on) casts on over 12 pegs that already have loops.',
    {
      advice: 'Bind those loops off first, or cast on other pegs.',
      severity: 'error',
      step: 1,
      fixes: ['Remove step 2 => cast on e-wrap all, bind off basic all'],
    },
  ],
  [
    'piece-halves',
    withSteps(newPattern(13, 1), castOn, chart(), { kind: 'bind off', how: 'graft', pegs: null }),
    'Step 3 (bind off) joins 13 loops in pairs: one has no partner.',
    {
      advice: 'Decrease one stitch before it, or bind off another way.',
      severity: 'warning',
      step: 2,
      fixes: [],
    },
  ],
  [
    'piece-loops',
    // Pegs that were bound off are to be cast on again before plain rounds.
    withSteps(ring, castOn, chart(), off(0, 4), knit(1), bindOff),
    'Round 1 of step 4 (plain rounds) needs 12 stitches, the loom holds 7.',
    {
      advice: 'Cast on pegs 1-5 first, or work these rounds as a chart that leaves them out.',
      severity: 'error',
      step: 3,
      fixes: [
        'Before the plain rounds, knit pegs 6-12 back and forth for 2 rows and cast on pegs 1-5 again => cast on e-wrap all, Chart x1, bind off basic 1-5, on 6-12 to and fro, 2 of k, cast on e-wrap 1-5, on all, 1 of k, bind off basic all',
        'Before the plain rounds, knit pegs 6-12, cast on pegs 1-5 again and knit pegs 6-12 => cast on e-wrap all, Chart x1, bind off basic 1-5, on 6-12 to and fro, 1 of k, cast on e-wrap 1-5, on 6-12 to and fro, 1 of k, on all, 1 of k, bind off basic all',
        'Work only pegs 6-12 from here on, back and forth => cast on e-wrap all, Chart x1, bind off basic 1-5, on 6-12 to and fro, 1 of k, bind off basic all',
      ],
    },
  ],
  [
    'piece-yarn',
    withSteps(setRun(ring, 1, { from: 0, to: 5 }), castOn, chart(), knit(1), bindOff),
    'Step 3 (plain rounds) begins at peg 1, but the yarn is between pegs 6 and 7.',
    {
      advice: 'Work pegs 7-12 before it, so that the yarn comes to peg 1.',
      severity: 'error',
      step: 2,
      fixes: [],
    },
  ],
  [
    'piece-yarn',
    withSteps(newPattern(20, 2), castOn, chart(), off(7, 12), bindOff),
    'Step 3 (bind off) begins at peg 8, but the yarn is between pegs 20 and 1.',
    {
      advice:
        'Put in a step that works pegs 1-7 before it, or bind off pegs beside the yarn: from peg 1 on, or up to peg 20.',
      severity: 'error',
      step: 2,
      fixes: [
        'Knit pegs 1-7 before it and pegs 14-20 after it => cast on e-wrap all, Chart x1, on 1-7 to and fro, 1 of k, bind off basic 8-13, on 14-20 to and fro, 1 of k, on all, bind off basic all',
      ],
    },
  ],
  [
    'piece-yarn',
    withSteps(bar, castOn, chart(), off(8, 9), { ...castOn, pegs: { from: 8, to: 9 } }, bindOff),
    'Step 3 (bind off) begins at peg 9, but the yarn is before peg 1.',
    {
      advice:
        'Put in a step that works pegs 1-8 before it, or bind off pegs beside the yarn: from peg 1 on.',
      severity: 'error',
      step: 2,
      fixes: [],
    },
  ],
  [
    'piece-yarn',
    withSteps(bar, castOn, on(0, 5), knit(4), off(6, 11), bindOff),
    'Step 4 (bind off) begins at peg 7, but the yarn is before peg 1.',
    {
      advice:
        'Put in a step that works pegs 1-6 before it, or bind off pegs beside the yarn: from peg 1 on.',
      severity: 'error',
      step: 3,
      fixes: [],
    },
  ],
  [
    'piece-yarn',
    withSteps(heeled(), castOn, chart('Heel'), on(0, 9), chart('Heel'), allPegs, knit(1), bindOff),
    'Row 14 of step 4 (Heel) begins at peg 10, but the yarn is between pegs 20 and 1.',
    {
      advice:
        'Look at its chart and the pegs in work: each row begins where the one before it ends.',
      severity: 'error',
      step: 3,
      fixes: [],
    },
  ],
  [
    'piece-pegs',
    withSteps(heeled(), castOn, on(0, 9), chart('Heel'), allPegs, knit(1), bindOff),
    'Step 3 (Heel) works pegs 11-20 in its rows 1, 9 and 11-13, but only pegs 1-10 are in work.',
    {
      advice: 'Put those pegs in work before it too, or keep its rows to pegs 1-10.',
      severity: 'error',
      step: 2,
      fixes: [],
    },
  ],
  [
    'piece-way',
    withSteps(bar, castOn, knit(3), chart(), bindOff),
    'Row 1 of step 3 (Chart) is drawn from peg 1 to peg 12, but the work before it leads the other way.',
    {
      advice: 'Work one row more or one fewer before it: an even number on a rake.',
      severity: 'warning',
      step: 2,
      fixes: [
        'Knit one row before it => cast on e-wrap all, 3 of k, 1 of k, Chart x1, bind off basic all',
      ],
    },
  ],
  [
    'piece-cross-line',
    withSteps(
      {
        ...addChart(rope, 'Foot', chartOn(rotateColumns(rope, 1))),
      },
      castOn,
      chart(),
      chart('Foot'),
      bindOff,
    ),
    'The crosses of step 3 (Foot) stand 1 peg before those of step 2 (Chart).',
    {
      advice: 'Start the round elsewhere in one of the two charts, so that they stand in line.',
      severity: 'warning',
      step: 2,
      fixes: [],
    },
  ],
  [
    'piece-ladder',
    withSteps(
      patternOf('k k k k k none none none k k k k'),
      { ...castOn, pegs: { from: 0, to: 4 } },
      { ...castOn, pegs: { from: 8, to: 11 } },
      chart(),
      bindOff,
    ),
    'In round 1 of step 3 (Chart) the yarn passes 3 empty pegs (pegs 6-8), 38 mm from loop to loop; this leaves a ladder in the fabric.',
    {
      advice:
        'Fill the pegs again with yarn overs, or decrease where no two empty pegs come side by side.',
      severity: 'warning',
      step: 2,
      fixes: [],
    },
  ],
  [
    'piece-length',
    withSteps(ring, castOn, { kind: 'plain', stitch: stitchOf('k'), amount: { mm: 60 } }, bindOff),
    'Step 2 (plain rounds) goes on for 6 cm, but without a gauge that is no number of rounds.',
    {
      advice: 'Knit a swatch and enter its gauge, or give the number of rounds.',
      severity: 'error',
      step: 1,
      fixes: ['Work 10 rounds instead => cast on e-wrap all, 10 of k, bind off basic all'],
    },
  ],
  [
    'piece-too-long',
    withSteps(ring, castOn, ...new Array<Step>(7).fill(knit(1000)), bindOff),
    'Step 8 (plain rounds) goes 1000 rounds beyond the 6000 that a piece can have; they are left out.',
    {
      advice: 'Work its chart fewer times, or make it shorter.',
      severity: 'warning',
      step: 7,
      fixes: [],
    },
  ],
  [
    'piece-chart',
    withSteps(
      addChart(ring, 'Thumb', chartOn(patternOf('k2tog k k k k k k k k k k k'))),
      castOn,
      chart(),
      bindOff,
    ),
    'In the chart “Thumb”: Round 1 needs 13 stitches, the loom holds 12. One stitch too many from the first peg on.',
    {
      advice: 'Open that chart to see where, and to mend it.',
      severity: 'error',
      step: null,
      fixes: ['Open “Thumb” => cast on e-wrap all, Chart x1, bind off basic all'],
    },
  ],
  [
    'piece-note-pegs',
    mirrored(
      withSteps(
        ring,
        castOn,
        chart(),
        { kind: 'note', text: 'Now pegs 2 to 5 hold the sole.' },
        bindOff,
      ),
    ),
    'Step 3 (note) names pegs 2 to 5; in the second of the pair, its mirror image, they are pegs 8 to 11.',
    {
      advice: 'Say it without numbers, for example “the pegs of the heel”.',
      severity: 'warning',
      step: 2,
      fixes: [],
    },
  ],
  [
    'piece-baby-drawstring',
    forBaby(withSteps(ring, { ...castOn, how: 'drawstring' }, chart(), bindOff)),
    'Step 1 (cast on) makes a drawstring edge, and this piece is for a baby or child.',
    {
      advice:
        'Cast on another way, or fasten off the yarn end so that nothing can be pulled. Check your local rules on cords in children’s clothing.',
      severity: 'warning',
      step: 0,
      fixes: ['Cast on by e-wrap instead => cast on e-wrap all, Chart x1, bind off basic all'],
    },
  ],
  [
    'piece-unused',
    addChart(ring, 'Thumb', chartOn(ring)),
    'The chart “Thumb” is in no step.',
    {
      advice: 'Add a step that works it, or remove the chart.',
      severity: 'hint',
      step: null,
      fixes: [
        'Work “Thumb” before the last step => cast on e-wrap all, Chart x1, Thumb x1, bind off basic all',
        'Remove the chart “Thumb” => cast on e-wrap all, Chart x1, bind off basic all',
      ],
    },
  ],
]

describe('each rule finds what it is for', () => {
  test.each(cases)('%s', (rule, pattern, message, advised) => {
    const findings = checkPiece(workPiece(pattern)).filter((finding) => finding.rule === rule)
    const tell = ({ advice, severity, place: { step }, fixes }: Finding): Advised => ({
      advice,
      severity,
      step,
      fixes: fixes.map(({ label, edit }) => `${label} => ${told(edit(pattern))}`),
    })
    expect(findings.map((finding) => [finding.message, tell(finding)])).toContainEqual([
      message,
      advised,
    ])
  })
})

/** 20 pegs, with a toe on so many of them. */
function toed(pegs: number): Pattern {
  const pattern = newPattern(20, 1)
  const run = { from: 0, to: pegs - 1 }
  const wish = {
    ...usualHeel(pattern.loom),
    shape: 'toe',
    run,
    turned: 2,
    closeCorners: false,
  } as const
  const toe = shortRowChart(pattern.loom, wish)
  if (!toe.ok) throw new Error(toe.message)
  return addChart(pattern, 'Toe', toe.chart)
}

const castOnPegs = (from: number, to: number): Step => ({ ...castOn, pegs: { from, to } })
const graft: Step = { kind: 'bind off', how: 'graft', pegs: null }

test.each<[rule: string, pattern: Pattern, told: readonly string[]]>([
  [
    'piece-bind-off',
    withSteps(ring, castOn, off(0, 10)),
    ['1 loop is still on the loom after the last step.', 'Bind them off, gather or graft them.'],
  ],
  ['piece-bind-off', withSteps(ring), []],
  [
    'piece-cast-on-held',
    withSteps(ring, castOnPegs(3, 3), castOn, bindOff),
    [
      'Step 2 (cast on) casts on over 1 peg that already has a loop.',
      'Bind those loops off first, or cast on other pegs.',
    ],
  ],
  [
    'piece-cross-line',
    withSteps(
      addChart(rope, 'Foot', chartOn(rotateColumns(rope, -1))),
      castOn,
      chart(),
      chart('Foot'),
      bindOff,
    ),
    [
      'The crosses of step 3 (Foot) stand 1 peg after those of step 2 (Chart).',
      'Start the round elsewhere in one of the two charts, so that they stand in line.',
    ],
  ],
  ['piece-cross-line', withSteps(rope, castOn, chart('Chart', 2), chart(), bindOff), []],
  [
    'piece-cross-line',
    withSteps(
      addChart(rope, 'Foot', chartOn(rotateColumns(rope, 4))),
      castOn,
      chart(),
      chart('Foot'),
      bindOff,
    ),
    [],
  ],
  [
    'piece-pegs',
    withSteps(heeled(), castOn, on(4, 4), chart('Heel'), allPegs, bindOff),
    [
      'Step 3 (Heel) works pegs 1-4 and 6-20 in its rows 1-13, but only peg 5 is in work.',
      'Put those pegs in work before it too, or keep its rows to peg 5.',
    ],
  ],
  [
    'piece-pegs',
    withSteps(setRun(ring, 1, { from: 0, to: 6 }), castOn, on(0, 5), chart(), bindOff),
    [
      'Step 3 (Chart) works peg 7 in its row 2, but only pegs 1-6 are in work.',
      'Put those pegs in work before it too, or keep its rows to pegs 1-6.',
    ],
  ],
  [
    'piece-halves',
    withSteps(toed(8), castOn, chart(), chart('Toe'), graft),
    [
      'Step 4 (bind off) joins 10 loops with 10, but the short rows before it lie on 8 pegs: the fold does not meet their corners.',
      'Work those short rows on 10 pegs, or bind off another way.',
    ],
  ],
  ['piece-halves', withSteps(toed(10), castOn, chart(), chart('Toe'), graft), []],
  [
    'piece-halves',
    withSteps(ring, castOn, chart(), off(0, 4, 'three-needle'), bindOff),
    [
      'Step 3 (bind off) joins 5 loops in pairs: one has no partner.',
      'Decrease one stitch before it, or bind off another way.',
    ],
  ],
  [
    'piece-ladder',
    withSteps(
      patternOf('k k none none none k k none none k k k'),
      castOnPegs(0, 1),
      castOnPegs(5, 6),
      castOnPegs(9, 11),
      chart(),
      bindOff,
    ),
    [
      'In round 1 of step 4 (Chart) the yarn passes 3 empty pegs (pegs 3-5), 38 mm from loop to loop, and in 1 other place; this leaves a ladder in the fabric.',
      'Fill the pegs again with yarn overs, or decrease where no two empty pegs come side by side.',
    ],
  ],
  ['piece-way', withSteps(setHeading(bar, 0, 'back'), castOn, chart(), bindOff), []],
  ['piece-way', withSteps(setHeading(bar, 0, 'back'), castOn, knit(1), chart(), bindOff), []],
  ['piece-way', withSteps(ring, castOn, open, knit(1), chart(), bindOff), []],
  [
    'piece-loops',
    withSteps(
      addChart(ring, 'Tip', chartOn(patternOf('k k k k k k k k k k none none'))),
      castOn,
      chart(),
      chart('Tip'),
      bindOff,
    ),
    [],
  ],
  [
    'piece-loops',
    withSteps(
      addChart(
        ring,
        'Tip',
        chartOn(patternOf('k k k k k k k k k k k k', 'k k k k k k k k k k none none')),
      ),
      castOn,
      chart('Tip'),
      off(0, 3),
      chart('Tip'),
      bindOff,
    ),
    [
      'Round 1 of step 4 (Tip) needs 12 stitches, the loom holds 6.',
      'The loom must hold 12 stitches here: cast on 6 before it, or change this round.',
    ],
  ],
  ['piece-yarn', withSteps(setRun(ring, 1, { from: 2, to: 5 }), castOn, chart(), bindOff), []],
  [
    'piece-yarn',
    withSteps(setRun(ring, 1, { from: 0, to: 5 }), castOn, chart(), off(2, 4), bindOff),
    [
      'Step 3 (bind off) begins at peg 3, but the yarn is between pegs 6 and 7.',
      'End Chart, row 2 at peg 2, or bind off pegs beside the yarn: from peg 7 on, or up to peg 6.',
    ],
  ],
  [
    'piece-yarn',
    withSteps(setRun(ring, 1, { from: 0, to: 5 }), castOn, chart(), off(8, 9), bindOff),
    [
      'Step 3 (bind off) begins at peg 9, but the yarn is between pegs 6 and 7.',
      'End Chart, row 2 at peg 8, or bind off pegs beside the yarn: from peg 7 on, or up to peg 6.',
    ],
  ],
  [
    'piece-yarn',
    withSteps(bar, castOn, knit(1), off(2, 4), bindOff),
    [
      'Step 3 (bind off) begins at peg 5, but the yarn is after peg 12.',
      'Put in a step that works pegs 6-12 before it, or bind off pegs beside the yarn: up to peg 12.',
      'Step 4 (bind off) begins at peg 12, but the yarn is between pegs 2 and 3.',
      'Put in a step that works the pegs up to there before it, or bind off pegs beside the yarn: from peg 3 on, or up to peg 2.',
    ],
  ],
  [
    'piece-cast-on',
    withSteps(ring, knit(1), chart(), bindOff),
    ['Step 1 (plain rounds) begins on an empty loom.', 'Cast on before it.'],
  ],
  [
    'piece-cast-on',
    withSteps(ring, { kind: 'note', text: 'Begin.' }, castOn, chart(), bindOff),
    [],
  ],
  [
    'piece-unused',
    withSteps(
      addChart(addChart(ring, 'Thumb', chartOn(ring)), 'Cuff', chartOn(ring)),
      castOn,
      chart('Cuff'),
      bindOff,
    ),
    [
      'The chart “Chart” is in no step.',
      'Add a step that works it, or remove the chart.',
      'The chart “Thumb” is in no step.',
      'Add a step that works it, or remove the chart.',
    ],
  ],
  [
    'piece-baby-drawstring',
    withSteps(ring, { ...castOn, how: 'drawstring' }, chart(), bindOff),
    [],
  ],
  [
    'piece-note-pegs',
    mirrored(withSteps(ring, castOn, { kind: 'note', text: 'Mark peg 1.' }, chart(), bindOff)),
    [
      'Step 2 (note) names peg 1; in the second of the pair, its mirror image, they are peg 12.',
      'Say it without numbers, for example “the pegs of the heel”.',
    ],
  ],
  [
    'piece-note-pegs',
    mirrored(withSteps(ring, castOn, { kind: 'note', text: 'Mark pegs 3-13.' }, chart(), bindOff)),
    [],
  ],
  [
    'piece-note-pegs',
    mirrored(
      withSteps(ring, castOn, { kind: 'note', text: 'Mark pegs 6 and 7.' }, chart(), bindOff),
    ),
    [],
  ],
])('%s is told with its numbers, in one and in many: case %#', (rule, pattern, told) => {
  expect(
    checkPiece(workPiece(pattern))
      .filter((finding) => finding.rule === rule)
      .flatMap(({ message, advice }) => [message, advice]),
  ).toEqual(told)
})

test('peg numbers in a note hold for both of a pair on a bar, whose second is begun at its other end', () => {
  const bar = { ...ring, loom: { ...ring.loom, shape: 'bar' as const } }
  const note: Step = { kind: 'note', text: 'Now pegs 2 to 5 hold the sole.' }
  const rules = checkPiece(workPiece(mirrored(withSteps(bar, castOn, chart(), note, bindOff))))
  expect(rules.map(({ rule }) => rule)).not.toContain('piece-note-pegs')
})

test('every rule has a case', () => {
  const ids = new Set(cases.map(([rule]) => rule))
  expect([...ids].toSorted()).toEqual(pieceRules.map(({ id }) => id).toSorted())
})

test('what goes on after a bind-off is said once, at the bind-off, and its repairs mend it', () => {
  const early = withSteps(ring, castOn, bindOff, chart(), knit(2), bindOff)
  const findings = checkPiece(workPiece(early)).filter(({ rule }) => rule === 'piece-cast-on')
  expect(findings.map(({ place }) => place.step)).toEqual([1])
  for (const fix of findings[0]?.fixes ?? []) expect(found(fix.edit(early))).toEqual([])
  expect(findings[0]?.fixes.map(({ label }) => label)).toEqual([
    'Remove step 2',
    'Cast on all pegs before step 3',
  ])
  const only = withSteps(ring, castOn, bindOff, chart())
  const [move] = checkPiece(workPiece(only)).find(({ place }) => place.step === 1)?.fixes ?? []
  expect(move?.label).toBe('Move step 2 to the end')
  expect(move && found(move.edit(only))).toEqual([])
})

describe('nothing is found in', () => {
  test('notes of one piece that name pegs, and of a pair that name none', () => {
    const named = { kind: 'note', text: 'Peg 3 is the middle.' } as const
    const unnamed = {
      kind: 'note',
      text: 'The pegs of the heel hold the sole, 12 in all.',
    } as const
    expect(found(withSteps(ring, castOn, chart(), named, bindOff))).toEqual([])
    expect(found(mirrored(withSteps(ring, castOn, chart(), unnamed, bindOff)))).toEqual([])
  })

  const leg = patternOf('p 2/2_LC . . . p p 2/2_LC . . . p p 2/2_LC . . . p p 2/2_LC . . . p')
  const heel = shortRowChart(leg.loom, usualHeel(leg.loom))
  if (!heel.ok) throw new Error(heel.message)
  const sock = withSteps(
    addChart(leg, 'Heel', heel.chart),
    castOn,
    chart('Chart', 3),
    chart('Heel'),
    chart('Chart', 2),
    chart('Heel'),
    { kind: 'bind off', how: 'graft', pegs: null },
  )

  test('a sock with crosses before and after its heel', () => {
    expect(found(sock)).toEqual([])
  })

  test('a mitt with an opening worked to and fro', () => {
    expect(
      found(
        withSteps(
          ring,
          castOn,
          chart(),
          { kind: 'pegs', run: null, toAndFro: true },
          knit(6),
          { kind: 'pegs', run: null, toAndFro: false },
          chart(),
          bindOff,
        ),
      ),
    ).toEqual([])
  })

  test.each([4, 5])('a thumb and the hand beside it, each in %i rows to and fro', (rows) => {
    const hand = newPattern(20, 2)
    const steps = [castOn, chart(), on(0, 5), knit(rows), off(0, 5), on(6, 19), knit(rows)]
    expect(found(withSteps(hand, ...steps, bindOff))).toEqual([])
    expect(found(withSteps(hand, ...steps, knit(rows), knit(1), off(6, 19)))).toEqual([])
  })

  test.each([4, 5])('a round left open for %i rows, bound off or closed again', (rows) => {
    const steps = [castOn, chart(), open, knit(rows), knit(rows)]
    expect(found(withSteps(ring, ...steps, bindOff))).toEqual([])
    expect(found(withSteps(ring, ...steps, knit(1), allPegs, knit(2), bindOff))).toEqual([])
  })

  test('pegs bound off and cast on again where the yarn is', () => {
    const again: Step = { ...castOn, pegs: { from: 8, to: 9 } }
    const steps = [castOn, chart(), on(10, 11), knit(1), off(8, 9), again]
    expect(found(withSteps(ring, ...steps, on(10, 11), knit(2), bindOff))).toEqual([])
    expect(found(withSteps(bar, castOn, on(0, 5), chart(), off(0, 5), off(6, 11)))).toEqual([])
  })

  test('halves grafted with a new length, and a tip gathered from its middle', () => {
    const steps = [castOn, chart(), on(0, 2), knit(1)]
    expect(found(withSteps(ring, ...steps, off(0, 11, 'graft')))).toEqual([])
    expect(found(withSteps(ring, ...steps, off(0, 5, 'gather'), off(6, 11)))).toEqual([])
  })

  test('a new piece', () => {
    expect(found(newPattern())).toEqual([])
    expect(found({ ...bar, steps: newPattern().steps })).toEqual([])
  })
})

test('a fix takes its finding away and brings none that was not there', () => {
  let fixes = 0
  for (const [rule, pattern] of cases) {
    const before = checkPiece(workPiece(pattern))
    for (const finding of before.filter((item) => item.rule === rule))
      for (const { label, edit } of finding.fixes) {
        fixes++
        // A chart that is opened tells its errors itself.
        const edited = edit(pattern)
        const after = checkPiece(workPiece(edited), namedOn(edited).name)
        expect([label, after.filter((item) => item.rule === rule)]).toEqual([label, []])
        const rulesBefore = before.map((item) => item.rule)
        expect([label, after.filter((item) => !rulesBefore.includes(item.rule))]).toEqual([
          label,
          [],
        ])
      }
  }
  expect(fixes).toBeGreaterThan(6)
})

test('plain rounds over the pegs of a thumb that are bound off say what to do', () => {
  const thumb = (rows: Step) => withSteps(ring, castOn, chart(), off(0, 3), rows, bindOff)
  const [plain] = checkPiece(workPiece(thumb(knit(2)))).filter(({ place }) => place.step === 3)
  expect(plain).toMatchObject({
    severity: 'error',
    message: 'Round 1 of step 4 (plain rounds) needs 12 stitches, the loom holds 8.',
    advice: 'Cast on pegs 1-4 first, or work these rounds as a chart that leaves them out.',
  })
  const [charted] = checkPiece(workPiece(thumb(chart()))).filter(({ place }) => place.step === 3)
  expect(charted?.advice).toBe(
    'The loom must hold 12 stitches here: cast on 4 before it, or change this round.',
  )
  expect(charted?.fixes.map(({ label }) => label)).toContain(
    `Before ${namedOn(ring).name}, knit pegs 5-12 back and forth for 2 rows and cast on pegs 1-4 again`,
  )
})

/** Do what the first fix of the first finding says, as long as there is one. */
function mendAll(pattern: Pattern): { pattern: Pattern; labels: string[] } {
  const labels: string[] = []
  let mended = pattern
  for (let times = 0; times < 6; times++) {
    const fix = checkPiece(workPiece(mended)).flatMap(({ fixes }) => fixes)[0]
    if (!fix) break
    labels.push(fix.label)
    mended = fix.edit(mended)
  }
  return { pattern: mended, labels }
}

test('a bind-off away from the yarn in the round is reached, and its pegs cast on again', () => {
  const thumb = withSteps(ring, castOn, chart(), off(1, 5), knit(4), bindOff)
  const [away] = checkPiece(workPiece(thumb)).filter(({ place }) => place.step === 2)
  expect(away?.message).toBe(
    'Step 3 (bind off) begins at peg 2, but the yarn is between pegs 12 and 1.',
  )
  expect(away?.advice).toBe(
    'Put in a step that works peg 1 before it, or bind off pegs beside the yarn: from peg 1 on, or up to peg 12.',
  )
  const mended = mendAll(thumb)
  expect(mended.labels).toEqual([
    'Knit peg 1 before it and pegs 7-12 after it',
    'Before the plain rounds, knit peg 1, cast on pegs 2-6 again and knit pegs 7-12',
  ])
  expect(found(mended.pattern)).toEqual([])
})

test('plain rounds over bound-off pegs: the other pegs are worked, and those are cast on again', () => {
  for (const [pegs, label] of [
    [
      off(0, 4),
      'Before the plain rounds, knit pegs 6-12 back and forth for 2 rows and cast on pegs 1-5 again',
    ],
    [
      off(7, 11),
      'Before the plain rounds, knit pegs 1-7 back and forth for 2 rows and cast on pegs 8-12 again',
    ],
  ] as const) {
    const thumb = withSteps(ring, castOn, chart(), pegs, knit(4), bindOff)
    const [finding] = checkPiece(workPiece(thumb)).filter(({ rule }) => rule === 'piece-loops')
    expect(finding?.fixes.map((fix) => fix.label)).toContain(label)
    for (const { edit } of finding?.fixes ?? []) expect(found(edit(thumb))).toEqual([])
  }
})

test('on a rake a bind-off in the middle is reached from either edge, and its pegs cast on again', () => {
  for (const rows of [4, 3]) {
    const slit = withSteps(bar, castOn, knit(rows), off(4, 6), knit(4), bindOff)
    expect(found(slit).length).toBeGreaterThan(0)
    const mended = mendAll(slit)
    expect(mended.labels.length).toBeGreaterThan(0)
    expect(found(mended.pattern), mended.labels.join('; ')).toEqual([])
  }
})

test('no advice about a step in the round asks for a row more or one fewer', () => {
  const pieces = [
    withSteps(ring, castOn, chart(), off(1, 5), knit(4), bindOff),
    withSteps(ring, castOn, chart(), off(0, 4), knit(4), bindOff),
    withSteps(ring, castOn, chart(), off(0, 4), chart(), bindOff),
    withSteps(ring, castOn, chart(), off(1, 5), { ...castOn, pegs: { from: 1, to: 5 } }, bindOff),
  ]
  for (const { advice } of pieces.flatMap((pattern) => checkPiece(workPiece(pattern)))) {
    expect(advice).not.toMatch(/a row more or one fewer|End the step before it where/)
  }
})

test('a count that is off in the chart by itself is said there only, not at its step again', () => {
  const off = withSteps(
    patternOf('k k k k none k k k', 'k k k k k k k k'),
    castOn,
    chart(),
    bindOff,
  )
  expect(checkAfresh(off).findings.map(({ rule }) => rule)).toContain('row-count')
  expect(checkPiece(workPiece(off)).map(({ rule }) => rule)).not.toContain('piece-loops')
})
