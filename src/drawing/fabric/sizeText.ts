import type { FabricGeometry } from './fabric'
import { centimetres, inCentimetres } from '../../pattern/size'
import type { Pattern } from '../../pattern/pattern'

export interface SizeText {
  /** As it stands beside the drawing. */
  readonly seen: string
  /** As a sentence, for the text alternative. */
  readonly spoken: string
}

/** How large the fabric is by the gauge, mm in, without any stretch. */
export function sizeText(
  { cloth: { width, height }, opened }: Pick<FabricGeometry, 'cloth' | 'opened'>,
  { gauge, loom }: Pick<Pattern, 'gauge' | 'loom'>,
): SizeText {
  if (!gauge) return { seen: 'no gauge', spoken: 'Without a gauge its size in cm is not known.' }
  const round = loom.shape === 'ring'
  const open = opened ? ', opened at the short rows' : ''
  const wide = `${centimetres(width)} ${round ? 'round' : 'wide'}`
  return {
    seen: `${round ? `${wide}, ${centimetres(height)} high` : `${inCentimetres(width)} × ${centimetres(height)}`}${open}`,
    spoken: `${wide} and ${centimetres(height)} high${open}${opened ? ',' : ''} by the gauge, unstretched.`,
  }
}
