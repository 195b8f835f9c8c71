/** Keeps the screen awake while it is asked to, where the browser can; and tells when that ends. */
export class Awake {
  readonly can = typeof navigator !== 'undefined' && 'wakeLock' in navigator
  /** Is the screen kept awake now? */
  on = $state(false)
  /** It was to be kept awake, and the browser ended that. */
  ended = $state(false)
  #wished = false
  #lock: WakeLockSentinel | null = null

  /** Keep it awake, or no longer. */
  async wish(wished: boolean): Promise<void> {
    this.#wished = wished
    this.ended = false
    if (wished) await this.#ask()
    else await this.#lock?.release()
  }

  /** A page that was hidden has lost it; shown again, it asks anew. */
  async shown(): Promise<void> {
    if (this.#wished && document.visibilityState === 'visible') await this.#ask()
  }

  async #ask(): Promise<void> {
    if (!this.can || this.#lock) return
    try {
      const lock = await navigator.wakeLock.request('screen')
      lock.addEventListener('release', () => {
        this.#lock = null
        this.on = false
        this.ended = this.#wished
      })
      this.#lock = lock
      this.on = true
      this.ended = false
      if (!this.#wished) await lock.release()
    } catch {
      this.ended = this.#wished
    }
  }
}
