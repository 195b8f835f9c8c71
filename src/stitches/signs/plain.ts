import {
  circle,
  curve,
  dot,
  line,
  mirrorSigns,
  polygon,
  type Mark,
  type Signs,
  type Sign,
} from '../sign'

/**
 * The signs of all stitches but crosses. Published by the Craft Yarn Council (chart symbols): knit a blank square
 * or a vertical line, purl a dot or a horizontal line, yarn over a circle, a two-together slants the way it leans.
 * In JIS L 0201 ssk is right over left, k2tog left over right, and purl variants carry a bar below; its knit, purl
 * and yarn over are from memory. All others are from memory.
 */

const near = 0.2
const far = 0.8
const middle = 0.5

const both = (sign: Sign): Signs => ({ cyc: sign, jis: sign })
const ofCouncil = (signs: Signs): Signs => ({ ...signs, council: true })

const upright = line([middle, near], [middle, far])
const barBelow = line([0.2, 0.86], [0.8, 0.86])

/** A loop with crossed legs, from `foot` up to `top`. */
const twistedLoop = (foot: number, top = near): Mark => {
  const height = foot - top
  const y = (share: number) => top + share * height
  return curve(
    ['M', 0.29, foot],
    ['C', 0.42, y(0.78), 0.7, y(0.6), 0.7, y(0.3)],
    ['C', 0.7, y(0.1), 0.61, top, middle, top],
    ['C', 0.39, top, 0.3, y(0.1), 0.3, y(0.3)],
    ['C', 0.3, y(0.6), 0.58, y(0.78), 0.71, foot],
  )
}

/** The knit kinds of a loom have no signs of their own in the published sets but the twisted one (from memory). */
const knitKinds = {
  k: ofCouncil(both([upright])),
  ew: both([twistedLoop(far)]),
  uw: both([
    curve(
      ['M', 0.27, near],
      ['L', 0.27, 0.54],
      ['C', 0.27, 0.89, 0.73, 0.89, 0.73, 0.54],
      ['L', 0.73, near],
    ),
  ]),
  fk: both([upright, line([0.25, near], [0.75, near])]),
  tk: both([line([0.37, near], [0.37, far]), line([0.63, near], [0.63, far])]),
}

const purls = {
  p: ofCouncil({ cyc: [dot(middle, middle, 0.16)], jis: [line([0.18, middle], [0.82, middle])] }),
  /** From memory. */
  ptbl: {
    cyc: [twistedLoop(0.64, 0.12), dot(middle, 0.85, 0.11)],
    jis: [twistedLoop(0.7), barBelow],
  },
}

const vee = (foot: number): Mark => line([0.24, near], [middle, foot], [0.76, near])

/** From memory. */
const slips = {
  sl: both([vee(far)]),
  slf: { cyc: [vee(far), line([0.12, 0.47], [0.88, 0.47])], jis: [vee(0.66), barBelow] },
  tuck: both([
    curve(
      ['M', 0.25, far],
      ['L', 0.25, 0.46],
      ['C', 0.25, 0.11, 0.75, 0.11, 0.75, 0.46],
      ['L', 0.75, far],
    ),
    line([middle, 0.48], [middle, far]),
  ]),
}

/** Hides the line between two columns on which a sign stands. */
const paper = polygon('ground', [0.9, 0.06], [1.1, 0.06], [1.1, 0.94], [0.9, 0.94])

/** Leaning right; from memory. */
const liftedRight: Signs = {
  cyc: [line([0.24, 0.8], [0.76, 0.8]), line([0.36, 0.8], [0.7, near])],
  jis: [
    line([0.36, near], [0.36, far]),
    curve(['M', 0.36, 0.66], ['C', 0.5, 0.6, 0.66, 0.46, 0.7, near]),
  ],
}

const increases = {
  yo: ofCouncil(both([circle(middle, middle, 0.29)])),
  m1r: liftedRight,
  m1l: mirrorSigns(liftedRight, 1),
  /** From memory. Two columns wide. */
  kfb: {
    cyc: [paper, line([1, far], [1, 0.56]), line([0.44, near], [1, 0.56], [1.56, near])],
    jis: [paper, line([0.5, near], [1, far], [1.5, near]), line([1, near], [1, far])],
  },
}

/** Right-leaning strokes: a long one on top and, from under it, one foot for each further loop. */
const longStroke = line([0.16, 0.84], [0.84, 0.16])
const rightTwo: Signs = {
  cyc: [longStroke, line([0.58, 0.58], [0.84, 0.84])],
  jis: [line([0.14, 0.84], [0.74, 0.12]), line([0.52, 0.46], [0.86, 0.84])],
}
const rightTwoPurl: Signs = {
  cyc: [
    line([0.16, 0.72], [0.74, 0.14]),
    line([0.54, 0.5], [0.86, 0.72]),
    dot(middle, 0.84, 0.115),
  ],
  jis: [line([0.16, 0.68], [0.76, 0.1]), line([0.56, 0.4], [0.84, 0.68]), barBelow],
}
const rightThree: Signs = {
  cyc: [longStroke, line([middle, middle], [middle, 0.9]), line([0.64, 0.36], [0.9, 0.7])],
  jis: [
    line([near, far], [0.68, near]),
    line([0.44, 0.5], [middle, far]),
    line([0.54, 0.375], [far, far]),
  ],
}

/** Three loops as one: from memory. */
const decreases = {
  k2tog: ofCouncil(rightTwo),
  ssk: ofCouncil(mirrorSigns(rightTwo, 1)),
  p2tog: rightTwoPurl,
  ssp: mirrorSigns(rightTwoPurl, 1),
  k3tog: rightThree,
  sk2p: mirrorSigns(rightThree, 1),
  cdd: {
    cyc: [upright, line([0.14, far], [middle, 0.46], [0.86, far])],
    jis: [upright, line([near, far], [0.44, 0.32]), line([far, far], [0.56, 0.32])],
  },
}

/** From memory: a bobble as a ring with a core, or as loops gathered at both ends. */
const bobble: Signs = {
  cyc: [circle(middle, middle, 0.33), dot(middle, middle, 0.14)],
  jis: [
    upright,
    curve(['M', middle, near], ['C', 0.14, 0.36, 0.14, 0.64, middle, far]),
    curve(['M', middle, near], ['C', 0.86, 0.36, 0.86, 0.64, middle, far]),
  ],
}

/** From memory: a grey square. */
const noStitch = both([polygon('shade', [0, 0], [1, 0], [1, 1], [0, 1])])

export const plainSigns = {
  ...knitKinds,
  ...purls,
  ...slips,
  ...increases,
  ...decreases,
  mb: bobble,
  none: noStitch,
} satisfies Record<string, Signs>

/** Ids of all stitches but crosses. */
export type PlainId = keyof typeof plainSigns
