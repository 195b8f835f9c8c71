import type { Terms } from '../../languages/terms'
import type { HandsContext } from '../../languages/hands'
import type { Pattern } from '../../pattern/pattern'

export const handsContext = (
  { loom, making, style }: Pick<Pattern, 'loom' | 'making' | 'style'>,
  terms: Terms = style.terms,
): HandsContext => ({ shape: loom.shape, direction: loom.direction, knit: making.knit, terms })
