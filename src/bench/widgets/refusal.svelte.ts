import { getContext, setContext } from 'svelte'

const key = Symbol('refusals')

/** The one line of a dialog, with room of its own, that says why something was refused. */
export class RefusalLine {
  /** Empty: nothing is refused. */
  text = $state('')
  /** How often something was refused: the same may be refused again. */
  count = $state(0)
  /** `id`: of the element that shows it. */
  constructor(readonly id: string) {
    setContext(key, this)
  }
}

/**
 * Why a field refused what was entered. Inside a dialog the dialog's line says it, so that nothing there
 * moves; elsewhere the field itself.
 */
export class Refusal {
  readonly #line = getContext<RefusalLine | undefined>(key)
  #problem = $state('')
  /** `id`: of the element in which the field shows it itself. */
  constructor(readonly id: string) {}

  /** Is what was entered last refused, and is that still said? */
  get stands(): boolean {
    return this.#problem !== '' && (!this.#line || this.#line.text === this.#problem)
  }

  /** What the field itself has to show; empty: nothing. */
  get shownHere(): string {
    return this.#line ? '' : this.#problem
  }

  /** Id of the element that says it, while it stands. */
  get toldIn(): string | undefined {
    return this.stands ? (this.#line?.id ?? this.id) : undefined
  }

  /** Empty: nothing is wrong any more. */
  say(problem: string): void {
    if (this.#line && (problem !== '' || this.#line.text === this.#problem))
      this.#line.text = problem
    if (this.#line && problem !== '') this.#line.count++
    this.#problem = problem
  }
}
