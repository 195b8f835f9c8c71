/** A small piece carried in the address of the app: whoever opens the link gets a copy, and no server sees it. */
import { readFile, writeFile, type ReadResult } from './format'
import type { Pattern } from '../pattern/pattern'

/** Of a link: characters after the address; and bytes of the file that it unfolds to. */
export const linkLimits = { characters: 16_000, bytes: 512 * 1024 }

const mark = '#piece='

export type LinkResult =
  { readonly ok: true; readonly link: string } | { readonly ok: false; readonly message: string }

/** `address` is that of the app. */
export async function linkOf(pattern: Pattern, address: string): Promise<LinkResult> {
  const text = JSON.stringify(JSON.parse(writeFile(pattern)))
  const folded = new Blob([text]).stream().pipeThrough(new CompressionStream('deflate-raw'))
  const bytes = new Uint8Array(await new Response(folded).arrayBuffer())
  const packed = toAddress(bytes)
  if (packed.length > linkLimits.characters)
    return {
      ok: false,
      message: `The piece is too large for a link: it would have ${packed.length} characters, and links of up to ${linkLimits.characters} are made. Save it as a file and send that.`,
    }
  return { ok: true, link: `${address.replace(/#.*$/s, '')}${mark}${packed}` }
}

/** The piece in the part of an address from # on; null: there is none. Never throws; the message is for the user. */
export async function fromLink(hash: string): Promise<ReadResult | null> {
  if (!hash.startsWith(mark)) return null
  const packed = hash.slice(mark.length)
  if (packed.length > linkLimits.characters)
    return refused(
      `This link has ${packed.length} characters; Pegwright opens links of up to ${linkLimits.characters}.`,
    )
  try {
    const text = await unfold(fromAddress(packed))
    return text === null
      ? refused(
          `The piece in this link is larger than ${linkLimits.bytes / 1024} kB; send it as a file.`,
        )
      : readFile(text)
  } catch {
    return refused('This link is not whole: it may have been cut when it was copied.')
  }
}

const refused = (message: string): ReadResult => ({ ok: false, message })

/** Null: it is larger than it may be; what is beyond is not unfolded. */
async function unfold(bytes: Uint8Array<ArrayBuffer>): Promise<string | null> {
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'))
  const reader = stream.getReader()
  const parts: Uint8Array<ArrayBuffer>[] = []
  let size = 0
  for (;;) {
    const { done, value } = await reader.read()
    if (done) break
    size += value.length
    if (size > linkLimits.bytes) {
      await reader.cancel()
      return null
    }
    parts.push(value)
  }
  return new Blob(parts).text()
}

/** Bytes in the characters that an address may have. */
const toAddress = (bytes: Uint8Array): string =>
  btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replace(/=+$/, '')

const fromAddress = (text: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (character) =>
    character.charCodeAt(0),
  )
