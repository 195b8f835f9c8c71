import type { KeepStatus, KeptPiece, Shelf } from './keep'

export interface Autosave {
  /** The piece has a new state; it is kept within `wait`. */
  readonly changed: (piece: KeptPiece) => void
  /** Keep what is not kept yet, at once. Resolves when the store has answered. */
  readonly flush: () => Promise<void>
  /** What has changed and is not kept yet. */
  readonly unkept: () => readonly KeptPiece[]
  /** Take no more changes and forget the clock. Flush first. */
  readonly stop: () => void
}

export interface AutosaveSettings {
  readonly onStatus: (status: KeepStatus, piece: KeptPiece) => void
  /** Milliseconds from the first change that is not kept; later changes do not put it off. */
  readonly wait?: number
  /** Milliseconds until what could not be kept is tried again. */
  readonly again?: number
}

/**
 * Keep each piece that changes, one write after the other, always the newest state. What could not
 * be kept is tried again with the next change or flush, and else after a while.
 */
export function autosave(
  shelf: Pick<Shelf, 'keep'>,
  { onStatus, wait = 500, again = 10_000 }: AutosaveSettings,
): Autosave {
  const waiting = new Map<string, KeptPiece>()
  let written: KeptPiece | undefined
  let clock: ReturnType<typeof setTimeout> | undefined
  let nextTry: ReturnType<typeof setTimeout> | undefined
  let writing = Promise.resolve()
  let stopped = false

  async function writeAll(): Promise<void> {
    for (const [id, piece] of [...waiting]) {
      waiting.delete(id)
      written = piece
      const status = await shelf.keep(piece)
      written = undefined
      if (status.state === 'not kept' && !waiting.has(id)) waiting.set(id, piece)
      onStatus(status, piece)
    }
    clearTimeout(nextTry)
    if (waiting.size > 0 && !stopped) nextTry = setTimeout(() => void flush(), again)
  }

  function flush(): Promise<void> {
    clearTimeout(clock)
    clock = undefined
    return (writing = writing.then(writeAll))
  }

  return {
    changed(piece) {
      if (stopped) return
      waiting.set(piece.id, piece)
      clock ??= setTimeout(() => void flush(), wait)
    },
    flush,
    unkept: () => [...(written ? [written] : []), ...waiting.values()],
    stop() {
      stopped = true
      clearTimeout(clock)
      clearTimeout(nextTry)
      clock = undefined
    },
  }
}

/** Flush when one of these events comes, such as pagehide. Gives a function that ends it. */
export function flushOn(
  saving: Pick<Autosave, 'flush'>,
  target: EventTarget,
  events: readonly string[],
): () => void {
  const flush = () => void saving.flush()
  for (const event of events) target.addEventListener(event, flush)
  return () => {
    for (const event of events) target.removeEventListener(event, flush)
  }
}
