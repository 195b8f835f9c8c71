import { chartOn } from '../../pattern/charts'
import type { Sheet } from '../../pattern/pattern'
import { placed } from '../../pattern/row'
import type { Stitch } from '../../stitches/stitch'

/** Crosses that lie ready before any is used. */
const usualCrosses = ['1/1 LC', '1/1 RC', '2/2 LC', '2/2 RC', '2/1 LPC', '2/1 RPC']

export interface TrayItem {
  readonly stitch: Stitch
  /** The key that takes it into the hand. */
  readonly key: string | null
}

/** What lies in the tray: every plain stitch, the usual crosses, those in the chart and in hand. */
export function trayItems(sheet: Sheet, inHand: Stitch): TrayItem[] {
  const { vocabulary } = sheet
  const crosses = new Set(usualCrosses.flatMap((id) => vocabulary.find(id) ?? []))
  for (const row of chartOn(sheet).rows)
    for (const { stitch } of placed(row)) if (stitch.cross) crosses.add(stitch)
  if (inHand.cross) crosses.add(inHand)
  const plain = vocabulary.stitches.filter(({ cross }) => !cross)
  return [
    ...plain.map((stitch) => ({ stitch, key: stitch.key ?? null })),
    ...[...crosses].map((stitch, index) => ({
      stitch,
      key: index < 9 ? String(index + 1) : null,
    })),
  ]
}
