import { focused, isField } from '../widgets/fields'

/** These have keys of their own, or hand the focus on themselves. */
const keepsFocus = 'dialog, [popover], .words, .pegs, summary'
/** Something that lies over the bench. */
const open = 'dialog[open], :popover-open'
/** Milliseconds and pixels within which two presses are one double click on most systems. */
const doubleClick = { time: 500, slip: 6 } as const
const numberField = 'input[inputmode=numeric], input[inputmode=decimal]'
/** What a press can make go. */
const controls = 'button, label, summary, a, input, select'

const isThere = (element: Element): boolean =>
  element.isConnected && element.getClientRects().length > 0

function stop(event: Event): void {
  event.preventDefault()
  event.stopPropagation()
}

/**
 * What a press with the pointer does to the focus. After it, and after a dialog, the keys work on the
 * chart again; whoever works by keyboard keeps the focus where it was, and a field always keeps it.
 * A press that brings the focus into a field of numbers selects the number: what is typed takes its
 * place. The next press sets the caret.
 */
export class Pressing {
  #lastChart: SVGSVGElement | null = null
  /** Was the last press one of the pointer? */
  #byPointer = false
  /** What had the focus when the pointer went down. */
  #before: Element | null = null
  /** The button outside of dialogs that the pointer pressed last, with no key after it. */
  #pressed: Element | null = null

  /** What the first press of a double click met, and what stood on it. */
  #first: { readonly button: Element | null; readonly name: string } = { button: null, name: '' }
  /** The last press of a double click, and what the first of them met; null: none was on a control. */
  #last: { readonly control: Element; x: number; y: number; time: number } | null = null
  /** Was the press that goes on now begun on something that has gone? */
  #isLate = false

  focusIn({ target }: FocusEvent): void {
    if (target instanceof SVGSVGElement) this.#lastChart = target
  }

  /**
   * Asked before anything hears of the press. The later press of a double click begun on something that has
   * gone meanwhile (a dialog closed over the chart) does nothing.
   */
  pointerDown(event: PointerEvent): void {
    this.#byPointer = true
    this.#before = focused()
    const { clientX: x, clientY: y, timeStamp: time, target } = event
    const last = this.#last
    const isSame =
      last !== null &&
      time - last.time < doubleClick.time &&
      Math.hypot(x - last.x, y - last.y) < doubleClick.slip
    if (isSame) this.#last = { ...last, x, y, time }
    else {
      const control = target instanceof Element ? target.closest(controls) : null
      this.#last = control && { control, x, y, time }
    }
    this.#isLate = isSame && !isThere(last.control)
    if (this.#isLate) stop(event)
  }

  keyDown({ target }: KeyboardEvent): void {
    this.#byPointer = false
    if (!(target instanceof Element) || !target.closest(open)) this.#pressed = null
  }

  /**
   * A second press of the same double click does nothing on a button that only came to stand there, or
   * came to do something else, with the first; one whose text is a count says what it does in `data-does`. To be
   * asked before anything hears of the press.
   */
  clickBegins(event: MouseEvent): void {
    const { detail, target } = event
    if (detail > 0 && this.#isLate) {
      stop(event)
      return
    }
    const button = target instanceof Element ? target.closest('button') : null
    const name = button?.dataset.does ?? button?.textContent ?? ''
    if (detail <= 1) this.#first = { button, name }
    else if (button && (this.#first.button !== button || this.#first.name !== name)) stop(event)
  }

  click({ detail, target }: MouseEvent): void {
    if (!(target instanceof HTMLElement || target instanceof SVGElement)) return
    if (target instanceof HTMLInputElement && target.matches(numberField)) {
      if (this.#byPointer && this.#before !== target) target.select()
      this.#before = target
      return
    }
    // A label presses its tick or choice after itself, and hands the focus on to it.
    const isByPointer = target instanceof HTMLInputElement ? this.#byPointer : detail > 0
    if (!isByPointer) return
    const button = target.closest('button, label')
    if (!target.closest(open)) this.#pressed = button
    if (button && !target.closest(keepsFocus)) this.#toChart()
  }

  /** A dialog was closed: of itself the focus would stay on the button that opened it. */
  closed({ target }: Event): void {
    const isOver = target instanceof Element && target.matches('dialog, [popover]')
    if (!isOver || target.matches(open)) return
    if (this.#byPointer || (this.#pressed !== null && focused() === this.#pressed)) this.#toChart()
  }

  #toChart(): void {
    if (isField(focused()) || document.querySelector(open)) return
    this.#chart()?.focus({ preventScroll: true })
  }

  #chart(): SVGElement | undefined {
    const isSeen = (chart: SVGElement) => chart.isConnected && chart.getClientRects().length > 0
    const charts = document.querySelectorAll<SVGSVGElement>('svg.chart[tabindex="0"]')
    return (
      [this.#lastChart, ...charts].find((chart) => chart !== null && isSeen(chart)) ?? undefined
    )
  }
}
