/** Texts and numbers are written there, which are taken when the hand goes on. */
const entered =
  'input:not([type=radio], [type=checkbox], [type=range], [type=file], [type=search], [data-live]), textarea:not([data-live])'
/** There each key is taken at once, and the field itself takes it back. */
const live = 'input[type=search], [data-live]'
/** The editor of the words is written in too, but its undo is the bench's. */
const written = `${entered}, ${live}, [contenteditable=true]`
/** The keys choose there. */
const chosen = 'select, input[type=range]'

const isAt = (target: EventTarget | null | undefined, which: string): boolean =>
  target instanceof Element && target.closest(which) !== null

/** Is this where texts or numbers are written? Then no key means a command. */
export const isForWriting = (target: EventTarget | null | undefined): boolean =>
  isAt(target, written)

/** Is this where each key is taken at once? */
export const isLive = (target: EventTarget | null | undefined): boolean => isAt(target, live)

/** Is this a field whose text is taken when the hand goes on? */
export const isEntered = (
  target: EventTarget | null | undefined,
): target is HTMLInputElement | HTMLTextAreaElement =>
  target instanceof Element && target.matches(entered)

/** Is this a field, for writing or for choosing? It keeps the focus that it was given. */
export const isField = (target: EventTarget | null | undefined): boolean =>
  isAt(target, `${written}, ${chosen}`)

/** What was really pressed or typed in, also behind a shadow root. */
export const innermost = (event: Event): EventTarget | null =>
  event.composedPath()[0] ?? event.target

/** Move the focus so many buttons on among some, round their ends; false: it is on none of them. */
export function moveAmong(buttons: readonly HTMLElement[], step: number): boolean {
  const at = buttons.findIndex((button) => button === document.activeElement)
  if (at < 0) return false
  buttons[(at + step + buttons.length) % buttons.length]?.focus()
  return true
}

/** What has the focus, also behind a shadow root. */
export function focused(): Element | null {
  let at = document.activeElement
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
  return at
}
