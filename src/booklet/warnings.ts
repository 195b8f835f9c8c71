import type { Pattern } from '../pattern/pattern'
import { isOneChart, chartsInOrder, usedCharts } from '../pattern/charts'
import type { PrintWarning } from './page/page'
import { lettersMissing } from './page/text'
import type { BookletSettings } from './settings'

/** Errors that are open, and the charts whose printed own words have any, make a draft. */
export function draftWarnings(
  errors: number,
  elsewhere: readonly string[],
  draftMark: string,
): PrintWarning[] {
  const [are, them] = errors === 1 ? ['error is', 'it'] : ['errors are', 'them']
  const listed = {
    message: `${errors} ${are} listed under Findings, so each page says ${draftMark}.`,
    advice: `Fix ${them} before you publish.`,
  }
  return [
    ...(errors > 0 ? [listed] : []),
    ...elsewhere.map((name) => ({
      message: `Your own words of “${name}” have errors, so each page says ${draftMark}.`,
      advice: 'Open this chart to see them, and fix them before you publish.',
    })),
  ]
}

/** Warnings make no draft, but whoever publishes is to know of them. */
export function openWarnings(warnings: number, forBaby: boolean): PrintWarning[] {
  if (warnings === 0) return []
  const [are, them] = warnings === 1 ? ['warning is', 'it'] : ['warnings are', 'them']
  return [
    {
      message: `${warnings} ${are} open: see Findings.`,
      advice: forBaby
        ? `This piece is for a baby or child: mend ${them} before you publish.`
        : `Mend ${them}, or set ${them} aside.`,
    },
  ]
}

/** Letters that can only be printed as empty boxes. */
export function letterWarnings(pattern: Pattern, own: boolean): PrintWarning[] {
  const { title, designer, notes, steps } = pattern
  const charts = chartsInOrder(pattern)
  const texts = [
    title,
    designer,
    notes,
    ...(own ? charts.map(({ words }) => words ?? '') : []),
    ...(isOneChart(pattern) ? [] : charts.map(({ name }) => name)),
    ...steps.map((step) => (step.kind === 'note' ? step.text : '')),
  ]
  const missing = lettersMissing(texts.join(' '))
  if (missing.length === 0) return []
  const shown = missing.slice(0, 10).join(' ')
  return [
    {
      message: `The fonts of the booklet do not have ${missing.length} of its letters: ${shown}. An empty box is printed for each.`,
      advice: `Write the title, the designer${own ? ', the notes and your own words' : ' and the notes'} with other letters to print them whole.`,
    },
  ]
}

/** What is left out of the piece as it is asked for. */
export function settingWarnings(pattern: Pattern, settings: BookletSettings): PrintWarning[] {
  const used = usedCharts(pattern).map(({ name }) => name)
  const unused = chartsInOrder(pattern).filter(({ name }) => !used.includes(name))
  const names = unused.map(({ name }) => `“${name}”`).join(', ')
  return [
    ...(unused.length > 0 && settings.charts
      ? [
          {
            message: `${names} ${unused.length === 1 ? 'is' : 'are'} in no step of the piece and ${unused.length === 1 ? 'is' : 'are'} not printed.`,
            advice: 'Add a step that works it, or remove it.',
          },
        ]
      : []),
    ...(!settings.charts && !settings.words
      ? [
          {
            message: 'Neither charts nor words are printed: nobody can knit the piece from this.',
            advice: 'Print the charts, the words or both.',
          },
        ]
      : []),
    ...(pattern.pair === 'mirrored' && !settings.second
      ? [
          {
            message: 'The second of the pair is the mirror image, and it is not written out.',
            advice: 'Print it too, or give its booklet along with this one.',
          },
        ]
      : []),
  ]
}
