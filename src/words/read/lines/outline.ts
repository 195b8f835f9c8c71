import type { Section, TextRange } from '../reading'
import type { Head } from '../nodes'
import { headStarts, readHead } from './heads'
import { namesCalled, readOrder, type Order } from './orders'
import { sizeLabel, sizesInHead, type SizeLabel } from './onlySizes'
import { sectionKind, type SectionKind } from './sections'

/** A line as it stands, whatever stands around it. */
export interface LineShape {
  readonly blank: boolean
  readonly head: Head | null
  /** It begins with the sizes that it is for; the head stands behind them. */
  readonly label: SizeLabel | null
  /** Offsets of further heads in the line. */
  readonly heads: readonly number[]
  /** A section that the line is known to begin. */
  readonly section: SectionKind | null
  /** Could be the title of a section that is not known by name. */
  readonly title: boolean
  /** The words go on in the next line. */
  readonly unfinished: boolean
  /** The words go on from the line before. */
  readonly goesOn: boolean
  /** It says what becomes of rows, in a whole piece. */
  readonly order: Order | null
  /** It explains a term: "tw2R = ...", "k: knit". */
  readonly explains: boolean
}

/** The words of one row, or of several that are alike, or of one reference. */
export interface Statement {
  readonly head: Head | null
  /** The whole of it, and the words after the head. */
  readonly range: TextRange
  readonly from: number
  readonly text: string
  readonly section: SectionKind
  /** The sizes that it is only for; null: all of them. */
  readonly only: string | null
  readonly order: Order | null
}

export interface Outline {
  readonly statements: readonly Statement[]
  readonly sections: readonly Section[]
  readonly titles: readonly TextRange[]
}

const referenceStart = /^\s*(?:rep|repeat|as|like|cont|next|cast|bind|knit|purl)\b/i

/** A line that begins with a stitch is a row by itself, if the one before it is finished. */
const stitchStart =
  /^\s*(?:(?:k|p|sl|ew|uw|fk|tk)\s?\d|garter|seed|moss|stockinette|stocking|rib\b|work\s+(?:in|\d|even))/

export function shapeOf(line: string): LineShape {
  const text = line.trim()
  const label = sizeLabel(line)
  const labelled = label?.length ?? 0
  const rest = label ? line.slice(labelled) : line
  const head = readHead(rest)
  const opened = count(text, /[([]/g) > count(text, /[)\]]/g)
  const starred = count(text, /\*/g) === 1 && !/\brep|\buntil\b/i.test(text)
  return {
    blank: text === '',
    head,
    label,
    heads: headStarts(rest).map((start) => start + labelled),
    section: head || label ? null : sectionKind(text),
    title: !head && !label && text.length <= 60 && !/[.;,)\]]$/.test(text) && !/[*[\]]/.test(text),
    unfinished: /[,;*&-]$/.test(text) || opened || starred,
    goesOn:
      /^\s*(?:[a-z]|\(\s*\d|\[\s*\d|\d+\s*(?:sts?|stitches)\b|rep(?:eat)? from)/.test(line) &&
      !referenceStart.test(line) &&
      !stitchStart.test(line),
    order: head || label ? null : readOrder(line),
    explains: /^\s*[^=:\s][^=:]{0,30}(?:=|:\s)/.test(line),
  }
}

const count = (text: string, pattern: RegExp): number => text.match(pattern)?.length ?? 0

