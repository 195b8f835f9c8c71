/** What the browser's database may answer instead of doing its part, and what is said of it. */

/** How long an answer is waited for, in milliseconds. */
export const patience = 4000

class NoAnswer extends Error {}

/** The answer, or a failure when none has come in time. */
export async function inTime<T>(answer: Promise<T>, time: number): Promise<T> {
  let clock: ReturnType<typeof setTimeout> | undefined
  const late = new Promise<never>((_, reject) => {
    clock = setTimeout(() => reject(new NoAnswer()), time)
  })
  try {
    return await Promise.race([answer, late])
  } finally {
    clearTimeout(clock)
  }
}

const notSaved = 'Your work isn’t being saved:'

/** Why nothing is kept, and what to do; for the user. The first sentence can stand alone. */
export function whyNotKept(error: unknown): string {
  if (error instanceof NoAnswer)
    return `${notSaved} the browser doesn’t answer. Save your piece as a file, and close other windows of Pegwright.`
  const name = error instanceof Error || error instanceof DOMException ? error.name : ''
  if (name === 'QuotaExceededError')
    return `${notSaved} the browser has no room left. Save your piece as a file, then remove pieces you no longer need.`
  return `${notSaved} this browser won’t allow it (perhaps a private window). Save your piece as a file before you close the page.`
}
