import type { FabricGeometry } from '../../drawing/fabric/fabric'
import type { Pattern } from '../../pattern/pattern'

export interface SizeText {
  /** As it stands beside the drawing. */
  readonly seen: string
  /** As a sentence, for the text alternative. */
  readonly spoken: string
}

const cm = (mm: number): string => (mm / 10).toFixed(mm < 100 ? 1 : 0)

/** How large the fabric is by the gauge, mm in, without any stretch. */
export function sizeText(
  { cloth: { width, height }, opened }: Pick<FabricGeometry, 'cloth' | 'opened'>,
  { gauge, loom }: Pick<Pattern, 'gauge' | 'loom'>,
): SizeText {
  if (!gauge) return { seen: 'no gauge', spoken: 'Without a gauge its size in cm is not known.' }
  const round = loom.shape === 'ring'
  const open = opened ? ', opened at the short rows' : ''
  const wide = `${cm(width)} cm ${round ? 'round' : 'wide'}`
  return {
    seen: `${round ? `${wide}, ${cm(height)} cm high` : `${cm(width)} × ${cm(height)} cm`}${open}`,
    spoken: `${wide} and ${cm(height)} cm high${open}${opened ? ',' : ''} by the gauge, unstretched.`,
  }
}
