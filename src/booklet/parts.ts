import type { Part } from './part'
import { abbreviations } from './parts/abbreviations'
import { cautions } from './parts/cautions'
import { charts } from './parts/charts'
import { front } from './parts/front'
import { key } from './parts/key'
import { pictures } from './parts/pictures'
import { second } from './parts/second'
import { totals } from './parts/totals'
import { words } from './parts/words'

/** All that can stand in a booklet, in order. Text comes before pictures: it fills the page that the words end on. */
export const bookletParts: readonly Part[] = [
  front,
  cautions,
  charts,
  key,
  abbreviations,
  words,
  totals,
  pictures,
  second,
]
