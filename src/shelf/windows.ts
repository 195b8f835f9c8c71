/** Two windows on one piece: the first of them holds it for as long as it has it on its bench. */

/** Milliseconds that a page which is just going has to let go of its piece. */
const goes = 500

interface Holding {
  /** May others hold it too, who share it? */
  readonly shared?: boolean
  readonly locks?: LockManager | undefined
}

/**
 * Hold this piece for this window; gives how to let go of it, or null when another window holds it.
 * In a browser that cannot tell, every window holds every piece.
 */
export function hold(
  id: string,
  { shared = false, locks = navigator.locks }: Holding = {},
): Promise<(() => void) | null> {
  return new Promise((resolve) => {
    if (!locks) {
      resolve(() => undefined)
      return
    }
    const untilLetGo = () => new Promise<void>((letGo) => resolve(letGo))
    locks
      .request(
        `pegwright ${id}`,
        { signal: AbortSignal.timeout(goes), mode: shared ? 'shared' : 'exclusive' },
        untilLetGo,
      )
      .catch(() => resolve(null))
  })
}
