import type { How, StitchMove } from '../loom/move'
import { plainSigns } from './signs/plain'
import type { Stitch } from './stitch'

const one = { takes: 1, makes: 1, width: 1 } as const

const worked = (how?: How): StitchMove => ({ do: 'work', peg: 0, ...(how && { how }) })

/** Stitches that work one loop into one. */
export const knitAndPurl: readonly Stitch[] = [
  {
    ...one,
    id: 'k',
    family: 'knit and purl',
    mirror: 'k',
    behind: 'p',
    role: 'knit',
    key: 'k',
    look: 'knit',
    signs: plainSigns.k,
    moves: [worked()],
  },
  {
    ...one,
    id: 'ew',
    family: 'knit and purl',
    mirror: 'ew',
    behind: 'ptbl',
    role: 'e-wrap',
    key: 'e',
    look: 'twisted knit',
    signs: plainSigns.ew,
    moves: [worked('e-wrap')],
  },
  {
    ...one,
    id: 'uw',
    family: 'knit and purl',
    mirror: 'uw',
    behind: 'p',
    role: 'u-wrap',
    key: 'u',
    look: 'knit',
    signs: plainSigns.uw,
    moves: [worked('u-wrap')],
  },
  {
    ...one,
    id: 'fk',
    family: 'knit and purl',
    mirror: 'fk',
    behind: 'p',
    role: 'flat',
    key: 'f',
    look: 'knit',
    signs: plainSigns.fk,
    moves: [worked('flat')],
  },
  {
    ...one,
    id: 'tk',
    family: 'knit and purl',
    mirror: 'tk',
    behind: 'p',
    role: 'true',
    key: 't',
    look: 'knit',
    signs: plainSigns.tk,
    moves: [worked('true')],
  },
  {
    ...one,
    id: 'p',
    family: 'knit and purl',
    mirror: 'p',
    behind: 'k',
    role: 'purl',
    key: 'p',
    look: 'purl',
    signs: plainSigns.p,
    moves: [worked('purl')],
  },
  {
    ...one,
    id: 'ptbl',
    family: 'knit and purl',
    mirror: 'ptbl',
    behind: 'ew',
    key: 'q',
    look: 'twisted purl',
    signs: plainSigns.ptbl,
    moves: [worked('twisted purl')],
  },
]

export const slips: readonly Stitch[] = [
  {
    ...one,
    id: 'sl',
    passes: true,
    family: 'slip',
    mirror: 'sl',
    behind: 'slf',
    role: 'slip',
    key: 's',
    look: 'slip',
    signs: plainSigns.sl,
    moves: [{ do: 'pass', peg: 0, yarn: 'inside' }],
  },
  {
    ...one,
    id: 'slf',
    passes: true,
    family: 'slip',
    mirror: 'slf',
    behind: 'sl',
    role: 'slip in front',
    key: 'w',
    look: 'float in front',
    signs: plainSigns.slf,
    moves: [{ do: 'pass', peg: 0, yarn: 'outside' }],
  },
  {
    ...one,
    id: 'tuck',
    family: 'slip',
    mirror: 'tuck',
    behind: 'tuck',
    role: 'tuck',
    key: 'c',
    look: 'tuck',
    signs: plainSigns.tuck,
    moves: [{ do: 'lay', peg: 0, as: 'tuck' }],
  },
]

export const increases: readonly Stitch[] = [
  {
    id: 'yo',
    takes: 0,
    makes: 1,
    width: 1,
    family: 'increase',
    mirror: 'yo',
    behind: 'yo',
    role: 'yarn over',
    key: 'y',
    look: 'yarn over',
    signs: plainSigns.yo,
    moves: [{ do: 'lay', peg: 0, as: 'yarn over' }],
  },
  ...(['left', 'right'] as const).map((lean): Stitch => ({
    id: lean === 'left' ? 'm1l' : 'm1r',
    takes: 0,
    makes: 1,
    width: 1,
    family: 'increase',
    mirror: lean === 'left' ? 'm1r' : 'm1l',
    role: `make ${lean}`,
    key: lean === 'left' ? '[' : ']',
    look: 'increase',
    signs: lean === 'left' ? plainSigns.m1l : plainSigns.m1r,
    moves: [{ do: 'bar', peg: 0 }, worked()],
  })),
  {
    id: 'kfb',
    takes: 1,
    makes: 2,
    width: 2,
    family: 'increase',
    mirror: 'kfb',
    role: 'knit twice',
    key: 'v',
    look: 'increase',
    signs: plainSigns.kfb,
    moves: [{ do: 'draw', from: 0, to: 1 }, worked('e-wrap'), { do: 'carry', gap: 2 }],
  },
]

interface Decrease extends Pick<Stitch, 'id' | 'mirror' | 'behind' | 'role' | 'key'> {
  readonly takes: 2 | 3
  readonly shows: 'left' | 'middle' | 'right'
  readonly purl?: boolean
}

const declareDecrease = ({ purl, ...declared }: Decrease): Stitch => ({
  ...declared,
  makes: 1,
  width: 1,
  family: 'decrease',
  look: purl
    ? 'purl decrease'
    : declared.shows === 'middle'
      ? 'centre decrease'
      : declared.shows === 'left'
        ? 'right decrease'
        : 'left decrease',
  signs: plainSigns[declared.id as keyof typeof plainSigns],
  moves: [worked(purl ? 'purl' : undefined)],
})

/**
 * Loops lifted together show the lowest one: a decrease that leans right needs its left loop at
 * the bottom (common practice).
 */
export const decreases: readonly Stitch[] = (
  [
    {
      id: 'k2tog',
      takes: 2,
      shows: 'left',
      mirror: 'ssk',
      behind: 'p2tog',
      role: 'two together',
      key: '/',
    },
    {
      id: 'ssk',
      takes: 2,
      shows: 'right',
      mirror: 'k2tog',
      behind: 'ssp',
      key: '\\',
    },
    {
      id: 'p2tog',
      takes: 2,
      shows: 'left',
      purl: true,
      mirror: 'ssp',
      behind: 'k2tog',
      key: 'z',
    },
    {
      id: 'ssp',
      takes: 2,
      shows: 'right',
      purl: true,
      mirror: 'p2tog',
      behind: 'ssk',
      key: 'x',
    },
    {
      id: 'cdd',
      takes: 3,
      shows: 'middle',
      mirror: 'cdd',
      key: '^',
    },
    {
      id: 'k3tog',
      takes: 3,
      shows: 'left',
      mirror: 'sk2p',
    },
    {
      id: 'sk2p',
      takes: 3,
      shows: 'right',
      mirror: 'k3tog',
    },
  ] satisfies Decrease[]
).map(declareDecrease)

/** Knitted this often on the same peg before its base is lifted back (common practice: 3 to 5). */
const bobbleKnits = 4

export const textures: readonly Stitch[] = [
  {
    ...one,
    id: 'mb',
    family: 'texture',
    mirror: 'mb',
    behind: 'mb',
    key: 'b',
    look: 'bobble',
    signs: plainSigns.mb,
    moves: [
      ...Array.from({ length: bobbleKnits }, () => worked()),
      { do: 'base', peg: 0 },
      worked(),
    ],
  },
  {
    id: 'none',
    takes: 0,
    makes: 0,
    width: 1,
    family: 'texture',
    mirror: 'none',
    behind: 'none',
    role: 'no stitch',
    key: 'n',
    look: 'none',
    signs: plainSigns.none,
    moves: [],
  },
]
