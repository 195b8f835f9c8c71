/** Pixels of the screen for one millimetre of a drawing at 100 %. */
export const pxPerMm = 96 / 25.4

const least = 0.2
const most = 6
/** Who asks for the whole drawing gets it, however small it is then. */
const leastWhole = 0.02

interface Size {
  readonly width: number
  readonly height: number
}

interface Settings {
  /** The drawing, mm. */
  readonly size: () => Size
  /** Changes when another piece is opened: then the zoom is no longer the hand's own choice. */
  readonly opened: () => unknown
  /** The zoom of a drawing that was just opened, from the one at which the whole of it is in sight. */
  readonly fitted: (whole: number) => number
  /** The point of the drawing, mm, that stays where it is when it is zoomed by a button. */
  readonly focus: () => readonly [number, number] | null | undefined
  /** Round the drawing, px. */
  readonly padding: number
}

/** Of the screen, px. */
interface Point {
  readonly x: number
  readonly y: number
}

/** The nearest value between two. */
export const within = (value: number, least: number, most: number): number =>
  Math.min(most, Math.max(least, value))

/**
 * How large a drawing is shown in a view that scrolls. Until the zoom is chosen, the whole drawing
 * stays in sight, as far as it can be read. To be made while a component is set up.
 */
export class Zoom {
  value = $state(1)
  view: HTMLElement | undefined = $state()
  #chosen = $state(false)
  /** "Fit" was pressed: the whole drawing stays in sight, though it can hardly be read. */
  #whole = $state(false)
  readonly #settings: Settings

  constructor(settings: Settings) {
    this.#settings = settings
    $effect(() => {
      if (!settings.opened()) return
      this.#chosen = false
      this.#whole = false
    })
    $effect(() => {
      const { view } = this
      if (!view || this.#chosen) return
      const watch = new ResizeObserver(() => this.#fit())
      watch.observe(view)
      return () => watch.disconnect()
    })
    $effect(() => {
      const { width, height } = settings.size()
      if (!this.#chosen && width > 0 && height > 0) this.#fit()
    })
  }

  /** Pixels for one millimetre. */
  readonly scale: number = $derived(pxPerMm * this.value)

  get padding(): number {
    return this.#settings.padding
  }

  /** Zoom and keep the point under the pointer where it is, or the current place, or the middle. */
  to(next: number, at: Point = this.#still()): void {
    this.hold(at)?.(next, at)
  }

  /** Take hold of what lies at a point of the screen: then it can be zoomed and brought elsewhere. */
  hold(at: Point): ((next: number, to: Point) => void) | null {
    const { view } = this
    const drawing = view?.querySelector('svg')
    if (!view || !drawing) return null
    const before = drawing.getBoundingClientRect()
    const [across, down] = [
      (at.x - before.left) / before.width,
      (at.y - before.top) / before.height,
    ]
    return (next, to) => {
      this.#chosen = true
      this.#whole = false
      this.value = within(next, Math.min(least, this.value), most)
      requestAnimationFrame(() => {
        const now = drawing.getBoundingClientRect()
        view.scrollBy(now.left + across * now.width - to.x, now.top + down * now.height - to.y)
      })
    }
  }

  /** Where the current place is on the screen, or the middle of the view when it is out of sight. */
  #still(): Point {
    const box = this.view?.getBoundingClientRect() ?? new DOMRect()
    const drawn = this.view?.querySelector('svg')?.getBoundingClientRect()
    const point = this.#settings.focus()
    if (drawn && point) {
      const [x, y] = [drawn.left + point[0] * this.scale, drawn.top + point[1] * this.scale]
      if (x >= box.left && x <= box.right && y >= box.top && y <= box.bottom) return { x, y }
    }
    return { x: box.left + box.width / 2, y: box.top + box.height / 2 }
  }

  by(factor: number): void {
    this.to(this.value * factor)
  }

  fit(): void {
    this.#chosen = false
    this.#whole = true
    this.#fit()
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

  #fit(): void {
    const { view } = this
    if (!view || view.clientWidth === 0) return
    const { width, height } = this.#settings.size()
    const whole = Math.min(
      (view.clientWidth - 2 * this.padding) / (width * pxPerMm),
      (view.clientHeight - 2 * this.padding) / (height * pxPerMm),
    )
    this.value = within(this.#whole ? whole : this.#settings.fitted(whole), leastWhole, most)
  }
}

const nearEdge = 28

const brought = (value: number, start: number, size: number): number =>
  value < start + nearEdge
    ? value - nearEdge
    : value > start + size - nearEdge
      ? value - size + nearEdge
      : start
