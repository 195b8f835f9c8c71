import { CompletionContext } from '@codemirror/autocomplete'
import { EditorState } from '@codemirror/state'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { complete, nextHead } from '../../../src/bench/words/complete'
import { nextPlace } from '../../../src/bench/words/findings'
import type { Finding } from '../../../src/pattern/finding'
import type { TextRange } from '../../../src/words/read/reading'
import { swap } from '../../../src/words/swap'

test('a swap makes one text of the other', () => {
  const texts = fc.array(fc.constantFrom('k', 'p', '\n', '2', '🧶')).map((list) => list.join(''))
  fc.assert(
    fc.property(texts, texts, (before, after) => {
      const change = swap(before, after)
      if (!change) expect(before).toBe(after)
      else
        expect(before.slice(0, change.from) + change.insert + before.slice(change.to)).toBe(after)
    }),
  )
  expect(swap('Rnd 1: k4.', 'Rnd 1: k2, p2.')).toEqual({ from: 8, to: 9, insert: '2, p2' })
})

describe('completion', () => {
  const offered = (text: string, explicit = false) => {
    const state = EditorState.create({ doc: text })
    const about = () => ({ terms: 'us', shape: 'ring' }) as const
    return complete(about)(new CompletionContext(state, text.length, explicit))
  }
  const labels = (text: string, explicit = false) =>
    offered(text, explicit)?.options.map(({ label }) => label) ?? []

  test('a new line is offered its head, with the next number', () => {
    expect(labels('Rnd 3: Knit.\n', true)).toEqual(['Rnd 4: '])
    expect(labels('Rnds 3-6: Knit.\nR')).toEqual(['Rnd 7: '])
    expect(nextHead(['Round 2: Knit', 'A remark'], 'ring')).toBe('Round 3: ')
    expect(nextHead([], 'bar')).toBe('Row 1: ')
  })

  test('a stitch is offered by its abbreviation, with its name', () => {
    const result = offered('Rnd 1: k2, k2')
    expect(result?.from).toBe('Rnd 1: k2, '.length)
    expect(result?.options).toContainEqual({ label: 'k2tog', detail: 'knit two together' })
  })

  /** What a choice replaces, with the caret at the bar. */
  const replaced = (marked: string, explicit = false): string => {
    const caret = marked.indexOf('|')
    const text = marked.replace('|', '')
    const state = EditorState.create({ doc: text })
    const about = () => ({ terms: 'us', shape: 'ring' }) as const
    const result = complete(about)(new CompletionContext(state, caret, explicit))
    return result ? text.slice(result.from, result.to ?? caret) : '(nothing offered)'
  }
  test('the whole name of a stitch is replaced, with the blanks in it', () => {
    expect(replaced('Rnd 1: k2, 2/2 R|')).toBe('2/2 R')
    expect(replaced('Rnd 1: k2, 2/2 R|C, k2')).toBe('2/2 RC')
    expect(replaced('Rnd 1: k2, 2/2 R|LC, k2')).toBe('2/2 RLC')
    expect(replaced('Rnd 1: k2, 2/2 RC|, k2')).toBe('2/2 RC')
    expect(replaced('Rnd 1: k2, 2/2|')).toBe('2/2')
    expect(replaced('Rnd 1: *purled 2/2 L|; rep from *')).toBe('purled 2/2 L')
    expect(replaced('Rnd 1: sl wy|')).toBe('sl wy')
    expect(replaced('Rnd 1: k4, p2|, k2', true)).toBe('p2')
    expect(replaced('Rnd 1: k4, |k2', true)).toBe('')
  })

  test('nothing comes up over a number, a mark or a single letter', () => {
    for (const text of ['Rnd 1: ', 'Rnd 1: k', 'Rnd 1: k2, ', 'Rnd 1: *', 'Rnd 12'])
      expect(labels(text)).toEqual([])
  })
})

test('findings are gone through in order, round the ends, both ways', () => {
  const at = (from: number, to: number) => ({ place: { text: { from, to } } }) as Finding
  const findings = [at(2, 5), at(2, 9), at(20, 24)]
  const tour = (step: 1 | -1) => {
    let caret = { from: 0, to: 0 }
    return [1, 2, 3, 4].map(() => {
      caret = nextPlace(findings, caret, step) ?? caret
      return `${caret.from}-${caret.to}`
    })
  }
  expect(tour(1)).toEqual(['2-5', '2-9', '20-24', '2-5'])
  expect(tour(-1)).toEqual(['20-24', '2-9', '2-5', '20-24'])
  expect(nextPlace([], { from: 0, to: 0 }, 1)).toBe(null)
})

test('from a caret that is at no finding the errors come first, then all in order', () => {
  const at = (from: number, severity: Finding['severity']) =>
    ({ place: { text: { from, to: from + 2 } }, severity }) as Finding
  const findings = [at(0, 'warning'), at(10, 'hint'), at(20, 'error'), at(30, 'warning')]
  const next = (caret: TextRange, step: 1 | -1) => nextPlace(findings, caret, step)?.from
  expect(next({ from: 5, to: 5 }, 1)).toBe(20)
  expect(next({ from: 25, to: 25 }, 1)).toBe(20)
  expect(next({ from: 20, to: 22 }, 1)).toBe(30)
  expect(next({ from: 30, to: 32 }, 1)).toBe(0)
  expect(next({ from: 20, to: 22 }, -1)).toBe(10)
})