/** Part a text into statements and sections. `shape` may remember the shapes of lines. */
export function outline(text: string, shape: (line: string) => LineShape): Outline {
  const statements: Statement[] = []
  const sections: { title: string; from: number }[] = []
  const titles: TextRange[] = []
  const called = namesCalled(text)
  let section: SectionKind = 'open'
  /** The kind that its heading tells. */
  let kind: SectionKind = 'open'
  let open: (Omit<Statement, 'range' | 'text'> & { to: number }) | null = null
  /** A label of sizes by itself is for the lines below it, up to an empty one. */
  let only: string | null = null
  let unfinished = false
  let afterBlank = true

  const close = () => {
    if (open) {
      const { head, from: start, to, section, order } = open
      const from = start + (head?.range.to ?? 0)
      const only = sizesInHead(text.slice(start, from)) ?? open.only
      const range = { from: start, to }
      statements.push({ head, range, from, text: text.slice(from, to), section, only, order })
    }
    open = null
  }

  for (let from = 0; from <= text.length;) {
    const newline = text.indexOf('\n', from)
    const to = newline < 0 ? text.length : newline
    const line = text.slice(from, to)
    const here = shape(line)
    const { blank, head, label, heads, section: named, title, order } = here
    const begins = from + (label?.length ?? 0)
    if (blank) {
      close()
      only = null
      afterBlank = true
    } else if (order && isAlone(order, section, unfinished)) {
      close()
      // Ways to cast on and bind off stand below their line.
      if (order.do === 'work') section = 'work'
      else if (order.do === 'cast on' || order.do === 'bind off') section = kind
      open = { head: null, from, to, section, only, order }
      close()
      unfinished = false
      afterBlank = false
    } else if (
      named ||
      (afterBlank && called.has(line.trim())) ||
      (title && afterBlank && isTitle(line))
    ) {
      close()
      section = kind = named ?? 'work'
      sections.push({ title: line.trim().replace(/:$/, ''), from })
      titles.push({ from, to })
      only = null
      afterBlank = false
      unfinished = false
    } else if (label && begins === to) {
      close()
      only = label.said
      titles.push({ from, to })
      afterBlank = false
    } else {
      if (head || label) close()
      else if (open && (!(unfinished || here.goesOn) || (section === 'key' && here.explains)))
        close()
      if (label) titles.push({ from, to: begins })
      const sizes = label ? label.said : only
      open ??= { head, from: begins, to, section, only: sizes, order: null }
      for (const start of heads) {
        open.to = from + start
        close()
        const head = readHead(line.slice(start), true)
        open = { head, from: from + start, to, section, only: sizes, order: null }
      }
      open.to = to
      unfinished = here.unfinished
      afterBlank = false
    }
    if (newline < 0) break
    from = newline + 1
  }
  close()
  return {
    statements: withRowsAsWork(statements),
    titles,
    sections: sections.map(({ title, from }, index) => ({
      title,
      range: { from, to: sections[index + 1]?.from ?? text.length },
    })),
  }
}

/**
 * Numbered rows end a section that tells none, for many texts go on without a heading. Only among
 * abbreviations with instructions of their own after them do they explain a stitch.
 */
function withRowsAsWork(statements: readonly Statement[]): readonly Statement[] {
  const tellsRow = ({ head }: Statement): boolean => (head?.numbers.length ?? 0) > 0
  const lastWork = statements.findLastIndex((one) => one.section === 'work' && one.head !== null)
  let ended: SectionKind | null = null
  return statements.map((one, index) => {
    if (one.section !== ended) ended = null
    const isApart = one.section === 'prose' || (one.section === 'key' && lastWork < index)
    if (isApart && tellsRow(one)) ended = one.section
    return ended === null ? one : { ...one, section: 'work' as const }
  })
}

/** Among notes, or in the middle of a sentence, only what cannot be anything else is an order. */
const isAlone = (order: Order, section: SectionKind, unfinished: boolean): boolean =>
  order.do !== 'work' || order.strict || (!unfinished && (section === 'work' || section === 'open'))

/** A line by itself after an empty one, in which no stitch is worked, names a section. */
const isTitle = (line: string): boolean =>
  !/\d/.test(line) &&
  !/\b(?:knit|purl|k|p|rep|repeat|cast|bind|join|slip|work|turn|all|around|to)\b/i.test(line) &&
  line.trim().split(/\s+/).length <= 6
