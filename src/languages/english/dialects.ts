import type { Dialect } from '../language'
import { crossTerm, ukCrossTerm } from './crosses'
import { ukTerms } from './terms'

export const us: Dialect = {
  tag: 'en-US',
  tellsUkSizes: false,
  words: {
    castOn: 'cast on',
    bindOff: 'bind off',
    gauge: 'gauge',
    clockwise: { clockwise: 'clockwise', counterclockwise: 'counterclockwise' },
  },
  terms: new Map(),
  cross: crossTerm,
}

export const uk: Dialect = {
  tag: 'en-GB',
  tellsUkSizes: true,
  words: {
    castOn: 'cast on',
    bindOff: 'cast off',
    gauge: 'tension',
    clockwise: { clockwise: 'clockwise', counterclockwise: 'anticlockwise' },
  },
  terms: new Map(Object.entries(ukTerms)),
  cross: ukCrossTerm,
}
