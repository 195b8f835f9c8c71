/** Millimetres; y down. Paper stands upright. */
export interface Paper {
  readonly name: string
  readonly width: number
  readonly height: number
  /** From the edge of the paper to the text; the page number stands in the foot, below it. */
  readonly margins: {
    readonly top: number
    readonly right: number
    readonly bottom: number
    readonly left: number
  }
}

const generous = { top: 20, right: 20, bottom: 24, left: 20 } as const
const small = { top: 14, right: 14, bottom: 18, left: 14 } as const

/** To add a paper size, add an entry. Sizes: ISO 216 (A4, A5), ANSI/ASME Y14.1 (letter). */
export const papers = {
  a4: { name: 'A4', width: 210, height: 297, margins: generous },
  letter: { name: 'US letter', width: 215.9, height: 279.4, margins: generous },
  a5: { name: 'A5', width: 148, height: 210, margins: small },
} as const satisfies Record<string, Paper>

export type PaperSize = keyof typeof papers
export const paperSizes = Object.keys(papers) as readonly PaperSize[]

/** The part of the paper that is printed on, page number and title apart. */
export interface Area {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

export const liveArea = ({ width, height, margins }: Paper): Area => ({
  x: margins.left,
  y: margins.top,
  width: width - margins.left - margins.right,
  height: height - margins.top - margins.bottom,
})
