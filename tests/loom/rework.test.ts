/** A row worked again after a change comes to what it comes to when it is worked whole. */
import { expect, test } from 'vitest'
import { reworkRow } from '../../src/loom/rework'
import { loomRow, type LoomRow, type RowEnd, type Site } from '../../src/loom/row'
import { castOn, type LoomState } from '../../src/loom/state'
import { emptyStack } from '../../src/loom/strand'
import { workRow, type Habits } from '../../src/loom/work'
import { stitchOf } from '../../src/stitches/vocabulary'

const habits: Habits = {
  shape: 'ring',
  direction: 'clockwise',
  knit: 'u-wrap',
  crossing: 'move then knit',
  transfer: 'ordered',
}

function rowOf(
  ids: string,
  from = 0,
  heading: LoomRow['heading'] = null,
  end: RowEnd = 'on',
): LoomRow {
  let peg = from
  const sites: Site[] = ids.split(' ').map((id) => {
    const stitch = stitchOf(id.replace('_', ' '))
    const site = { stitch, peg }
    peg += stitch.width
    return site
  })
  return loomRow(sites, from, peg - 1, heading, end)
}

const rows: readonly LoomRow[] = [
  rowOf('k k k k k k'),
  rowOf('k k p k k k'),
  rowOf('p k k k k p'),
  rowOf('k 1/1_LC p k k'),
  rowOf('k k 1/1_RC k p'),
  rowOf('k sl sl k k k'),
  rowOf('k k sl sl k k'),
  rowOf('sl k k k k sl'),
  rowOf('k slf k k k k'),
  rowOf('k k k k tuck k'),
  rowOf('k k2tog yo k k k'),
  rowOf('k k k k k k', 0, 'back'),
  rowOf('k p k p k k', 0, 'back'),
  rowOf('k k sl k k p', 0, 'back'),
  rowOf('k k k k', 0),
  rowOf('k p k k', 2),
  rowOf('k k k k k k', 0, null, 'wrap'),
  rowOf('k k k k k k', 0, null, 'German turn'),
  rowOf('k k k k k k2tog'),
]

const full = castOn(6)
const purled = workRow(full, rowOf('k p k k k k'), habits).after
const looms: readonly LoomState[] = [
  full,
  purled,
  { ...full, heading: 'back' },
  { ...full, float: 2 },
  { ...full, inFront: 1 },
  { ...full, yarn: { gap: 3, side: 'inside' } },
  { ...full, yarn: { gap: 0, side: 'outside' } },
  { ...full, stacks: full.stacks.with(2, emptyStack) },
  workRow(full, rowOf('k k k tuck k k'), habits).after,
]

test('after any change of row and loom it is the same, or is left to be worked whole', () => {
  let again = 0
  for (const was of looms)
    for (const before of looms)
      for (const old of rows)
        for (const row of rows) {
          const made = reworkRow(before, row, habits, workRow(was, old, habits))
          if (!made) continue
          again++
          expect(made).toEqual(workRow(before, row, habits))
        }
  expect(again).toBeGreaterThan(100)
})

test('a purl in a plain round is worked by itself, and so is another loop below', () => {
  const [plain, purl] = rows as [LoomRow, LoomRow]
  const old = workRow(full, plain, habits)
  expect(reworkRow(full, purl, habits, old)?.row).toBe(purl)
  expect(reworkRow(purled, plain, habits, old)?.before).toBe(purled)
  const same = reworkRow({ ...full }, plain, habits, old)
  expect(same?.after).toBe(old.after)
  expect(reworkRow(full, purl, habits, workRow(full, rowOf('k k k k k k2tog'), habits))).toBeNull()
})
