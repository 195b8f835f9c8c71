import { movedContent, type PageContent } from './page'
import type { Area } from './paper'

/** A part that is never cut: a line of text, or a picture. x and y count from its top left. */
export interface Strip extends PageContent {
  readonly height: number
}

/** Strips one under the other, made one: it is never cut. */
export function stacked(strips: readonly Strip[]): Strip {
  let height = 0
  const parts = strips.map((strip) => {
    const moved = movedContent(strip, 0, height)
    height += strip.height
    return moved
  })
  return { height, ...merged(parts) }
}

/** What stands in one place. */
export const merged = (parts: readonly PageContent[]): PageContent => ({
  texts: parts.flatMap(({ texts }) => texts),
  pictures: parts.flatMap(({ pictures }) => pictures),
})

export type Link = 1 | 2 | 3 | 4

/** Strips that belong together. They are parted only when they do not fit on one empty page. */
export interface Block {
  readonly strips: readonly Strip[]
  /** Space above it; left out at the top of a page. */
  readonly before: number
  /** A heading: never alone at the foot of a page. */
  readonly withNext?: boolean
  /**
   * On the page of the next one. Where all that hangs together is more than a page, the links of the highest
   * number are given up first.
   */
  readonly beforeNext?: Link
  /** Begins a new page. */
  readonly newPage?: boolean
}

export const heightOf = ({ strips }: Block): number =>
  strips.reduce((sum, { height }) => sum + height, 0)

/** Blocks that must start on the same page: headings and what they stand over, and what goes along with the next. */
const chains = (blocks: readonly Block[], area: Area, links: number = weakest): Block[][] =>
  linked(blocks, ({ withNext, beforeNext = Infinity }) => withNext || beforeNext <= links).flatMap(
    (chain) =>
      links > 0 && heightOfChain(chain) > area.height + slack
        ? chains(chain, area, links - 1)
        : [chain],
  )

function linked(
  blocks: readonly Block[],
  goesOn: (block: Block) => boolean | undefined,
): Block[][] {
  const result: Block[][] = []
  let chain: Block[] = []
  for (const block of blocks) {
    chain.push(block)
    if (goesOn(block)) continue
    result.push(chain)
    chain = []
  }
  return chain.length > 0 ? [...result, chain] : result
}

/** The weakest link between blocks. */
const weakest = 4
/** A little more than rounding errors of sums of millimetres. */
const slack = 1e-6
/** Fewer lines than this are not left alone on a page. */
const fewestLines = 6
/** More than this of a page does not go along with them. */
const mostAlong = 0.4

interface Pages {
  readonly pages: PageContent[]
  readonly filled: number
  /** The chains that begin on each page. */
  readonly begun: readonly (readonly number[])[]
}

/**
 * Set blocks one under the other on as many pages as they need; content stands in page units. A few
 * lines that would have a page for themselves take what stands before them along.
 */
export function flow(blocks: readonly Block[], area: Area): PageContent[] {
  let parts = chains(blocks, area)
  let set = setChains(parts, area)
  for (let lone = loneAt(parts, set, area); lone !== null; lone = loneAt(parts, set, area)) {
    parts = [
      ...parts.slice(0, lone - 1),
      parts.slice(lone - 1, lone + 1).flat(),
      ...parts.slice(lone + 1),
    ]
    set = setChains(parts, area)
  }
  return set.pages
}

/** The first chain of a page that has but a few lines, where the chain before it can go along. */
function loneAt(parts: readonly Block[][], { pages, begun }: Pages, area: Area): number | null {
  for (let page = 1; page < pages.length; page++) {
    const [first] = begun[page] ?? []
    const before = begun[page - 1] ?? []
    const isLone =
      first !== undefined &&
      pages[page]?.pictures.length === 0 &&
      linesOn(parts, begun[page] ?? []) < fewestLines
    if (!isLone || before.length < 2 || parts[first]?.[0]?.newPage) continue
    const along = heightOfChain(parts[first - 1] ?? [])
    const both = heightOfChain(parts.slice(first - 1, first + 1).flat())
    if (along <= mostAlong * area.height && both <= area.height + slack) return first
  }
  return null
}

const linesOn = (parts: readonly Block[][], chain: readonly number[]): number =>
  chain.reduce(
    (sum, index) =>
      sum + (parts[index] ?? []).reduce((lines, { strips }) => lines + strips.length, 0),
    0,
  )

export const heightOfChain = (chain: readonly Block[]): number =>
  chain.reduce((sum, block, i) => sum + heightOf(block) + (i > 0 ? block.before : 0), 0)

/** How much of the last page is full when these blocks are set, mm. */
export const filledBy = (blocks: readonly Block[], area: Area): number =>
  blocks.length === 0 ? 0 : setChains(chains(blocks, area), area).filled

function setChains(parts: readonly Block[][], area: Area): Pages {
  const pages: {
    texts: PageContent['texts'][number][]
    pictures: PageContent['pictures'][number][]
  }[] = []
  const begun: number[][] = []
  let y = Infinity
  const startPage = () => {
    pages.push({ texts: [], pictures: [] })
    begun.push([])
    y = 0
  }
  const place = (strip: Strip) => {
    const { texts, pictures } = movedContent(strip, area.x, area.y + y)
    pages.at(-1)?.texts.push(...texts)
    pages.at(-1)?.pictures.push(...pictures)
    y += strip.height
  }
  parts.forEach((chain, index) => {
    const [head] = chain
    const needed = heightOfChain(chain)
    const above = head && y > 0 ? head.before : 0
    if (pages.length === 0 || head?.newPage || (y > 0 && y + above + needed > area.height + slack))
      startPage()
    begun.at(-1)?.push(index)
    for (const block of chain) {
      if (y > 0) y += block.before
      for (const strip of block.strips) {
        if (y > 0 && y + strip.height > area.height + slack) startPage()
        place(strip)
      }
    }
  })
  return { pages, filled: y, begun }
}
