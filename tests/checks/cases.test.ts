import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { checkAfresh } from '../../src/checks/check'
import type { Finding } from '../../src/pattern/finding'
import { rules } from '../../src/checks/rules'
import { changed, readCases, type Expected, type Words } from './readCase'

const folder = new URL('cases/', import.meta.url)
const files = readdirSync(folder).filter((name) => name.endsWith('.txt') && name !== 'README.txt')
const all = files.flatMap((file) =>
  readCases(readFileSync(new URL(file, folder), 'utf8')).map((found) => ({ file, ...found })),
)

const firstOf = ({ rows, pegs }: Finding['place']) => ({
  row: rows[0] ?? null,
  pegs: pegs[0] ?? null,
})
/** What can be compared: a finding's place in words, without its message. */
const placeOf = ({ severity, rule, ...rest }: Expected | Finding): string => {
  const { row, pegs } = 'place' in rest ? firstOf(rest.place) : rest
  const at = row === null ? 'chart' : `row ${row + 1}`
  return `${severity} ${rule} ${at}${pegs ? ` pegs ${pegs.from + 1}-${pegs.to + 1}` : ''}`
}

function holds(said: string | undefined, { text, whole }: Words): void {
  if (whole) expect(said).toBe(text)
  else expect(said).toContain(text)
}

describe.each(files)('%s', (file) => {
  it.each(all.filter((one) => one.file === file))('$name', ({ pattern, expected }) => {
    const { findings } = checkAfresh(pattern)
    expect(findings.map(placeOf).sort()).toEqual(expected.map(placeOf).sort())
    for (const wanted of expected) {
      const found = findings.find((finding) => placeOf(finding) === placeOf(wanted))
      holds(found?.message, wanted.message)
      holds(found?.advice, wanted.advice)
      const labels = found?.fixes.map(({ label }) => label) ?? []
      if (wanted.fixes.some(({ whole }) => whole))
        expect(labels).toEqual(wanted.fixes.map(({ text }) => text))
      for (const { text, whole, leaves } of wanted.fixes) {
        const one = found?.fixes.find(({ label }) =>
          whole ? label === text : label.includes(text),
        )
        expect(one, `${text} in ${labels.join('; ')}`).toBeDefined()
        if (one && leaves !== '') expect(changed(pattern, one.edit(pattern)), text).toBe(leaves)
      }
    }
  })
})

it('has a case for every rule', () => {
  const seen = new Set(all.flatMap(({ expected }) => expected.map(({ rule }) => rule)))
  const ofChart = rules.filter(({ scope }) => scope !== 'piece').map(({ id }) => id)
  expect(ofChart.filter((id) => !seen.has(id))).toEqual([])
})

it('has at least sixty cases, a third of them without findings', () => {
  expect(all.length).toBeGreaterThanOrEqual(60)
  expect(all.filter(({ expected }) => expected.length === 0).length * 3).toBeGreaterThanOrEqual(
    all.length,
  )
})
