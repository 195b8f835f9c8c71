import type { Pattern } from '../../../pattern/pattern'
import { setReadAs, setWords } from '../../../pattern/edits/words'
import { chartsInOrder } from '../../../pattern/charts'
import { chartFrom, patternFor } from './chartFrom'
import type { Reading } from '../reading'
import { counted } from '../../../languages/english/forms'

/**
 * A piece with the chart of these words, and the words beside it as own words. With `kept`, the piece on
 * the bench, its title, swatch and settings stay, except for what the words state or were read for.
 */
export function pieceFromWords(reading: Reading, kept: Pattern | null): Pattern {
  const { settings, stated } = reading
  const knit = stated.knit ?? settings.knit
  const empty = patternFor({ ...settings, knit })
  const base: Pattern = kept
    ? {
        ...empty,
        title: stated.title ?? kept.title,
        designer: kept.designer,
        loom: { ...empty.loom, pitch: kept.loom.pitch },
        gauge: stated.gauge ?? kept.gauge,
        making: { ...kept.making, knit },
        checks: kept.checks,
        style: { ...kept.style, terms: empty.style.terms },
        pair: kept.pair,
        pace: kept.pace,
        swatch: kept.swatch,
      }
    : empty
  const { size, needles } = settings
  return setReadAs(setWords(chartFrom(reading, base).pattern, reading.text), { size, needles })
}

/** What the piece on the bench gives up for a chart from words, and what stays. */
export function replacedSaid(pattern: Pattern): string {
  const charts = chartsInOrder(pattern).length
  const goes = `${counted(pattern.steps.length, 'step')} and ${charts === 1 ? 'its chart' : `${charts} charts`} go`
  return `This replaces “${pattern.title}”: its ${goes}. Title, swatch and baby setting stay, unless your words say otherwise. Undo brings all of it back.`
}
