import type { PlainId } from '../../stitches/signs/plain'
import type { StitchWords, Term } from '../terms'

/** Every stitch but the crosses, in US terms, with the spellings in use (common practice). */
export const terms: Readonly<Record<PlainId, StitchWords>> = {
  k: {
    abbr: 'k',
    name: 'knit',
    also: ['plain', 'kn', 'k st', 'knit st', 'knit stitch'],
  },
  ew: {
    abbr: 'ew',
    name: 'e-wrap knit',
    also: [
      'e-wrap',
      'ewk',
      'ktbl',
      'k1tbl',
      'kbl',
      'ks',
      'ewrap',
      'k tbl',
      'knit tbl',
      'twisted knit',
    ],
    steps:
      'Wind the yarn once round the peg so that it crosses itself, and lift the bottom loop over it and off the peg.',
  },
  uw: {
    abbr: 'uw',
    name: 'u-wrap knit',
    also: ['u-wrap', 'u-knit', 'u-stitch', 'uk', 'uwrap', 'u st'],
    steps:
      'Lay the yarn across the front of the peg and partly round it, above the loop, and lift the loop over it and off the peg.',
  },
  fk: {
    abbr: 'fk',
    name: 'flat knit',
    also: ['flat', 'flat stitch', 'flat st'],
    steps:
      'Lay the yarn straight across the front of the peg, above the loop, and lift the loop over it and off the peg.',
  },
  tk: {
    abbr: 'tk',
    name: 'true knit',
    also: ['true', 'reversed purl'],
    steps:
      'Lay the yarn above the loop, put the hook up through the loop and draw a new loop through; take the old loop off the peg and put the new one on.',
  },
  p: {
    abbr: 'p',
    name: 'purl',
    also: ['pearl', 'pl', 'purl stitch'],
    steps:
      'Lay the yarn below the loop, put the hook down through the loop and draw a new loop through; take the old loop off the peg and put the new one on.',
  },
  ptbl: {
    abbr: 'ptbl',
    name: 'twisted purl',
    also: ['p1tbl', 'p-b', 'p tbl', 'p1 b', 'purl tbl'],
    steps: 'Twist the loop once on the peg, then purl it.',
  },
  sl: {
    abbr: 'sl',
    name: 'slip, yarn behind the peg',
    also: [
      'slip',
      'skip',
      'sl1',
      'sl1p',
      'slwyib',
      'miss',
      'slip, yarn inside',
      's',
      'sl p',
      'sl1 pwise',
      'sl pwise',
      'sl1 purlwise',
      'sl1k',
      'sl1 kwise',
      'sl kwise',
      'sl1 knitwise',
    ],
    steps: 'Carry the yarn behind the peg, inside the loom, and leave the loop as it is.',
  },
  slf: {
    abbr: 'sl wyif',
    name: 'slip, yarn in front',
    also: [
      'slwyif',
      'sl1wyif',
      'sl1pwyif',
      'slip wyif',
      'sl1p wyif',
      'slip1 wyif',
      'sl wyf',
      'wyif sl',
      'wyif sl1',
      'wyif slip',
      'with yarn in front sl',
      'with yarn in front slip',
    ],
    steps:
      'Take the loop off, lay the yarn behind the peg but in front of the fabric, and put the loop back.',
  },
  tuck: {
    abbr: 'tuck',
    name: 'tuck',
    also: [],
    steps:
      'Lay the yarn on the peg above the loop and lift nothing over; when you next work that peg, work both as one.',
  },
  yo: {
    abbr: 'yo',
    name: 'yarn over',
    also: ['yon', 'yrn', 'yfrn', 'over', 'yarn round needle', 'wool forward', 'yarn forward'],
    steps:
      'Lay the yarn across the front of the empty peg and lift nothing over; it leaves a hole.',
  },
  m1l: {
    abbr: 'm1L',
    name: 'make 1 left',
    also: ['m1', 'make one left', 'lifted increase, leaning left', 'make 1', 'make one', 'm1 left'],
    steps:
      'Lift the strand of yarn beside the empty peg onto that peg, twisted to the left, and knit it.',
  },
  m1r: {
    abbr: 'm1R',
    name: 'make 1 right',
    also: ['make one right', 'lifted increase, leaning right', 'm1 right'],
    steps:
      'Lift the strand of yarn beside the empty peg onto that peg, twisted to the right, and knit it.',
  },
  kfb: {
    abbr: 'kfb',
    name: 'knit into front and back',
    also: [
      'k1fb',
      'k1f&b',
      'k1f/b',
      'inc1',
      'kf&b',
      'kf/b',
      'kbf',
      'knit front and back',
      'knit into the front and back',
    ],
    steps:
      'Draw a new loop through the loop and put it on the empty peg beside it; then knit the first peg by e-wrap.',
  },
  k2tog: {
    abbr: 'k2tog',
    name: 'knit two together',
    also: ['knit 2 together', 'knit 2 tog', 'k2together'],
  },
  ssk: {
    abbr: 'ssk',
    name: 'slip, slip, knit',
    also: [
      'skp',
      'sl1 k1 psso',
      'k2tog tbl',
      'sl k psso',
      'slip 1 knit 1 psso',
      'k2tog b',
      'k2togtbl',
      'k2tog through back loops',
    ],
  },
  p2tog: {
    abbr: 'p2tog',
    name: 'purl two together',
    also: ['purl 2 together', 'purl 2 tog'],
  },
  ssp: {
    abbr: 'ssp',
    name: 'slip, slip, purl through the back loops',
    also: ['p2togtbl', 'p2tog b'],
  },
  cdd: {
    abbr: 's2kp',
    name: 'centered double decrease',
    also: [
      's2kp2',
      'sl2 k1 p2sso',
      'central double decrease',
      'sl2tog k1 p2sso',
      'sl2 k p2sso',
      'dcd',
    ],
  },
  k3tog: {
    abbr: 'k3tog',
    name: 'knit three together',
    also: ['knit 3 together', 'knit 3 tog'],
  },
  sk2p: {
    abbr: 'sk2p',
    name: 'slip one, knit two together, pass slipped stitch over',
    also: ['sl1 k2tog psso', 'slip 1 k2tog psso', 'sl k2tog psso', 'k3tog tbl'],
  },
  mb: {
    abbr: 'mb',
    name: 'make bobble',
    also: ['bobble'],
    steps:
      'Knit the same peg 4 times, lift the bottom loop of that little chain back onto the peg, and knit both loops as one.',
  },
  none: {
    abbr: 'no st',
    name: 'no stitch',
    also: [],
    steps: 'The peg is empty here: go past it.',
  },
}

/** Those that have another name in UK terms. */
export const ukTerms: Readonly<Partial<Record<PlainId, Term>>> = {
  ssk: { abbr: 'skpo', name: 'slip one, knit one, pass slipped stitch over' },
  ssp: { abbr: 'p2tog tbl', name: 'purl two together through the back loops' },
  cdd: { abbr: 's2kpo', name: 'centred double decrease' },
  sk2p: { abbr: 'sk2po', name: 'slip one, knit two together, pass slipped stitch over' },
}
