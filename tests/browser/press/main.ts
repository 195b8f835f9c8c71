// A page that only prints: patterns come in from the test, PDF files go back to it.

import type { BookletSettings } from '../../../src/booklet/settings'
import { layOutBooklet } from '../../../src/booklet/booklet'
import { writePdf } from '../../../src/booklet/pdf'
import type { Pattern } from '../../../src/pattern/pattern'
import { workPattern } from '../../../src/pattern/work'

declare global {
  interface Window {
    /** The PDF's bytes, one letter each. */
    printPattern: (pattern: Pattern, settings: BookletSettings) => Promise<string>
  }
}

window.printPattern = async (pattern, settings) => {
  const bytes = await writePdf(layOutBooklet(workPattern(pattern), settings))
  let text = ''
  for (const byte of bytes) text += String.fromCharCode(byte)
  return text
}
