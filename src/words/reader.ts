/** What reads words and compares them with a chart, in one: the screen loads it when it is shown. */
export { read } from './read/read'
export { statesSizes } from './read/lines/sizesIn'
export { compare } from './compare/compare'
export { byPlaceInText, toldOf } from './compare/told/told'
export { otherWords } from './compare/told/otherWords'
export { readBlock } from './read/chart/block'
