/**
 * Reads a sentence of the writer back, stitch by stitch, in the plainest way: what is written as a
 * repeat is written out. Shares nothing with src/words.
 */
import type { Terms } from '../../src/languages/terms'
import type { Stitch } from '../../src/stitches/stitch'
import { standardVocabulary } from '../../src/stitches/vocabulary'
import { termOf } from '../../src/languages/languages'

interface Reader {
  readonly text: string
  at: number
  readonly terms: Terms
}

/** The stitches of "k1, *p2, k2; rep from * to last st, k1." on so many loops, as ids. */
export function expandSentence(sentence: string, loops: number, terms: Terms): string[] {
  const text = sentence.replace(/^Pegs? [^:]*: /, '').replace(/; (German turn|wrap)[^;]*$/, '.')
  const whole = /^(knit|purl)\.$/i.exec(text)
  if (whole) {
    const id = whole[1]?.toLowerCase() === 'knit' ? 'k' : 'p'
    return Array.from({ length: loops }, () => id)
  }
  const [, head = '', block, last, tail = ''] =
    /^(?:(.*?), )?\*(.*); rep from \* to (?:end|last (?:(\d+) sts|st), (.*))\.$/.exec(text) ?? []
  if (block === undefined) return ids(expandList(text.slice(0, -1), terms))
  const before = head ? expandList(head, terms) : starred(text)
  const inside = expandList(block, terms)
  const after = tail ? expandList(tail, terms) : []
  if (takes(after) !== Number(last ?? (tail === '' ? 0 : 1)))
    throw new Error(`"to last ${last}" stands before ${takes(after)} loops: ${text}`)
  const times = (loops - takes(before) - takes(after)) / takes(inside)
  if (!Number.isInteger(times)) throw new Error(`${times} repeats of ${block} on ${loops}: ${text}`)
  const repeated = Array.from({ length: times }, () => inside).flat()
  return ids([...before, ...repeated, ...after])
}

function starred(text: string): Stitch[] {
  if (!text.startsWith('*')) throw new Error(`What stands before the asterisk in: ${text}`)
  return []
}

const ids = (stitches: readonly Stitch[]) => stitches.map(({ id }) => id)
const takes = (stitches: readonly Stitch[]) => stitches.reduce((sum, one) => sum + one.takes, 0)

function expandList(text: string, terms: Terms): Stitch[] {
  const reader = { text, at: 0, terms }
  const stitches = readList(reader)
  if (reader.at < text.length) throw new Error(`"${text.slice(reader.at)}" is left over: ${text}`)
  return stitches
}

function readList(reader: Reader): Stitch[] {
  const stitches: Stitch[] = []
  for (;;) {
    stitches.push(...readItem(reader))
    if (!reader.text.startsWith(', ', reader.at)) return stitches
    reader.at += 2
  }
}

function readItem(reader: Reader): Stitch[] {
  const { text } = reader
  const close = { '(': ')', '[': ']' }[text[reader.at] ?? '']
  if (!close) return readStitch(reader)
  reader.at++
  const inside = readList(reader)
  const [all, times, twice] = /^. (?:(\d+) times|(twice))/.exec(text.slice(reader.at)) ?? []
  if (!all?.startsWith(close)) throw new Error(`How often, at "${text.slice(reader.at)}"?`)
  reader.at += all.length
  return Array.from({ length: twice ? 2 : Number(times) }, () => inside).flat()
}

function readStitch(reader: Reader): Stitch[] {
  const word = /^[^,()[\]]+/.exec(reader.text.slice(reader.at))?.[0] ?? ''
  reader.at += word.length
  const named = standardVocabulary.stitches.filter(
    (stitch) => termOf(stitch, reader.terms).abbr === word,
  )
  const [, letters, count] = /^([a-z]+)(\d+)$/.exec(word) ?? []
  const counted = standardVocabulary.stitches.filter(
    (stitch) => termOf(stitch, reader.terms).abbr === letters,
  )
  const meanings = [
    ...named.map((stitch) => [stitch]),
    ...counted.map((stitch) => Array.from({ length: Number(count) }, () => stitch)),
  ]
  const [only, another] = meanings
  if (!only || another) throw new Error(`"${word}" has ${meanings.length} meanings.`)
  return only
}
