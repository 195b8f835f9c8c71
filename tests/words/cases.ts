/**
 * Reads the annotated text files in tests/words/cases: a chart, line by line, then the words that
 * must come out. README.txt there says how to add a case.
 */
import { withChart } from '../../src/pattern/edits/chart'
import { readdirSync, readFileSync } from 'node:fs'
import { directions, headings } from '../../src/loom/direction'
import { knits } from '../../src/loom/move'
import { crossings, rowEnds, transfers } from '../../src/loom/row'
import { newPattern, type Band, type Pattern, type Row } from '../../src/pattern/pattern'
import { findStitch } from '../../src/stitches/vocabulary'
import { termSets } from '../../src/languages/terms'
import { cellsFrom } from '../cells'

export interface Case {
  readonly name: string
  readonly file: string
  readonly pattern: Pattern
  readonly words: readonly string[]
}

const folder = new URL('./cases/', import.meta.url)

export const readCases = (): Case[] =>
  readdirSync(folder)
    .filter((file) => file.endsWith('.txt') && file !== 'README.txt')
    .flatMap((file) => readFile(file, readFileSync(new URL(file, folder), 'utf8')))

function readFile(file: string, text: string): Case[] {
  const parts = text.split(/^== */m).slice(1)
  return parts.map((part) => readCase(file, part))
}

function readCase(file: string, part: string): Case {
  const lines = part.split('\n').map((line) => line.trim())
  const name = lines[0] ?? ''
  const split = lines.indexOf('words:')
  if (split < 0) throw new Error(`${file}, case "${name}": there is no line "words:".`)
  const kept = (list: readonly string[]) => list.filter((line) => line && !line.startsWith('#'))
  const words = kept(lines.slice(split + 1))
  let pattern: Pattern = newPattern(36, 1)
  const rows: Row[] = []
  const bands: Band[] = []
  for (const line of kept(lines.slice(1, split))) {
    const [, key = '', value = ''] = /^([^:]*?) *: *(.*)$/.exec(line) ?? []
    const setting = settings[key]
    if (setting) pattern = setting(pattern, value)
    else if (key === 'band') bands.push(readBand(value))
    else if (/^row\b/.test(key)) rows.push(readRow(key, value))
    else throw new Error(`${file}, case "${name}": what is the line "${line}"?`)
  }
  const columns = rows[0]?.cells.length ?? 0
  for (const { cells } of rows)
    if (cells.length !== columns)
      throw new Error(`${file}, case "${name}": rows of ${columns} and ${cells.length} columns.`)
  pattern = withChart(pattern, { columns, rows, bands })
  return { name, file, pattern, words }
}

const oneOf = <T extends string>(list: readonly T[], value: string): T => {
  const found = list.find((one) => one === value)
  if (!found) throw new Error(`"${value}" is none of: ${list.join(', ')}.`)
  return found
}

const settings: Readonly<Record<string, (pattern: Pattern, value: string) => Pattern>> = {
  ring: (pattern, value) => ({
    ...pattern,
    loom: { ...pattern.loom, shape: 'ring', pegs: Number(value) },
  }),
  bar: (pattern, value) => ({
    ...pattern,
    loom: { ...pattern.loom, shape: 'bar', pegs: Number(value) },
  }),
  direction: (pattern, value) => ({
    ...pattern,
    loom: { ...pattern.loom, direction: oneOf(directions, value) },
  }),
  terms: (pattern, value) => ({
    ...pattern,
    style: { ...pattern.style, terms: oneOf(termSets, value) },
  }),
  knit: (pattern, value) => ({
    ...pattern,
    making: { ...pattern.making, knit: oneOf(knits, value) },
  }),
  crossing: (pattern, value) => ({
    ...pattern,
    making: { ...pattern.making, crossing: oneOf(crossings, value) },
  }),
  transfer: (pattern, value) => ({
    ...pattern,
    making: { ...pattern.making, transfer: oneOf(transfers, value) },
  }),
  repeat: (pattern, value) => {
    const [from = 1, to = 1] = value.split('-').map(Number)
    return withChart(pattern, { repeat: { from: from - 1, to: to - 1 } })
  },
}

function readBand(value: string): Band {
  const [, from, to, times] = /^(\d+)-(\d+) x (\d+)$/.exec(value) ?? []
  if (!times) throw new Error(`A band is written "1-4 x 3", not "${value}".`)
  return { from: Number(from) - 1, to: Number(to) - 1, times: Number(times) }
}

/** "row", "row pegs 11-30", "row pegs 11-30 back, German turn". */
function readRow(key: string, value: string): Row {
  const [, from, to] = /pegs (\d+)-(\d+)/.exec(key) ?? []
  const heading = headings.find((one) => new RegExp(`\\b${one}\\b`).test(key)) ?? null
  const end = rowEnds.find((one) => one !== 'on' && key.endsWith(`, ${one}`)) ?? 'on'
  const run = from && to ? { from: Number(from) - 1, to: Number(to) - 1 } : null
  return { cells: cellsFrom(readCells(value)), run, heading, end }
}

/** "k*2, (p, 2/2 LC)*3": stitch ids in column order, with how often, and groups of them. */
export function readCells(text: string): string[] {
  let at = 0
  const skip = () => {
    while (text[at] === ' ') at++
  }
  const list = (): string[] => {
    const cells: string[] = []
    for (;;) {
      skip()
      let piece: string[]
      if (text[at] === '(') {
        at++
        piece = list()
        if (text[at] !== ')') throw new Error(`")" is missing in "${text}".`)
        at++
      } else {
        const id = (/^[^,*()]+/.exec(text.slice(at))?.[0] ?? '').trimEnd()
        const stitch = findStitch(id)
        if (!stitch) throw new Error(`There is no stitch "${id}" (in "${text}").`)
        at += id.length
        piece = [id, ...Array.from({ length: stitch.width - 1 }, () => '')]
      }
      skip()
      const times = /^\*(\d+)/.exec(text.slice(at))
      at += times?.[0].length ?? 0
      for (let n = 0; n < Number(times?.[1] ?? 1); n++) cells.push(...piece)
      skip()
      if (text[at] !== ',') return cells
      at++
    }
  }
  const cells = list()
  if (at < text.length) throw new Error(`"${text.slice(at)}" is left over in "${text}".`)
  return cells
}
