import { autocompletion } from '@codemirror/autocomplete'
import { standardKeymap } from '@codemirror/commands'
import { codeFolding, foldGutter, foldKeymap } from '@codemirror/language'
import { linter, setDiagnostics, type Diagnostic } from '@codemirror/lint'
import { Annotation, Compartment, EditorState, Text, type Extension } from '@codemirror/state'
import { EditorView, keymap, type ViewUpdate } from '@codemirror/view'
import { limits } from '../../pattern/pattern'
import type { TextRange } from '../../words/read/reading'
import { followsTheFirst, type Bench } from '../state/bench.svelte'
import { complete } from './complete'
import { dressing, light, putOn, type Dress } from './dress'
import type { Finding } from '../../pattern/finding'
import { nextPlace } from './findings'
import { look } from './look'
import type { Lit } from '../../words/places'
import { swap } from '../../words/swap'

/** What the editor tells and asks. */
export interface Hooks {
  readonly bench: Bench
  /** Take the focus to the fixes of what stands at the caret. */
  readonly openFixes: () => void
  readonly mend: (finding: Finding, label: string) => void
}

/** The change comes from the bench, not from the hands. */
const fromBench = Annotation.define<true>()

/**
 * The text of the words. It holds nothing of its own but caret and folds: text, colours, findings
 * and light are given to it, and undo is the bench's. It lives behind a shadow root, where styles
 * are constructed; the page's policy allows no written ones.
 */
export class WordsEditor {
  readonly #view: EditorView
  readonly #folds = new Compartment()
  readonly #mend: Hooks['mend']
  #hasFolds = false
  #lit: Lit | null = null

  constructor(host: HTMLElement, text: string, hooks: Hooks) {
    this.#mend = hooks.mend
    const root = host.shadowRoot ?? host.attachShadow({ mode: 'open' })
    this.#view = new EditorView({
      root,
      parent: root,
      state: EditorState.create({
        doc: Text.of(text.split('\n')),
        extensions: [asItIs, dressing, look, this.#folds.of([]), behaviour(hooks)],
      }),
    })
  }

  /** Show another text; caret and folds stay where they can. */
  show(text: string): void {
    const { state } = this.#view
    const change = swap(state.doc.toString(), text)
    if (!change) return
    const anchor = change.from + change.insert.length
    this.#view.dispatch({
      changes: change,
      // Where something was taken back, there the caret goes on.
      ...(this.hasFocus ? { selection: { anchor }, scrollIntoView: true } : {}),
      annotations: fromBench.of(true),
    })
  }

  dress(dress: Dress): void {
    const { state } = this.#view
    const diagnostics = dress.findings.flatMap((finding) =>
      diagnosticOf(finding, state, this.#mend),
    )
    this.#view.dispatch({ effects: putOn.of(dress) }, setDiagnostics(state, diagnostics))
    const hasFolds = dress.sections.length > 0
    if (hasFolds === this.#hasFolds) return
    this.#hasFolds = hasFolds
    this.#view.dispatch({ effects: this.#folds.reconfigure(hasFolds ? folds : []) })
  }

  /** Light the current place. Unless the caret is at work here, it goes there and is seen. */
  light(lit: Lit | null): void {
    const last = this.#lit
    this.#lit = lit
    const place = lit?.stitch ?? lit?.line
    const before = last?.stitch ?? last?.line
    const moves =
      place && !this.hasFocus && (place.from !== before?.from || lit?.line.to !== last?.line.to)
    this.#view.dispatch({
      effects: [
        light.of(lit),
        ...(moves ? [EditorView.scrollIntoView(place.from, { y: 'nearest', yMargin: 24 })] : []),
      ],
      ...(moves ? { selection: { anchor: place.from } } : {}),
      annotations: fromBench.of(true),
    })
  }

  /** Put the caret on a stretch of the text and have it seen; the place of the bench stays. */
  showAt({ from, to }: TextRange): void {
    if (to > this.#view.state.doc.length) return
    this.#view.dispatch({
      selection: { anchor: from, head: to },
      effects: EditorView.scrollIntoView(from, { y: 'nearest', yMargin: 24 }),
      annotations: fromBench.of(true),
    })
  }

  /** See to it that the caret is seen, after the editor has changed its size. */
  keepInSight(): void {
    if (!this.hasFocus) return
    const { head } = this.#view.state.selection.main
    this.#view.dispatch({ effects: EditorView.scrollIntoView(head, { yMargin: 24 }) })
  }

  get hasFocus(): boolean {
    return this.#view.hasFocus
  }

  focus(): void {
    this.#view.focus()
  }

  destroy(): void {
    this.#view.destroy()
  }
}

