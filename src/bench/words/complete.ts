import type { Completion, CompletionContext, CompletionResult } from '@codemirror/autocomplete'
import type { LoomSetup } from '../../pattern/pattern'
import type { Terms } from '../../stitches/stitch'
import { vocabulary } from '../../stitches/vocabulary'

const stitches = new Map<Terms, readonly Completion[]>()

/** Each stitch by its abbreviation, with its name beside it. */
export function stitchCompletions(terms: Terms): readonly Completion[] {
  let list = stitches.get(terms)
  if (!list) {
    list = vocabulary.map((stitch) => ({ label: stitch[terms].abbr, detail: stitch[terms].name }))
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
    const word = context.matchBefore(/[\p{L}\d/]+$/u)
    if (!word ? !explicit : !explicit && !/\p{L}\S|\/\d/u.test(word.text)) return null
    return {
      from: word?.from ?? pos,
      options: [...stitchCompletions(terms)],
      validFor: /^[\p{L}\d/ ]*$/u,
    }
  }
