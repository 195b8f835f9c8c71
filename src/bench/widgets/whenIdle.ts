/** Do it when the browser has nothing else to do; the answer calls it off. */
export function whenIdle(run: () => void): () => void {
  if (typeof requestIdleCallback === 'function') {
    const handle = requestIdleCallback(run)
    return () => cancelIdleCallback(handle)
  }
  const clock = setTimeout(run, 30)
  return () => clearTimeout(clock)
}
