import { runsRightToLeft } from '../../loom/direction'
import type { ChartDrawn, DrawingPhrases } from '../drawings'
import type { DialectWords } from '../language'
import { counted } from './forms'

function chart(kind: string, { title, loom, columns, rows, copies }: ChartDrawn): string {
  const row = loom.shape === 'ring' ? 'round' : 'row'
  const [side, way] = runsRightToLeft(loom.direction)
    ? ['right', 'right to left']
    : ['left', 'left to right']
  const repeats = copies === null ? '' : `, the repeat ${counted(copies, 'time')} round`
  return (
    `${kind} of ${title || 'an untitled piece'}: ${counted(columns, 'column')} on ` +
    `${counted(loom.pegs, 'peg')}${repeats}, ${counted(rows, row)}; ` +
    `peg 1 at the ${side}, ${row} 1 runs ${way}.`
  )
}

export const drawingPhrases = (words: DialectWords): DrawingPhrases => ({
  rowChart: (drawn) => chart('Row chart', drawn),
  ringChart: (drawn, castOn) => chart(`Ring chart, cast-on edge ${castOn},`, drawn),
  fabric: ({ name, loom, rows, view, opened }) => {
    const row = loom.shape === 'ring' ? 'rounds' : 'rows'
    const how = view === 'tube' ? 'the front half of the tube' : 'lying flat'
    const side = runsRightToLeft(loom.direction) ? 'left' : 'right'
    return `Fabric of ${name ? `${name}: ` : ''}${rows} ${row} on ${loom.pegs} pegs as the right side looks, ${how}${opened ? ', opened flat at the short rows' : ''}; cast-on at the bottom, pegs count to the ${side}.`
  },
  side: (steps, rows, length) =>
    `The piece from the side: ${steps} steps, ${counted(rows, 'row')}${length === null ? ', without a gauge: proportions are assumed' : `, ${length} long`}.`,
  loomFromAbove: ({ shape, pegs, direction }) =>
    `The loom from above: ${shape === 'ring' ? 'a ring' : 'a bar'} of ${pegs} pegs, worked ${words.clockwise[direction]}.`,
  pegsFromFront: (first, last, leftward) =>
    `Pegs ${first} to ${last} seen from the outside, numbered ${leftward ? 'right to left' : 'left to right'}.`,
  stepPictures: (sentences) => `Step pictures. ${sentences.join(' ')}`,
  sheets: (first, last) => `How sheets ${first} to ${last} join`,
  goesOn: 'Where the chart goes on',
  draft: 'DRAFT',
  draftOf: (title) => `Draft, with errors. ${title}`,
  passing: { inFront: 'in front', behind: 'behind' },
  plain: 'plain',
  noRows: 'no rows',
  castOn: (pegs) => `${words.castOn}${pegs === null ? '' : ` ${pegs}`}`,
  bindOff: (how, pegs) => {
    if (pegs !== null) return `${words.bindOff} ${pegs}`
    return how === 'gather' || how === 'graft' ? how : words.bindOff
  },
  opening: (pegs, width) => [
    'opening',
    counted(pegs, 'peg'),
    ...(width === null ? [] : [`${width} wide`]),
  ],
})
