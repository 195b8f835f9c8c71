import { describe, expect, test } from 'vitest'
import { mirror } from '../../../src/pattern/edits/mirror'
import { workPattern } from '../../../src/pattern/work'
import { starterCharts } from '../../../src/shelf/seeds'

const heel = starterCharts.find(({ id }) => id === 'hundred-steps-heel')?.pattern()

describe('a heel in the second of a pair', () => {
  if (!heel) throw new Error('There is no starter chart with a heel')
  const second = mirror(heel)

  test('lies where its mirror image does: pegs 1 to 22 of 40 become pegs 19 to 40', () => {
    const turnedOn = (pattern: typeof heel) => {
      const pegs = workPattern(pattern).firstRuns.flatMap(({ row, rightToLeft }) =>
        row.end === 'on' ? [] : [rightToLeft ? row.to + 1 : row.from + 1],
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

  test('mirrored again it is the heel of the first', () => {
    expect(mirror(second)).toEqual(heel)
  })
})
