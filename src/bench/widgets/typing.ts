import { innermost, isEntered } from './fields'

type Field = HTMLInputElement | HTMLTextAreaElement

/**
 * What is being typed in a field and was not taken yet. Escape takes it back; only then does Escape
 * close what is open. It is taken when the page goes.
 */
export class Typing {
  #field: Field | null = null
  /** What stood in the field before. */
  #stood = ''

  /** Is something typed there that was not taken yet? */
  isIn(target: EventTarget | null): boolean {
    return this.#field !== null && target === this.#field && this.#field.value !== this.#stood
  }

  /** A field is about to be changed by a hand. */
  begins(event: Event): void {
    const target = innermost(event)
    if (!isEntered(target) || target === this.#field) return
    this.#field = target
    this.#stood = target.value
  }

  /** What was typed was taken, or refused, or the hand went on. */
  ended(): void {
    this.#field = null
  }

  keyDown(event: KeyboardEvent): void {
    const field = this.#field
    if (event.key !== 'Escape' || event.isComposing || !field || !this.isIn(innermost(event)))
      return
    field.value = this.#stood
    this.#field = null
    field.dispatchEvent(new Event('input', { bubbles: true }))
    event.preventDefault()
    event.stopPropagation()
  }

  /** The page goes: what was typed is taken as if the hand had gone on. */
  take(): void {
    if (this.isIn(this.#field)) this.#field?.dispatchEvent(new Event('change', { bubbles: true }))
  }
}
