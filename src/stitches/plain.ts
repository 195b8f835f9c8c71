import type { How, StitchMove } from '../loom/move'
import { plainSigns } from './signs/plain'
import type { Stitch } from './stitch'

const term = (abbr: string, name: string) => ({ abbr, name })
const one = { takes: 1, makes: 1, width: 1 } as const

const worked = (how?: How): StitchMove => ({ do: 'work', peg: 0, ...(how && { how }) })

/** Stitches that work one loop into one. */
export const knitAndPurl: readonly Stitch[] = [
  {
    ...one,
    id: 'k',
    family: 'knit and purl',
    us: term('k', 'knit'),
    uk: term('k', 'knit'),
    also: ['knit', 'plain'],
    steps: 'Knit the peg the way this pattern knits.',
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
    us: term('ew', 'e-wrap knit'),
    uk: term('ew', 'e-wrap knit'),
    also: ['e-wrap', 'ewk', 'ktbl', 'k1tbl', 'kbl', 'ks'],
    steps:
      'Wind the yarn once round the peg so that it crosses itself, and lift the bottom loop over it and off the peg.',
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
    us: term('uw', 'u-wrap knit'),
    uk: term('uw', 'u-wrap knit'),
    also: ['u-wrap', 'u-knit', 'u-stitch', 'uk'],
    steps:
      'Lay the yarn across the front of the peg and partly round it, above the loop, and lift the loop over it and off the peg.',
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
    us: term('fk', 'flat knit'),
    uk: term('fk', 'flat knit'),
    also: ['flat', 'flat-knit', 'flat stitch', 'flat-stitch'],
    steps:
      'Lay the yarn straight across the front of the peg, above the loop, and lift the loop over it and off the peg.',
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
    us: term('tk', 'true knit'),
    uk: term('tk', 'true knit'),
    also: ['true', 'true-knit', 'reversed purl'],
    steps:
      'Lay the yarn above the loop, put the hook up through the loop and draw a new loop through; take the old loop off the peg and put the new one on.',
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
    us: term('p', 'purl'),
    uk: term('p', 'purl'),
    also: ['purl', 'pearl'],
    steps:
      'Lay the yarn below the loop, put the hook down through the loop and draw a new loop through; take the old loop off the peg and put the new one on.',
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
    us: term('ptbl', 'twisted purl'),
    uk: term('ptbl', 'twisted purl'),
    also: ['p1tbl', 'p-b', 'twisted purl'],
    steps: 'Twist the loop once on the peg, then purl it.',
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
    us: term('sl', 'slip, yarn behind the peg'),
    uk: term('sl', 'slip, yarn behind the peg'),
    also: ['slip', 'skip', 'sl1', 'sl1p', 'slwyib', 'miss', 'slip, yarn inside'],
    steps: 'Carry the yarn behind the peg, inside the loom, and leave the loop as it is.',
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
    us: term('sl wyif', 'slip, yarn in front'),
    uk: term('sl wyif', 'slip, yarn in front'),
    also: ['slwyif', 'sl1wyif', 'sl1pwyif'],
    steps:
      'Take the loop off, lay the yarn behind the peg but in front of the fabric, and put the loop back.',
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
    us: term('tuck', 'tuck'),
    uk: term('tuck', 'tuck'),
    also: [],
    steps:
      'Lay the yarn on the peg above the loop and lift nothing over; when you next work that peg, work both as one.',
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
    us: term('yo', 'yarn over'),
    uk: term('yo', 'yarn over'),
    also: ['yon', 'yrn', 'yfrn', 'over'],
    steps:
      'Lay the yarn across the front of the empty peg and lift nothing over; it leaves a hole.',
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
    us: term(lean === 'left' ? 'm1L' : 'm1R', `make 1 ${lean}`),
    uk: term(lean === 'left' ? 'm1L' : 'm1R', `make 1 ${lean}`),
    also: [
      ...(lean === 'left' ? ['m1', 'make one left'] : ['make one right']),
      `lifted increase, leaning ${lean}`,
    ],
    steps: `Lift the strand of yarn beside the empty peg onto that peg, twisted to the ${lean}, and knit it.`,
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
    us: term('kfb', 'knit into front and back'),
    uk: term('kfb', 'knit into front and back'),
    also: ['k1fb', 'k1f&b', 'k1f/b', 'k1-f/b', 'inc1'],
    steps:
      'Draw a new loop through the loop and put it on the empty peg beside it; then knit the first peg by e-wrap.',
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
  readonly us: [abbr: string, name: string]
  readonly uk?: [abbr: string, name: string]
  readonly also: readonly string[]
}

const declareDecrease = ({ purl, us, uk, ...declared }: Decrease): Stitch => ({
  ...declared,
  makes: 1,
  width: 1,
  family: 'decrease',
  us: term(...us),
  uk: term(...(uk ?? us)),
  steps: `Move ${declared.takes === 2 ? 'two' : 'three'} loops onto one peg, the ${declared.shows === 'middle' ? 'middle' : `${declared.shows}-hand`} one at the bottom, and ${purl ? 'purl' : 'knit'} them as one.`,
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
      us: ['k2tog', 'knit two together'],
      also: [],
      mirror: 'ssk',
      behind: 'p2tog',
      role: 'two together',
      key: '/',
    },
    {
      id: 'ssk',
      takes: 2,
      shows: 'right',
      us: ['ssk', 'slip, slip, knit'],
      uk: ['skpo', 'slip one, knit one, pass slipped stitch over'],
      also: ['skp', 'sl1 k1 psso', 'k2tog tbl', 'k2tog-tbl'],
      mirror: 'k2tog',
      behind: 'ssp',
      key: '\\',
    },
    {
      id: 'p2tog',
      takes: 2,
      shows: 'left',
      purl: true,
      us: ['p2tog', 'purl two together'],
      also: [],
      mirror: 'ssp',
      behind: 'k2tog',
      key: 'z',
    },
    {
      id: 'ssp',
      takes: 2,
      shows: 'right',
      purl: true,
      us: ['ssp', 'slip, slip, purl through the back loops'],
      uk: ['p2tog tbl', 'purl two together through the back loops'],
      also: ['p2togtbl', 'p2tog-tbl'],
      mirror: 'p2tog',
      behind: 'ssk',
      key: 'x',
    },
    {
      id: 'cdd',
      takes: 3,
      shows: 'middle',
      us: ['s2kp', 'centered double decrease'],
      uk: ['s2kpo', 'centred double decrease'],
      also: ['cdd', 's2kp2', 'sl2 k1 p2sso', 'central double decrease'],
      mirror: 'cdd',
      key: '^',
    },
    {
      id: 'k3tog',
      takes: 3,
      shows: 'left',
      us: ['k3tog', 'knit three together'],
      also: [],
      mirror: 'sk2p',
    },
    {
      id: 'sk2p',
      takes: 3,
      shows: 'right',
      us: ['sk2p', 'slip one, knit two together, pass slipped stitch over'],
      uk: ['sk2po', 'slip one, knit two together, pass slipped stitch over'],
      also: ['sl1 k2tog psso'],
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
    us: term('mb', 'make bobble'),
    uk: term('mb', 'make bobble'),
    also: ['bobble'],
    steps: `Knit the same peg ${bobbleKnits} times, lift the bottom loop of that little chain back onto the peg, and knit both loops as one.`,
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
    us: term('no st', 'no stitch'),
    uk: term('no st', 'no stitch'),
    also: ['no stitch'],
    steps: 'The peg is empty here: go past it.',
    mirror: 'none',
    behind: 'none',
    role: 'no stitch',
    key: 'n',
    look: 'none',
    signs: plainSigns.none,
    moves: [],
  },
]
