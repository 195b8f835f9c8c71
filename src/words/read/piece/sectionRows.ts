import { readLimits } from '../limits'
import type { WorkOrder } from '../lines/orders'
import type { Words } from '../rows/rows'

/** A row of a section, to be worked again. */
export interface Entry {
  readonly words: Words
  readonly label: string
}

/** How a section reads, and at which of its times; null: at all of them. */
interface Version {
  readonly times: readonly number[] | null
  readonly rows: Entry[]
}

interface Section {
  /** Told under a line that calls for it by name, or just under a heading. */
  readonly called: boolean
  readonly versions: Version[]
}

/** A section whose rows are being told below "Work Cuff, Rnds 1-2, 6 times:". */
interface Open {
  readonly order: WorkOrder
  readonly words: Words
  readonly section: Section
  readonly times: number
  /** How many of its times are worked. */
  done: number
  /** The first real row of it. */
  readonly from: number
}

/** The rows of each section by its name, for lines that work them again. Knows of no loom. */
export class SectionRows {
  readonly #sections = new Map<string, Section>()
  #heading: { readonly key: string; readonly title: string; readonly section: Section } | null =
    null
  /** The section under whose heading the last row was told. */
  #last: string | null = null
  #lastTitle: string | null = null
  open: Open | null = null

  /** Rows told from here on stand under this heading. */
  enter(title: string): void {
    this.#heading = {
      key: keyOf(title),
      title,
      section: { called: false, versions: [oneVersion()] },
    }
  }

  /** The rows of this order are told next. `from`: index of the first of them. */
  begin(order: WorkOrder, words: Words, times: number, from: number): void {
    const section: Section = { called: true, versions: [oneVersion()] }
    this.#sections.set(keyOf(order.name), section)
    this.open = { order, words, section, times, done: 0, from }
  }

  /** Below this the rows are told as they are at these times. */
  version(times: readonly number[]): void {
    const versions = this.open?.section.versions
    if (!versions) return
    if (versions.length === 1 && versions[0]?.rows.length === 0) versions.pop()
    versions.push({ times, rows: [] })
  }

  /** A row that is told, not one that is worked again. */
  told(words: Words, label: string): void {
    this.#last = null
    if (this.open) return void this.open.section.versions.at(-1)?.rows.push({ words, label })
    if (!this.#heading) return
    const { key, title, section } = this.#heading
    this.#last = key
    this.#lastTitle = title
    section.versions[0]?.rows.push({ words, label })
    if (!this.#sections.get(key)?.called) this.#sections.set(key, section)
  }

  /** Are all rows told that the open order names? */
  get full(): boolean {
    const { open } = this
    if (!open?.order.rows) return false
    const [first, last] = open.order.rows
    return (open.section.versions.at(-1)?.rows.length ?? 0) > last - first
  }

  /** Is one of these numbers among those of the open order that are not told? */
  expects(numbers: readonly number[]): boolean {
    const last = this.open?.order.rows?.[1] ?? Infinity
    return !this.full && numbers.some((number) => number <= last)
  }

  /** Is this the section under whose heading rows were told last? */
  isLast({ name }: Pick<WorkOrder, 'name'>): boolean {
    return this.#last === keyOf(name)
  }

  /** Was it told as a chart, so that working it once is what stands there? */
  isChart({ name }: WorkOrder): boolean {
    return this.isLast({ name }) && this.#lastTitle !== null && isChart.test(this.#lastTitle)
  }

  /** Rows were worked again: what is told last is no longer what was worked last. */
  workedAgain(): void {
    this.#last = null
  }

  /** The rows of a section the nth time, from 1; null: no section is called so. */
  find({ name, rows }: WorkOrder, time: number): readonly Entry[] | null {
    const section = this.#sections.get(keyOf(name))
    if (!section) return null
    const all = versionAt(section.versions, time)?.rows ?? []
    if (!rows) return all
    const [first, last] = rows
    const numbers = all.map(({ label }) => Number(label))
    const from = numbers.indexOf(first)
    const to = numbers.indexOf(last, from)
    return from < 0 || to < 0 ? null : all.slice(from, to + 1)
  }

  /** Do the words say how the open section is worked the nth time? */
  says(time: number): boolean {
    return this.open?.section.versions.some((one) => isOf(one, time)) ?? false
  }
}

const isChart = /\b(?:chart|pattern|stitch)\b/i

const oneVersion = (): Version => ({ times: null, rows: [] })

const isOf = ({ times }: Pick<Version, 'times'>, time: number): boolean =>
  times === null || times.includes(time)

/** "Plait chart", "the plait", "Plait:" are one section. */
const keyOf = (title: string): string => {
  const plain = title
    .toLowerCase()
    .replace(/[\s:.]+$/, '')
    .trim()
  return plain.replace(/^(?:the\s+)?(?:chart\s+)?|\s+(?:chart|section)$/g, '') || plain
}

/**
 * How a section reads the nth time. Beyond the times that are told it goes on as they do: they take
 * turns, or the last stays.
 */
export function versionAt<T extends Pick<Version, 'times'>>(
  versions: readonly T[],
  time: number,
): T | undefined {
  const own = versions.find((one) => isOf(one, time))
  if (own || versions.length === 0) return own
  const known = Math.min(
    readLimits.times,
    versions.reduce((most, { times }) => Math.max(most, ...(times ?? [])), 0),
  )
  const order = Array.from({ length: known + 1 }, (_, n) =>
    versions.findIndex((one) => isOf(one, n)),
  )
  const at = (n: number) => order[n] ?? -1
  for (let span = 1; span < known; span++)
    for (let period = span; period >= 1; period--) {
      const start = span - period
      let agrees = true
      for (let n = start + 1; n + period <= known; n++) if (at(n) !== at(n + period)) agrees = false
      if (agrees && start + period < known)
        return versions[at(start + 1 + ((time - start - 1) % period))]
    }
  return versions[(time - 1) % versions.length]
}
