/** Pixels of the screen for one millimetre of a drawing at 100 %. */
export const pxPerMm = 96 / 25.4

const least = 0.2
const most = 6

interface Size {
  readonly width: number
  readonly height: number
}

interface Settings {
  /** The drawing, mm. */
  readonly size: () => Size
  /** Changes when another piece is opened: then the zoom is no longer the hand's own choice. */
  readonly opened: () => unknown
  /** Fitting by itself makes a small drawing no larger and a large one no smaller than this. */
  readonly fitted: Bounds
  /** Round the drawing, px. */
  readonly padding: number
}

interface Bounds {
  readonly least: number
  readonly most: number
}

/**
 * How large a drawing is shown in a view that scrolls. Until the zoom is chosen, the whole drawing
 * stays in sight, as far as it can be read. To be made while a component is set up.
 */
export class Zoom {
  value = $state(1)
  view: HTMLElement | undefined = $state()
  #chosen = $state(false)
  readonly #settings: Settings

  constructor(settings: Settings) {
    this.#settings = settings
    $effect(() => {
      if (settings.opened()) this.#chosen = false
    })
    $effect(() => {
      const { view } = this
      if (!view || this.#chosen) return
      const watch = new ResizeObserver(() => this.#fit(settings.fitted))
      watch.observe(view)
      return () => watch.disconnect()
    })
    $effect(() => {
      const { width, height } = settings.size()
      if (!this.#chosen && width > 0 && height > 0) this.#fit(settings.fitted)
    })
  }

  /** Pixels for one millimetre. */
  readonly scale: number = $derived(pxPerMm * this.value)

  get padding(): number {
    return this.#settings.padding
  }

  /** Zoom and keep the point under the pointer (or the middle) where it is. */
  to(next: number, at?: { readonly x: number; readonly y: number }): void {
    const { view } = this
    if (!view) return
    const to = Math.min(most, Math.max(least, next))
    this.#chosen = true
    const box = view.getBoundingClientRect()
    const x = at ? at.x - box.left : box.width / 2
    const y = at ? at.y - box.top : box.height / 2
    const ratio = to / this.value
    const left = (view.scrollLeft + x) * ratio - x
    const top = (view.scrollTop + y) * ratio - y
    this.value = to
    requestAnimationFrame(() => view.scrollTo(left, top))
  }

  by(factor: number): void {
    this.to(this.value * factor)
  }

  fit(): void {
    this.#fit({ least, most })
    this.#chosen = false
  }

  wheel(event: WheelEvent): void {
    if (!event.ctrlKey && !event.metaKey) return
    event.preventDefault()
    this.to(this.value * Math.exp(-event.deltaY / 300), { x: event.clientX, y: event.clientY })
  }

  /** Scroll as little as brings a point of the drawing, mm, into sight. */
  reveal([x, y]: readonly [number, number]): void {
    const { view, scale, padding } = this
    if (!view) return
    const { width, height } = this.#settings.size()
    /** A drawing that can be seen whole in this direction stays where it is. */
    const whole = (drawn: number, room: number) => drawn * scale + 2 * padding <= room
    const left = whole(width, view.clientWidth)
      ? 0
      : brought(x * scale + padding, view.scrollLeft, view.clientWidth)
    const top = whole(height, view.clientHeight)
      ? 0
      : brought(y * scale + padding, view.scrollTop, view.clientHeight)
    if (left !== view.scrollLeft || top !== view.scrollTop) view.scrollTo(left, top)
  }

  #fit(bounds: Bounds): void {
    const { view } = this
    if (!view || view.clientWidth === 0) return
    const { width, height } = this.#settings.size()
    const room = Math.min(
      (view.clientWidth - 2 * this.padding) / (width * pxPerMm),
      (view.clientHeight - 2 * this.padding) / (height * pxPerMm),
    )
    this.value = Math.min(bounds.most, Math.max(bounds.least, room))
  }
}

const nearEdge = 28

const brought = (value: number, start: number, size: number): number =>
  value < start + nearEdge
    ? value - nearEdge
    : value > start + size - nearEdge
      ? value - size + nearEdge
      : start
