/** What the program writes of its own starters reads back with nothing wrong in it. */
import { expect, it } from 'vitest'
import { workPiece } from '../../src/pattern/workPiece'
import { starterCharts } from '../../src/shelf/seeds'
import { pegwright, seed } from './call'

it.each(starterCharts.map(({ id, pattern }) => [id, pattern()] as const))(
  'the words of %s read back without a finding',
  async (id, pattern) => {
    const { loom } = pattern
    const words = (await pegwright(['write', seed(id)])).out
    const { exit, out, err } = await pegwright(
      [
        'read',
        '--pegs',
        String(loom.pegs),
        ...(loom.shape === 'bar' ? ['--flat'] : ['--direction', loom.direction]),
        '--json',
      ],
      words,
    )
    const { rows, findings } = JSON.parse(out) as { rows: unknown[]; findings: unknown[] }
    expect([exit, err]).toEqual([0, ''])
    expect(findings).toEqual([])
    expect(rows).toHaveLength(workPiece(pattern).rows)
  },
)
