import type { Stitch } from '../../../stitches/stitch'
import { standardVocabulary } from '../../../stitches/vocabulary'
import type { StitchItem } from '../nodes'

/** What it shows on the right side, or the stitch itself where that side faces or no stitch looks so. */
export const seen = (stitch: Stitch, fromBehind: boolean): Stitch =>
  fromBehind ? (itemFromBehind({ stitch }) ?? stitch) : stitch

/**
 * The stitch that the right side shows of one worked on the wrong side; undefined if the vocabulary has none.
 * Of a slip the yarn lies on the wrong side if the words do not say where it is (common practice).
 */
export const itemFromBehind = ({
  stitch,
  atBack,
  twinOf,
}: Pick<StitchItem, 'stitch' | 'atBack' | 'twinOf'>): Stitch | undefined =>
  twinOf || (stitch.role === 'slip' && !atBack) ? stitch : standardVocabulary.behind(stitch)