/** Only line feeds part lines; all other characters of the file are kept. */
const asItIs = EditorState.lineSeparator.of('\n')

const folds: Extension = [
  codeFolding({ placeholderText: '…' }),
  foldGutter({
    openText: '▾',
    closedText: '▸',
    // The focus stays in the text, so that the next key works there.
    domEventHandlers: {
      mousedown: (_view, _line, event) => {
        event.preventDefault()
        return true
      },
    },
  }),
  keymap.of(foldKeymap),
]

const length = ({ most }: { readonly most: number }, { bench }: Hooks): Extension =>
  EditorState.changeFilter.of((transaction) => {
    if (!transaction.docChanged || transaction.annotation(fromBench)) return true
    const { length } = transaction.newDoc
    if (length <= most || length < transaction.startState.doc.length) return true
    bench.say(`Words hold up to ${most} characters; with this they would have ${length}.`)
    return false
  })

/** Words that are not to be changed stay as they are, and say why. */
const closed = ({ bench }: Hooks): Extension =>
  EditorState.changeFilter.of((transaction) => {
    const isByHand = transaction.docChanged && !transaction.annotation(fromBench)
    if (!isByHand || !bench.isSecond) return true
    bench.say(followsTheFirst)
    return false
  })

function behaviour(hooks: Hooks): Extension {
  const { bench } = hooks
  const go = (step: 1 | -1) => (view: EditorView) => {
    const place = nextPlace(bench.wording.findings, bench.wording.caret, step)
    if (place)
      view.dispatch({
        selection: { anchor: place.from, head: place.to },
        scrollIntoView: true,
      })
    else bench.say('The words have no findings.')
    return true
  }
  const openFixes = () => {
    hooks.openFixes()
    return true
  }
  return [
    EditorView.lineWrapping,
    EditorView.contentAttributes.of({
      'aria-label': 'Words',
      tabindex: '0',
      autocapitalize: 'off',
      autocorrect: 'off',
      spellcheck: 'false',
    }),
    EditorView.clipboardInputFilter.of((text) => text.replace(/\r\n?/g, '\n')),
    autocompletion({
      override: [
        complete(() => ({
          terms: bench.pattern.style.terms,
          shape: bench.pattern.loom.shape,
        })),
      ],
      selectOnOpen: false,
      interactionDelay: 0,
      icons: false,
    }),
    keymap.of([
      { key: 'F8', run: go(1), shift: go(-1) },
      { key: 'Alt-Enter', run: openFixes },
      { key: 'Mod-.', run: openFixes },
      ...standardKeymap,
    ]),
    EditorView.domEventHandlers({
      beforeinput: ({ inputType }) => {
        if (inputType === 'historyUndo') bench.undo()
        else if (inputType === 'historyRedo') bench.redo()
        else return false
        return true
      },
    }),
    // What stands at the caret is told below the text: over it, it would only cover the next lines.
    linter(null, {
      tooltipFilter: (diagnostics) => {
        const told = bench.wording.atCaret
        return diagnostics.filter(
          ({ from, message }) =>
            !told.some((one) => one.place.text?.from === from && one.message === message),
        )
      },
    }),
    length(limits.words, hooks),
    closed(hooks),
    EditorView.updateListener.of((update) => tell(update, hooks)),
  ]
}

/** What the hands did goes to the bench; the text first, so that the caret is read in it. */
function tell(update: ViewUpdate, { bench: { wording } }: Hooks): void {
  const { docChanged, selectionSet, transactions, state } = update
  if (!docChanged && !selectionSet) return
  const byHand = transactions.some((one) => !one.annotation(fromBench))
  if (byHand && docChanged) wording.type(state.doc.toString(), performance.now())
  else wording.endTyping()
  const { from, to } = state.selection.main
  wording.moveCaret({ from, to }, byHand)
}

function diagnosticOf(finding: Finding, { doc }: EditorState, mend: Hooks['mend']): Diagnostic[] {
  const { place, severity, message } = finding
  if (!place.text || place.text.to > doc.length) return []
  return [{ ...place.text, severity, message, renderMessage: () => inWords(finding, mend) }]
}

/** Message, advice and fixes, made when they are looked at. */
function inWords(finding: Finding, mend: Hooks['mend']): Node {
  const box = document.createElement('div')
  for (const text of [finding.message, finding.advice]) {
    const line = document.createElement('div')
    line.textContent = text
    box.append(line)
  }
  for (const { label } of finding.fixes) {
    const button = document.createElement('button')
    button.type = 'button'
    button.className = 'cm-diagnosticAction'
    button.textContent = label
    button.addEventListener('click', () => mend(finding, label))
    box.append(button)
  }
  return box
}
