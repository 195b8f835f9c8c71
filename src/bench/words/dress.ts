import { bisector } from 'd3-array'
import { foldService } from '@codemirror/language'
import {
  StateEffect,
  StateField,
  type EditorState,
  type Extension,
  type Range,
} from '@codemirror/state'
import {
  Decoration,
  EditorView,
  GutterMarker,
  ViewPlugin,
  gutter,
  type DecorationSet,
  type ViewUpdate,
} from '@codemirror/view'
import { severities, type Finding, type Severity } from '../../pattern/finding'
import type { Section, Token, TokenKind } from '../../words/read/reading'
import { findingShapes } from '../../drawing/marks'
import type { Lit } from '../../words/places'

/** What the text is dressed with: all of it comes from the reading, none from the editor. */
export interface Dress {
  readonly tokens: readonly Token[]
  readonly sections: readonly Section[]
  readonly findings: readonly Finding[]
}

export const putOn = StateEffect.define<Dress>()
export const light = StateEffect.define<Lit | null>()

const bare: Dress = { tokens: [], sections: [], findings: [] }

/** Offsets hold for the text as it was read; until it is read again they are not moved along. */
export const dress = StateField.define<Dress>({
  create: () => bare,
  update: (value, { effects }) => effects.find((one) => one.is(putOn))?.value ?? value,
})

const plain: ReadonlySet<TokenKind> = new Set(['word', 'punctuation'])
const marks = new Map<TokenKind, Decoration>()
const markOf = (kind: TokenKind): Decoration => {
  let mark = marks.get(kind)
  if (!mark) marks.set(kind, (mark = Decoration.mark({ class: `token-${kind}` })))
  return mark
}

const byEnd = bisector(({ range }: Token) => range.to)

function colour({ state, visibleRanges }: EditorView): DecorationSet {
  const { tokens } = state.field(dress)
  const list: Range<Decoration>[] = []
  for (const visible of visibleRanges)
    for (let index = byEnd.right(tokens, visible.from); index < tokens.length; index++) {
      const { kind, range } = tokens[index] as Token
      if (range.from >= visible.to) break
      if (range.to > state.doc.length || range.from >= range.to || plain.has(kind)) continue
      list.push(markOf(kind).range(range.from, range.to))
    }
  return Decoration.set(list, true)
}

/** Tokens are drawn where they are seen; what was drawn moves with the text until it is read again. */
const colouring = ViewPlugin.fromClass(
  class {
    decorations: DecorationSet
    constructor(view: EditorView) {
      this.decorations = colour(view)
    }
    update(update: ViewUpdate) {
      const isRead = update.startState.field(dress) !== update.state.field(dress)
      if (isRead || (update.viewportChanged && !update.docChanged))
        this.decorations = colour(update.view)
      else this.decorations = this.decorations.map(update.changes)
    }
  },
  { decorations: ({ decorations }) => decorations },
)

const litLine = Decoration.line({ class: 'lit' })
const litStitch = Decoration.mark({ class: 'lit-stitch' })

const lighting = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(set, { state, changes, effects }) {
    const effect = effects.find((one) => one.is(light))
    return effect ? drawLit(state, effect.value) : set.map(changes)
  },
  provide: (field) => EditorView.decorations.from(field),
})

function drawLit({ doc }: EditorState, lit: Lit | null): DecorationSet {
  if (!lit || lit.line.to > doc.length) return Decoration.none
  const list: Range<Decoration>[] = []
  const last = doc.lineAt(lit.line.to).number
  for (let number = doc.lineAt(lit.line.from).number; number <= last; number++)
    list.push(litLine.range(doc.line(number).from))
  const { stitch } = lit
  if (stitch && stitch.from < stitch.to) list.push(litStitch.range(stitch.from, stitch.to))
  return Decoration.set(list, true)
}

const svg = 'http://www.w3.org/2000/svg'

class Mark extends GutterMarker {
  constructor(readonly severity: Severity) {
    super()
  }
  override eq(other: Mark): boolean {
    return other.severity === this.severity
  }
  override toDOM(): Node {
    const mark = document.createElementNS(svg, 'svg')
    mark.setAttribute('viewBox', '0 0 16 16')
    mark.setAttribute('class', `mark ${this.severity}`)
    const path = document.createElementNS(svg, 'path')
    path.setAttribute('d', findingShapes[this.severity])
    mark.append(path)
    return mark
  }
}

const markBySeverity = new Map(severities.map((severity) => [severity, new Mark(severity)]))

const startsIn = (
  { findings }: Dress,
  { from, to }: { readonly from: number; readonly to: number },
): Finding[] =>
  findings.filter(({ place: { text } }) => text !== null && text.from >= from && text.from <= to)

/** The worst finding of each line, in the margin. Pressing it goes there. */
const margin = gutter({
  class: 'margin',
  renderEmptyElements: false,
  lineMarker(view, line) {
    const found = startsIn(view.state.field(dress), line)
    const worst = severities.find((one) => found.some(({ severity }) => severity === one))
    return worst ? (markBySeverity.get(worst) ?? null) : null
  },
  lineMarkerChange: ({ startState, state }) => startState.field(dress) !== state.field(dress),
  initialSpacer: () => new Mark('hint'),
  domEventHandlers: {
    mousedown(view, line) {
      const range = startsIn(view.state.field(dress), line)[0]?.place.text
      if (!range) return false
      view.dispatch({ selection: { anchor: range.from, head: range.to }, scrollIntoView: true })
      view.focus()
      return true
    },
  },
})

/** A section folds behind its heading. */
const folding = foldService.of((state, from, to) => {
  const section = state
    .field(dress)
    .sections.find(({ range }) => range.from >= from && range.from <= to)
  const end = Math.min(section?.range.to ?? 0, state.doc.length)
  const text = state.sliceDoc(to, end).trimEnd()
  return text.length > 0 ? { from: to, to: to + text.length } : null
})

export const dressing: Extension = [dress, colouring, lighting, margin, folding]
