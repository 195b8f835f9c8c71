/** Dates as the reader's own place writes them; `date` is ISO 8601. */
export const timeOf = (date: string): string =>
  new Date(date).toLocaleTimeString([], { hour: 'numeric', minute: '2-digit' })

export const dayOf = (date: string): string =>
  date ? new Date(date).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' }) : ''
