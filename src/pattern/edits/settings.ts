import { namedOn } from '../charts'
import type { CheckSettings, Gauge, LoomSetup, Making, Pattern, Sheet, Style } from '../pattern'
import { limits } from '../pattern'
import { remadeFor } from '../generate/anew'
import { withNamed } from './chart'

export const setText = (
  pattern: Pattern,
  change: Partial<Pick<Pattern, 'title' | 'designer' | 'notes'>>,
): Pattern => ({ ...pattern, ...change })

const within = (value: number, { least, most }: { least: number; most: number }): number =>
  Number.isNaN(value) ? least : Math.min(most, Math.max(least, value))

/**
 * Charts of rows are left as they are: a check says when one no longer fills the loom, and offers ways. A chart that
 * is made from a wish is made for the new loom.
 */
export function setLoom(pattern: Pattern, change: Partial<LoomSetup>): Pattern {
  const wanted = { ...pattern.loom, ...change }
  const loom = {
    ...wanted,
    pegs: within(Math.round(wanted.pegs), limits.pegs),
    pitch: within(wanted.pitch, limits.pitch),
  }
  const { pegs, shape } = pattern.loom
  const set = { ...pattern, loom }
  return pegs === loom.pegs && shape === loom.shape ? set : remadeFor(set)
}

export const setGauge = (pattern: Pattern, gauge: Gauge | null): Pattern => ({ ...pattern, gauge })

export const setMaking = (pattern: Pattern, change: Partial<Making>): Pattern => ({
  ...pattern,
  making: { ...pattern.making, ...change },
})

export const setStyle = (pattern: Pattern, change: Partial<Style>): Pattern => ({
  ...pattern,
  style: { ...pattern.style, ...change },
})

export const setChecks = (pattern: Pattern, change: Partial<CheckSettings>): Pattern => ({
  ...pattern,
  checks: { ...pattern.checks, ...change },
})

const toggled = (list: readonly string[], item: string, on: boolean): string[] => {
  const others = list.filter((other) => other !== item)
  return on ? [...others, item].sort() : others
}

/** Switch a rule off or on for this pattern. */
export const setRuleOff = (pattern: Pattern, rule: string, off: boolean): Pattern =>
  setChecks(pattern, { off: toggled(pattern.checks.off, rule, off) })

/** Set one finding aside, or take it up again. */
export const setAside = (sheet: Sheet, finding: string, aside: boolean): Sheet =>
  withNamed(sheet, { aside: toggled(namedOn(sheet).aside, finding, aside) })
