import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import * as abbreviations from './data/abbreviations'
import * as shortRows from './data/short-rows'
import * as standards from './data/standards'

const folder = new URL('data/', import.meta.url)
const examples: unknown = JSON.parse(readFileSync(new URL('worked-examples.json', folder), 'utf8'))
const data = { abbreviations, 'short-rows': shortRows, standards, 'worked-examples': { examples } }

/** A standard by its number, a body by its name, a book by its number in a library, or an address. */
const canBeLookedUp =
  /PG eBook \d+|\b(ISO|EN|JIS L|ANSI)\b[\w/ .]*\d|Craft Yarn Council|\b[\w-]+\.(com|org|no|net)\b/
const saysItHasNone = /^(common practice|from memory)$/

const isSourced = (source: unknown): boolean =>
  typeof source === 'string' && (canBeLookedUp.test(source) || saysItHasNone.test(source))

/** Where values stand without a source: the nearest thing around a value that has one speaks for it. */
function withoutSource(value: unknown, path: string): string[] {
  if (typeof value === 'function') return []
  if (typeof value !== 'object' || value === null) return [path]
  if ('source' in value) return isSourced(value.source) ? [] : [`${path}.source`]
  return Object.entries(value).flatMap(([key, one]) => withoutSource(one, `${path}/${key}`))
}

test('every value names a source that can be looked up, or says that it is from memory or common practice', () => {
  expect(withoutSource(data, 'data')).toEqual([])
})

test('every file of values is looked at', () => {
  const files = readdirSync(folder).map((file) => file.replace(/\.\w+$/, ''))
  expect(files.filter((file) => file !== 'sourced').sort()).toEqual(Object.keys(data).sort())
})

test('a value without a source is found, and so is a source that cannot be looked up', () => {
  expect(withoutSource({ a: [1, 2], b: { source: 'two loom pages', values: [3] } }, '')).toEqual([
    '/a/0',
    '/a/1',
    '/b.source',
  ])
  expect(isSourced('a published shoe table')).toBe(false)
  expect(isSourced('ISO 216')).toBe(true)
})
