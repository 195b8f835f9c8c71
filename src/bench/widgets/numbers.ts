/**
 * The number that was typed: a comma is a decimal sign as a point is, and the unit that stands after the field may be
 * written too. Null where it is no number. As no sign parts thousands, "1,000" is no whole number; and "1,850" may be
 * meant as either, so it is none.
 */
export function typedNumber(text: string, isWhole: boolean, unit = ''): number | null {
  const written = isWhole ? /^[+-]?\d+$/ : /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/
  const trimmed = text.trim()
  const number = (
    trimmed.endsWith(unit) ? trimmed.slice(0, trimmed.length - unit.length) : trimmed
  ).trim()
  if (!written.test(number) || /^[+-]?[1-9]\d{0,2},\d{3}$/.test(number)) return null
  return Number(number.replace(',', '.'))
}

/** The number so many steps on, without the crumbs of binary fractions. */
export const stepped = (value: number, step: number, by: number): number =>
  Math.round((value + by * step) / step) * step

/** A number as a field shows it. */
export const shownNumber = (value: number): string => String(Number(value.toFixed(6)))
