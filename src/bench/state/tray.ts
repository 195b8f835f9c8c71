import { chartOn } from '../../pattern/charts'
import type { Sheet } from '../../pattern/pattern'
import { placed } from '../../pattern/row'
import type { Stitch } from '../../stitches/stitch'
import { standardVocabulary, stitchOf } from '../../stitches/vocabulary'

/** Crosses that lie ready before any is used. */
const usualCrosses = ['1/1 LC', '1/1 RC', '2/2 LC', '2/2 RC', '2/1 LPC', '2/1 RPC']

export interface TrayItem {
  readonly stitch: Stitch
  /** The key that takes it into the hand. */
  readonly key: string | null
}

/** What lies in the tray: every plain stitch, the usual crosses, those in the chart and in hand. */
export function trayItems(sheet: Sheet, inHand: string): TrayItem[] {
  const crosses = new Set(usualCrosses)
  for (const row of chartOn(sheet).rows)
    for (const { stitch } of placed(row)) if (stitch.cross) crosses.add(stitch.id)
  if (stitchOf(inHand).cross) crosses.add(inHand)
  const plain = standardVocabulary.stitches.filter(({ cross }) => !cross)
  return [
    ...plain.map((stitch) => ({ stitch, key: stitch.key ?? null })),
    ...[...crosses].map((id, index) => ({
      stitch: stitchOf(id),
      key: index < 9 ? String(index + 1) : null,
    })),
  ]
}
