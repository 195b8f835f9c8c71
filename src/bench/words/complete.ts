import type { Completion, CompletionContext, CompletionResult } from '@codemirror/autocomplete'
import type { LoomSetup } from '../../pattern/pattern'
import type { Terms } from '../../languages/terms'
import { standardVocabulary } from '../../stitches/vocabulary'
import type { TextRange } from '../../words/read/reading'
import { termOf } from '../../languages/languages'

const stitches = new Map<Terms, readonly Completion[]>()

/** Each stitch by its abbreviation, with its name beside it. */
function stitchCompletions(terms: Terms): readonly Completion[] {
  let list = stitches.get(terms)
  if (!list) {
    list = standardVocabulary.stitches.map((stitch) => ({
      label: termOf(stitch, terms).abbr,
      detail: termOf(stitch, terms).name,
    }))
    stitches.set(terms, list)
  }
  return list
}

const head = /^\s*(?:rnds?|rounds?|rows?)\s*(?:\d+\s*(?:-|–|to)\s*)?(\d+)/i

/** "Rnd 5: " after the last numbered line above. */
export function nextHead(above: readonly string[], shape: LoomSetup['shape']): string {
  const last = above.findLast((line) => head.test(line))
  const number = Number(head.exec(last ?? '')?.[1] ?? 0) + 1
  const word = /^\s*(rnd|round|row)/i.exec(last ?? '')?.[1] ?? (shape === 'ring' ? 'Rnd' : 'Row')
  return `${word} ${number}: `
}

export interface About {
  readonly terms: Terms
  readonly shape: LoomSetup['shape']
}

/**
 * From where to where the stitch at the caret is written: its whole name, blanks and all ("2/2 LC"),
 * of a cross with the letters behind the caret; else the word before it. null: there is none.
 */
function stitchAt(before: string, after: string, terms: Terms): TextRange | null {
  const names = stitchCompletions(terms).map(({ label }) => label.toLowerCase())
  const begun = [...before.matchAll(/(?<![\p{L}\d/])[\p{L}\d/]+/gu)].map(({ index }) => index)
  const last = begun.at(-1)
  if (last === undefined || !/[\p{L}\d/]$/u.test(before)) return null
  // A name has three words at most.
  const from = begun
    .slice(-3)
    .find((start) => names.some((name) => name.startsWith(before.slice(start).toLowerCase())))
  const start = from ?? last
  const isCross = before.slice(start).includes('/')
  const behind = isCross ? (/^[\p{L}\d/]*/u.exec(after)?.[0].length ?? 0) : 0
  return { from: start, to: before.length + behind }
}

/** What can be written at the caret: the next head at the start of a line, or a stitch. */
export const complete =
  (about: () => About) =>
  (context: CompletionContext): CompletionResult | null => {
    const { state, pos, explicit } = context
    const { terms, shape } = about()
    const line = state.doc.lineAt(pos)
    const before = state.sliceDoc(line.from, pos)
    if (/^\s*\p{L}*$/u.test(before) && (explicit || before.trim() !== '')) {
      const above = state.sliceDoc(0, Math.max(0, line.from - 1)).split('\n')
      const label = nextHead(above, shape)
      return {
        from: line.from,
        options: [{ label, detail: 'next' }],
        filter: !(explicit && before.trim() === ''),
      }
    }
    const word = stitchAt(before, state.sliceDoc(pos, line.to), terms)
    const written = word ? before.slice(word.from) : ''
    if (!explicit && !/\p{L}\S|\/\d/u.test(written)) return null
    return {
      from: line.from + (word?.from ?? before.length),
      to: line.from + (word?.to ?? before.length),
      options: [...stitchCompletions(terms)],
      validFor: /^[\p{L}\d/ ]*$/u,
    }
  }
