/**
 * The number that was typed: a comma is a decimal sign as a point is. Null where it is no number; as no sign
 * parts thousands, "1,000" is no whole number.
 */
export function typedNumber(text: string, isWhole: boolean): number | null {
  const written = isWhole ? /^[+-]?\d+$/ : /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/
  const trimmed = text.trim()
  return written.test(trimmed) ? Number(trimmed.replace(',', '.')) : null
}

/** The number so many steps on, without the crumbs of binary fractions. */
export const stepped = (value: number, step: number, by: number): number =>
  Math.round((value + by * step) / step) * step

/** A number as a field shows it. */
export const shownNumber = (value: number): string => String(Number(value.toFixed(6)))
