import type { Row } from '../pattern/pattern'
import type { Layout } from '../pattern/layout'
import type { PatternRun } from '../pattern/work'
import { crossesIn } from './crosses/crossed'
import { nothing } from './nothing'
import type { Noted, RowDigest, RowRule, RuleNote } from './rule'
import type { Setting } from './setting'
import { turningOf } from './turns/turning'

const known = new WeakMap<PatternRun, RowDigest>()

/** Ask the row rules about a worked row, once for as long as it stays worked like that. */
export function digestOf(
  run: PatternRun,
  row: Row,
  layout: Layout,
  setting: Setting,
  rules: readonly RowRule[],
): RowDigest {
  const found = known.get(run)
  if (found?.setting === setting && found.layout === layout) return found
  const view = { run, row, layout, setting }
  let notes: RuleNote[] | undefined
  for (const rule of rules)
    for (const noted of rule.check(view)) (notes ??= []).push({ rule, noted })
  const digest: RowDigest = {
    run,
    layout,
    setting,
    notes: notes ?? nothing,
    crosses: crossesIn(run),
    // On a loom that the chart does not fill, rows cannot meet; that is said once.
    turning: layout.over === 0 ? turningOf(run, setting) : null,
  }
  known.set(run, digest)
  return digest
}

interface Kept {
  readonly around: readonly (RowDigest | undefined)[]
  readonly notes: readonly Noted[]
}

/**
 * A rule about a row and its neighbours, `before` rows back to `after` rows on: asked again only
 * when one of these was worked anew.
 */
export function windowed(
  find: (around: readonly (RowDigest | undefined)[]) => readonly Noted[],
): (
  digestAt: (index: number) => RowDigest | undefined,
  index: number,
  before: number,
  after: number,
) => readonly Noted[] {
  const memory = new WeakMap<RowDigest, Kept>()
  return (digestAt, index, before, after) => {
    const digest = digestAt(index)
    if (!digest) return nothing
    const kept = memory.get(digest)
    if (kept?.around.length === before + after + 1) {
      let same = true
      for (let i = 0; same && i < kept.around.length; i++)
        same = kept.around[i] === digestAt(index - before + i)
      if (same) return kept.notes
    }
    const around: (RowDigest | undefined)[] = []
    for (let i = index - before; i <= index + after; i++) around.push(digestAt(i))
    const notes = find(around)
    memory.set(digest, { around, notes })
    return notes
  }
}
