import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { inks } from '../../src/drawing/scene'
import { inkTable } from '../../src/drawing/svg'

const source = (path: string) => readFileSync(`src/bench/${path}`, 'utf8')

/** The variable that each ink of the screen takes its colour from. */
const variables = new Map(
  [
    ...source('theme.css').matchAll(
      /((?:\.ink-[\w-]+,?\s*)+)\{\s*--ink-colour: var\((--[\w-]+)\)/g,
    ),
  ].flatMap(([, classes = '', variable = '']) =>
    [...classes.matchAll(/\.ink-([\w-]+)/g)].map(([, ink = '']) => [ink, variable] as const),
  ),
)
const colours = new Map(
  [...source('dialogs/PagePreview.svelte').matchAll(/(--[\w-]+): (#\w+);/g)].map(
    ([, variable = '', colour = '']) =>
      [variable, colour.replace(/^#(\w)(\w)(\w)$/, '#$1$1$2$2$3$3')] as const,
  ),
)

test.each(inks)(
  'in the preview of pages the ink “%s” is that of paper, by day and by night',
  (ink) => {
    expect(colours.get(variables.get(ink) ?? '')).toBe(inkTable[ink])
  },
)
