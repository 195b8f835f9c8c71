/** Dates as the reader's own place writes them; `date` is ISO 8601. */
export const timeOf = (date: string): string =>
  new Date(date).toLocaleTimeString([], { hour: 'numeric', minute: '2-digit' })

export const dayOf = (date: string): string =>
  date ? new Date(date).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' }) : ''

const oneDay = 24 * 60 * 60 * 1000

/** "today 21:40", "yesterday 21:40", else with its day; empty without a date. */
export function whenOf(date: string, now: Date): string {
  if (!date) return ''
  const days = Math.round((startOfDay(now) - startOfDay(new Date(date))) / oneDay)
  if (days === 0) return `today ${timeOf(date)}`
  return days === 1 ? `yesterday ${timeOf(date)}` : dayOf(date)
}

const startOfDay = (date: Date): number =>
  new Date(date.getFullYear(), date.getMonth(), date.getDate()).getTime()

/** The same as it is told now. */
export const momentOf = (date: string): string => whenOf(date, new Date())

/** This moment, ISO 8601. */
export const nowText = (): string => new Date().toISOString()
