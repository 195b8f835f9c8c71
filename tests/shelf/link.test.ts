import { expect, test } from 'vitest'
import { newPattern } from '../../src/pattern/pattern'
import { fromLink, linkLimits, linkOf } from '../../src/shelf/link'
import { writeFile } from '../../src/shelf/format'
import { starterCharts } from '../../src/shelf/seeds'

const hashOf = (link: string) => link.slice(link.indexOf('#'))
const fold = async (text: string) => {
  const stream = new Blob([text]).stream().pipeThrough(new CompressionStream('deflate-raw'))
  const bytes = Buffer.from(await new Response(stream).arrayBuffer())
  return `#piece=${bytes.toString('base64url')}`
}
const messageOf = async (hash: string) => {
  const read = await fromLink(hash)
  return read && !read.ok ? read.message : null
}

test.each(starterCharts.map(({ id, pattern }) => [id, pattern()] as const))(
  'a link carries %s whole',
  async (_, pattern) => {
    const made = await linkOf(pattern, 'https://example.org/app/#old')
    if (!made.ok) throw new Error(made.message)
    expect(made.link).toMatch(/^https:\/\/example\.org\/app\/#piece=[\w-]+$/)
    const read = await fromLink(hashOf(made.link))
    expect(read?.ok && writeFile(read.pattern)).toBe(writeFile(pattern))
  },
)

test('a piece that is too large for a link is refused with the numbers', async () => {
  // Digits that no packing makes shorter.
  const digits = (index: number) => Math.floor((Math.sin(index) + 1) * 1e8).toString(36)
  const notes = Array.from({ length: 6000 }, (_, index) => digits(index))
  const made = await linkOf({ ...newPattern(), notes: notes.join('') }, 'https://example.org/')
  expect(made.ok ? '' : made.message).toMatch(
    /it would have \d{5} characters, and links of up to 16000/,
  )
})

test('another address is no link; a spoilt one is refused in words', async () => {
  expect(await fromLink('')).toBeNull()
  expect(await fromLink('#top')).toBeNull()
  const cut = 'This link is not whole: it may have been cut when it was copied.'
  for (const hash of ['#piece=%%%', '#piece=abc', `${(await fold('{"a":1}')).slice(0, -3)}`])
    expect(await messageOf(hash)).toBe(cut)
  expect(await messageOf(await fold('{"a":1}'))).not.toBeNull()
  expect(await messageOf(`#piece=${'a'.repeat(linkLimits.characters + 1)}`)).toBe(
    'This link has 16001 characters; Pegwright opens links of up to 16000.',
  )
})

test('what unfolds to more than it may is not unfolded', async () => {
  const bomb = await fold(' '.repeat(8 * 1024 * 1024))
  expect(bomb.length).toBeLessThan(linkLimits.characters)
  expect(await messageOf(bomb)).toBe(
    'The piece in this link is larger than 512 kB; send it as a file.',
  )
})
