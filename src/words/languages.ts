import type { Terms } from '../stitches/stitch'
import { english } from './english'
import type { Language } from './language'

/** The languages of the house: one entry a language or set of terms. */
export const languages: Readonly<Record<Terms, Language>> = {
  us: {
    ...english,
    finishing: {
      castOn: 'cast on',
      bindOff: 'bind off',
      gauge: 'gauge',
      clockwise: { clockwise: 'clockwise', counterclockwise: 'counterclockwise' },
    },
  },
  uk: {
    ...english,
    finishing: {
      castOn: 'cast on',
      bindOff: 'cast off',
      gauge: 'tension',
      clockwise: { clockwise: 'clockwise', counterclockwise: 'anticlockwise' },
    },
  },
}
