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

/** The groups of the tray, in this order. */
const groupNames = [
  'Knit',
  'Purl',
  'Slip and tuck',
  'Increases',
  'Decreases',
  'Other',
  'Crosses',
] as const
type GroupName = (typeof groupNames)[number]

const groupOf = ({ family, look }: Stitch): GroupName => {
  switch (family) {
    case 'knit and purl':
      return look.endsWith('purl') ? 'Purl' : 'Knit'
    case 'slip':
      return 'Slip and tuck'
    case 'increase':
      return 'Increases'
    case 'decrease':
      return 'Decreases'
    case 'texture':
      return 'Other'
    case 'cross':
      return 'Crosses'
  }
}

export interface TrayGroup {
  readonly name: GroupName
  readonly items: readonly TrayItem[]
}

/** What lies in the tray, by what it is for. */
export const trayGroups = (items: readonly TrayItem[]): readonly TrayGroup[] =>
  groupNames
    .map((name) => ({ name, items: items.filter(({ stitch }) => groupOf(stitch) === name) }))
    .filter((group) => group.items.length > 0)

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
