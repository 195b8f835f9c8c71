// A page that only prints: patterns come in from the test as files, PDF files go back to it.

import type { BookletSettings } from '../../../src/booklet/settings'
import { layOutBooklet } from '../../../src/booklet/booklet'
import { writePdf } from '../../../src/booklet/pdf'
import { workPattern } from '../../../src/pattern/work'
import { readFile } from '../../../src/shelf/format'

declare global {
  interface Window {
    /** The PDF's bytes, one letter each. */
    printPattern: (file: string, settings: BookletSettings) => Promise<string>
  }
}

window.printPattern = async (file, settings) => {
  const read = readFile(file)
  if (!read.ok) throw new Error(read.message)
  const bytes = await writePdf(layOutBooklet(workPattern(read.pattern), settings))
  let text = ''
  for (const byte of bytes) text += String.fromCharCode(byte)
  return text
}
