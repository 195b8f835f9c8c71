/**
 * Reads the annotated text files in tests/words/read/cases: words, and below each line the rows
 * and remarks that must come of it. README.txt there says how to add a case.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { read } from '../../../src/words/read/read'
import type { Reading, ReadRow, ReadSettings, Remark } from '../../../src/words/read/reading'
import { readCells } from '../cases'

export interface Case {
  readonly file: string
  readonly name: string
  readonly settings: ReadSettings
  /** Each line of the words, with the notes below it. */
  readonly lines: readonly { readonly text: string; readonly notes: readonly string[] }[]
}

const folder = new URL('./cases/', import.meta.url)

export const readCases = (): Case[] =>
  readdirSync(folder)
    .filter((file) => file.endsWith('.txt') && file !== 'README.txt')
    .flatMap((file) => casesOf(file, readFileSync(new URL(file, folder), 'utf8')))

export const casesOf = (file: string, text: string): Case[] =>
  text
    .split(/^== */m)
    .slice(1)
    .map((part) => readCase(file, part))

export const usual: ReadSettings = {
  shape: 'ring',
  pegs: 24,
  direction: 'clockwise',
  knit: 'u-wrap',
  terms: 'us',
  size: 0,
  needles: false,
}

type Setting = (value: string) => Partial<ReadSettings>
const settings: Readonly<Record<string, Setting>> = {
  loom: (value) => ({
    shape: value.startsWith('bar') ? 'bar' : 'ring',
    pegs: Number(/\d+/.exec(value)?.[0]),
  }),
  size: (value) => ({ size: Number(value) - 1 }),
  needles: (value) => ({ needles: value === 'yes' }),
  terms: (value) => ({ terms: value === 'uk' ? 'uk' : 'us' }),
}

function readCase(file: string, part: string): Case {
  const [name = '', ...rest] = part.trimEnd().split('\n')
  let found = usual
  const lines: { text: string; notes: string[] }[] = []
  for (const line of rest) {
    const [, key = '', value = ''] = /^(\w+): *(.*)$/.exec(line) ?? []
    const setting = lines.length === 0 ? settings[key] : undefined
    if (line.startsWith('#')) continue
    if (setting) found = { ...found, ...setting(value) }
    else if (/^[>!]/.test(line)) {
      const last = lines.at(-1)
      if (!last) throw new Error(`${file}, case "${name}": "${line}" stands before any words.`)
      last.notes.push(line)
    } else lines.push({ text: line, notes: [] })
  }
  return { file, name: name.trim(), settings: found, lines }
}

/** What a case expects and what comes of it, note by note, in the same form. */
export function judge(one: Case): { expected: string[]; found: string[]; reading: Reading } {
  const reading = read(one.lines.map(({ text }) => text).join('\n'), one.settings)
  const expected: string[] = []
  const found: string[] = []
  let from = 0
  for (const { text, notes } of one.lines) {
    const to = from + text.length
    const here = ({ from: at }: { from: number }) => at >= from && at <= to
    const rows = reading.rows.filter(({ saidAt }) => here(saidAt))
    const remarks = reading.remarks.filter(({ range }) => here(range))
    expected.push(`  ${text}`, ...notes.flatMap(expandNote))
    found.push(`  ${text}`, ...rows.map(noteOfRow), ...remarksLike(remarks, notes))
    from = to + 1
  }
  return { expected, found, reading }
}

/** "> 1-3: k*24" stands for three rows that are alike. */
function expandNote(note: string): string[] {
  const [, from, to, rest = ''] = /^> (\d+)-(\d+)((?: |:).*)$/.exec(note) ?? []
  if (!from || !to) return [note.startsWith('>') ? rowNote(note) : note]
  return Array.from({ length: Number(to) - Number(from) + 1 }, (_, index) =>
    rowNote(`> ${Number(from) + index}${rest}`),
  )
}

/** The stitches of a note written out, whatever brackets it was written with. */
function rowNote(note: string): string {
  const [, head = '', stitches = '', count = ''] = /^(> [^:]*): *(.*?)( = \d+)?$/.exec(note) ?? []
  return `${head}: ${stitches === '' ? '' : readCells(stitches).filter(Boolean).join(' ')}${count}`
}

/** "> 5 pegs 20-1, German turn: k k k = 24" */
function noteOfRow(row: ReadRow): string {
  const pegs = row.run
    ? ` pegs ${row.goes === 'back' ? `${row.run.to + 1}-${row.run.from + 1}` : `${row.run.from + 1}-${row.run.to + 1}`}`
    : row.heading
      ? ` ${row.heading}`
      : ''
  const end = row.end === 'on' ? '' : `, ${row.end}`
  const count = row.after === row.before ? '' : ` = ${row.after}`
  return `> ${row.label}${pegs}${end}: ${row.stitches.map(({ stitch }) => stitch.id).join(' ')}${count}`
}

/** Remarks in the words of the notes where those fit: a note may quote just a part of a message. */
function remarksLike(remarks: readonly Remark[], notes: readonly string[]): string[] {
  const open = notes.filter((note) => note.startsWith('!'))
  return remarks.map(({ severity, rule, message }) => {
    const head = `! ${severity} ${rule}: `
    const index = open.findIndex(
      (note) => note.startsWith(head) && message.includes(note.slice(head.length)),
    )
    return index < 0 ? `${head}${message}` : (open.splice(index, 1)[0] ?? '')
  })
}

/** The compact form of a list of stitches, for people who add a case. */
export function compact(ids: readonly string[]): string {
  let best = runs(ids)
  for (let before = 0; before <= 8; before++)
    for (let after = 0; after <= 8; after++) {
      const inside = ids.slice(before, ids.length - after)
      const group = before + after < ids.length ? grouped(inside) : null
      if (!group) continue
      const parts = [runs(ids.slice(0, before)), group, runs(ids.slice(ids.length - after))]
      const text = parts
        .slice(0, after === 0 ? 2 : 3)
        .filter(Boolean)
        .join(', ')
      if (text.length < best.length) best = text
    }
  return best
}

/** "(k*2, p*2)*6" */
function grouped(ids: readonly string[]): string | null {
  for (let period = 2; period * 2 <= ids.length; period++)
    if (ids.length % period === 0 && ids.every((id, i) => id === ids[i % period])) {
      const inside = runs(ids.slice(0, period))
      return inside.includes(', ') ? `(${inside})*${ids.length / period}` : null
    }
  return null
}

function runs(ids: readonly string[]): string {
  const parts: string[] = []
  for (let i = 0; i < ids.length;) {
    let end = i
    while (end < ids.length && ids[end] === ids[i]) end++
    parts.push(end - i > 1 ? `${ids[i]}*${end - i}` : `${ids[i]}`)
    i = end
  }
  return parts.join(', ')
}

/** The notes that would hold for a case as it is read now. */
export function notesNow(one: Case): string[] {
  const { found } = judge({ ...one, lines: one.lines.map(({ text }) => ({ text, notes: [] })) })
  return found.map((line) => {
    const [, head, list = '', count = ''] = /^(> [^:]*: )(.*?)( = \d+)?$/.exec(line) ?? []
    if (!head) return line
    const ids = list.split(/ (?![LR]P*C\b|wyif)/).filter(Boolean)
    return `${head}${compact(ids)}${count}`
  })
}
