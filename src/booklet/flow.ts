import { movedContent, type PageContent } from './page'
import type { Area } from './paper'

/** A part that is never cut: a line of text, or a picture. x and y count from its top left. */
export interface Strip extends PageContent {
  readonly height: number
}

/** Strips that belong together. They are parted only when they do not fit on one empty page. */
export interface Block {
  readonly strips: readonly Strip[]
  /** Space above it; left out at the top of a page. */
  readonly before: number
  /** A heading: never alone at the foot of a page. */
  readonly withNext?: boolean
  /** Begins a new page. */
  readonly newPage?: boolean
}

export const heightOf = ({ strips }: Block): number =>
  strips.reduce((sum, { height }) => sum + height, 0)

/** Blocks that must start on the same page: headings and what they stand over. */
function chains(blocks: readonly Block[]): Block[][] {
  const result: Block[][] = []
  let chain: Block[] = []
  for (const block of blocks) {
    chain.push(block)
    if (block.withNext) continue
    result.push(chain)
    chain = []
  }
  return chain.length > 0 ? [...result, chain] : result
}

/** A little more than rounding errors of sums of millimetres. */
const slack = 1e-6

/** Set blocks one under the other on as many pages as they need; content stands in page units. */
export const flow = (blocks: readonly Block[], area: Area): PageContent[] =>
  setBlocks(blocks, area).pages

/** How much of the last page is full when these blocks are set, mm. */
export const filledBy = (blocks: readonly Block[], area: Area): number =>
  blocks.length === 0 ? 0 : setBlocks(blocks, area).filled

function setBlocks(
  blocks: readonly Block[],
  area: Area,
): { readonly pages: PageContent[]; readonly filled: number } {
  const pages: {
    texts: PageContent['texts'][number][]
    pictures: PageContent['pictures'][number][]
  }[] = []
  let y = Infinity
  const startPage = () => {
    pages.push({ texts: [], pictures: [] })
    y = 0
  }
  const place = (strip: Strip) => {
    const { texts, pictures } = movedContent(strip, area.x, area.y + y)
    pages.at(-1)?.texts.push(...texts)
    pages.at(-1)?.pictures.push(...pictures)
    y += strip.height
  }
  for (const chain of chains(blocks)) {
    const [head] = chain
    const needed = chain.reduce(
      (sum, block, i) => sum + heightOf(block) + (i > 0 ? block.before : 0),
      0,
    )
    const above = head && y > 0 ? head.before : 0
    if (pages.length === 0 || head?.newPage || (y > 0 && y + above + needed > area.height + slack))
      startPage()
    for (const block of chain) {
      if (y > 0) y += block.before
      for (const strip of block.strips) {
        if (y > 0 && y + strip.height > area.height + slack) startPage()
        place(strip)
      }
    }
  }
  return { pages, filled: y }
}
