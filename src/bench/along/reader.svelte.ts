/** Reads aloud by a voice that lives in the browser; without one there is nothing to read by. */
export class Reader {
  /** A voice of this device, in English; null: there is none. */
  voice = $state.raw<SpeechSynthesisVoice | null>(null)
  on = $state(false)
  readonly #speech = typeof speechSynthesis === 'undefined' ? null : speechSynthesis

  /** Look for voices, which may come late. Gives how to stop. */
  start(): () => void {
    const speech = this.#speech
    if (!speech) return () => undefined
    const look = () => {
      const local = speech.getVoices().filter(({ localService }) => localService)
      this.voice = local.find(({ lang }) => /^en\b/i.test(lang)) ?? null
      if (!this.voice) this.on = false
    }
    look()
    speech.addEventListener('voiceschanged', look)
    return () => {
      speech.removeEventListener('voiceschanged', look)
      this.stop()
    }
  }

  /** Say this in place of what is being said. */
  read(text: string): void {
    const { voice } = this
    if (!this.#speech || !voice || !this.on) return
    this.#speech.cancel()
    const saying = new SpeechSynthesisUtterance(text)
    saying.voice = voice
    saying.lang = voice.lang
    this.#speech.speak(saying)
  }

  stop(): void {
    this.on = false
    this.#speech?.cancel()
  }
}
