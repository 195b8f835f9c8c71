import type { BindOff, CastOn } from '../../loom/move'
import type { DialectWords } from '../language'

/** Which cast-on: "Cast on 36 pegs by e-wrap", "Cast on 36 pegs with the chain cast-on". */
export const castOnNames: Readonly<Record<CastOn, string>> = {
  'e-wrap': 'by e-wrap',
  'double e-wrap': 'by double e-wrap',
  chain: 'with the chain cast-on',
  'long-tail': 'with the long-tail cast-on',
  drawstring: 'with the drawstring cast-on',
}

/** Which bind-off: "Bind off all stitches with the basic bind-off". */
export function bindOffNames({ bindOff }: DialectWords): Readonly<Record<BindOff, string>> {
  const off = bindOff.replace(' ', '-')
  return {
    basic: `with the basic ${off}`,
    elastic: `with the elastic ${off}`,
    sewn: `with the sewn stretchy ${off}`,
    gather: 'by gathering them',
    'three-needle': `with the three-needle ${off}`,
    graft: 'by grafting them together',
  }
}
