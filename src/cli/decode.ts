/** So much of a file is looked at to tell what it is, bytes. */
const looked = 4096
/** One control character in so many is no text. */
const rare = 20

/**
 * UTF-8; UTF-16 where its mark stands first, or where every other byte is 0; the older Western
 * encoding where it cannot be UTF-8. null: the bytes are no text.
 */
export function decode(bytes: Uint8Array): string | null {
  const wide = wideKind(bytes)
  if (wide) return new TextDecoder(wide).decode(bytes)
  const start = bytes.subarray(0, looked)
  const controls = start.reduce((sum, byte) => sum + (isControl(byte) ? 1 : 0), 0)
  if (start.includes(0) || controls * rare > start.length) return null
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}

const isControl = (byte: number): boolean => byte < 9 || (byte > 13 && byte < 32 && byte !== 27)

/** Which of the two orders of UTF-16 it is in; null: neither. */
function wideKind(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  const [first, second] = bytes
  if (first === 0xff && second === 0xfe) return 'utf-16le'
  if (first === 0xfe && second === 0xff) return 'utf-16be'
  const start = bytes.subarray(0, looked)
  if (start.length < 4) return null
  const zeros = [0, 0]
  start.forEach((byte, at) => {
    if (byte === 0) zeros[at % 2] = (zeros[at % 2] ?? 0) + 1
  })
  const [even = 0, odd = 0] = zeros
  const half = start.length / 2
  // Western text has nearly all of its upper bytes 0, and none of the lower ones.
  if (even === 0 && odd > half * 0.7) return 'utf-16le'
  return odd === 0 && even > half * 0.7 ? 'utf-16be' : null
}
