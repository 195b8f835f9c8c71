import { describe, expect, it } from 'vitest'
import { fabricDetails } from '../../../src/drawing/fabric/fabric'
import { writeSvg } from '../../../src/drawing/svg'
import { piece } from '../../loom/pieces'
import { cells, turnedHeel } from '../pieces'
import { draw } from './helpers'

const plain = cells(Array.from({ length: 14 }, () => 'k'))
const rib = ['p', 'k', 'k', 'k', 'k', 'p', 'k', 'k', 'k', 'k', 'p', 'k', 'p', 'k']

/** A small piece of most kinds of stitches, invented for this. */
const swatch = {
  ...piece([
    plain,
    cells(rib),
    cells(['p', '2/2 LC', 'p', 'yo', 'k2tog', 'ssk', 'yo', 'p', 'ew', 'p', 'mb']),
    cells(rib),
    cells(['p', 'k', 'k', 'k', 'k', 'p', 'sl', 'slf', 'tuck', 'k', 'p', 'ew', 'ptbl', 'k']),
    cells(rib),
    plain,
  ]),
  title: 'Fabric swatch',
  gauge: { stitches: 22, rows: 28 },
}

/** Kept as files: look at them in a browser when they change. */
describe('drawings of fabric', () => {
  it.each(fabricDetails)('a swatch as %s', async (detail) => {
    const { scene } = draw(swatch, { detail, follow: [2] })
    await expect(writeSvg(scene)).toMatchFileSnapshot(`output/swatch-${detail}.svg`)
  })

  it('the front of a tube with a heel begun in short rows', async () => {
    const { scene } = draw(turnedHeel(), { view: 'tube', turn: 6 })
    await expect(writeSvg(scene)).toMatchFileSnapshot('output/heel-tube.svg')
  })
})
