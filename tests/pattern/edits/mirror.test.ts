import { describe, expect, test } from 'vitest'
import { checkAfresh } from '../../../src/checks/check'
import { mirror } from '../../../src/pattern/edits/mirror'
import { reverseDirection } from '../../../src/pattern/edits/turn-round'
import { workPattern } from '../../../src/pattern/work'
import { starterCharts } from '../../../src/shelf/seeds'

const heel = starterCharts.find(({ id }) => id === 'hundred-steps-heel')?.pattern()

describe.each([
  ['in the second of a pair', mirror],
  ['worked in the other direction', reverseDirection],
])('a heel %s', (_name, turn) => {
  if (!heel) throw new Error('There is no starter chart with a heel')
  const second = turn(heel)

  test('lies where its mirror image does: pegs 1 to 22 of 40 become pegs 19 to 40', () => {
    const turnedOn = (pattern: typeof heel) => {
      const pegs = workPattern(pattern).firstRuns.flatMap(({ row, heading }) =>
        row.end === 'on' ? [] : [heading === 'forward' ? row.to + 1 : row.from + 1],
      )
      return [Math.min(...pegs), Math.max(...pegs)]
    }
    expect(turnedOn(heel)).toEqual([1, 22])
    expect(turnedOn(second)).toEqual([19, 40])
  })

  test('is worked as the first one is: each row starts beside the yarn', () => {
    const starts = workPattern(second).run.rows.flatMap(({ faults }) =>
      faults.filter(({ kind }) => kind === 'start' || kind === 'turned twice'),
    )
    expect(starts).toEqual([])
  })

  test('has nothing that the checks find', () => {
    expect(checkAfresh(second).findings).toEqual([])
  })

  test('has the same stitches on each peg, counted from the other end', () => {
    const wales = ({ loom, ...pattern }: typeof heel) => {
      const on = Array.from({ length: loom.pegs }, () => '')
      for (const { row } of workPattern({ ...pattern, loom }).firstRuns)
        for (const { stitch, peg } of row.sites) on[peg] += ` ${stitch.id}`
      return on
    }
    expect(wales(second).toReversed()).toEqual(wales(heel))
  })

  test('turned round again it is the heel of the first', () => {
    expect(turn(second)).toEqual(heel)
  })
})
