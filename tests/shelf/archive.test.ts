import { expect, test } from 'vitest'
import { newPattern } from '../../src/pattern/pattern'
import { archiveLimits, archiveOf, readArchive, type Archived } from '../../src/shelf/archive'
import { writeFile } from '../../src/shelf/format'

const text = (title: string) => writeFile({ ...newPattern(12, 4), title })
const piece = (title: string): Archived => ({
  ...{ id: title, title, date: '2030-01-01T12:00:00.000Z', stage: 'finished', removed: null },
  text: text(title),
  versions: [
    { date: '2029-12-31T12:00:00.000Z', name: 'First try', label: 'Paint', text: text('Before') },
  ],
})
const opened = (of: string, size = of.length) => ({ size, text: () => Promise.resolve(of) })
const messageOf = async (of: string, size?: number) => {
  const read = await readArchive(opened(of, size))
  return read.ok ? '' : read.message
}

test('all pieces with their versions come back as they were', async () => {
  const pieces = [piece('Gull cuff'), piece('Net panel')]
  const file = archiveOf(pieces, '2030-01-02T00:00:00.000Z')
  expect(file.name).toBe('my-pieces-2030-01-02.json')
  expect(await readArchive(opened(file.text))).toEqual({ ok: true, pieces, unread: 0 })
})

test('a piece that cannot be read is counted, and the others come back', async () => {
  const file = archiveOf([piece('Gull cuff'), piece('Net panel')], '2030-01-02')
  const spoilt = file.text.replace('"stage": "finished"', '"stage": "eaten"')
  expect(await readArchive(opened(spoilt))).toMatchObject({
    ...{ ok: true, unread: 1 },
    pieces: [{ title: 'Net panel' }],
  })
})

test('what is too large is refused with the numbers', async () => {
  expect(await messageOf('{}', archiveLimits.bytes + 1)).toBe(
    'This file has 65 MB; pieces are brought back from files of up to 64 MB.',
  )
  const many = JSON.stringify({ 'pegwright archive': 1, pieces: Array(1001).fill(0) })
  expect(await messageOf(many)).toBe(
    'This file has 1001 pieces; at most 1000 are brought back from one file.',
  )
})

test.each(['', '{', '[]', 'null', '{"pegwright archive":2,"pieces":[]}', text('Gull cuff')])(
  'what is no archive is refused: %.20s',
  async (of) => {
    expect(await messageOf(of)).toContain('This is no file of all pieces')
  },
)
