import type { Base, PlacedLoop, PlacedRow, FabricPoint } from './place'

const sameSpot = (a: FabricPoint, b: FabricPoint | undefined): boolean =>
  a.x === b?.x && a.y === b.y

const sameBase = (a: Base, b: Base | undefined): boolean =>
  a.x === b?.x && a.y === b.y && a.opened === b.opened && a.laid === b.laid

const sameLoop = (a: PlacedLoop, b: PlacedLoop | undefined): boolean =>
  b !== undefined &&
  a.kind === b.kind &&
  a.depth === b.depth &&
  a.over === b.over &&
  a.tone === b.tone &&
  a.open === b.open &&
  a.bound === b.bound &&
  a.home === b.home &&
  sameSpot(a.head, b.head) &&
  a.bases.length === b.bases.length &&
  a.bases.every((base, i) => sameBase(base, b.bases[i]))

/** Would both rows be drawn alike, whatever their height in the piece? */
export const samePlaced = (a: PlacedRow, b: PlacedRow): boolean =>
  a.loops.length === b.loops.length &&
  a.bars.length === b.bars.length &&
  a.loops.every((loop, i) => sameLoop(loop, b.loops[i])) &&
  a.bars.every((bar, i) => sameSpot(bar, b.bars[i]))
