/**
 * `npm run bench`: what things cost on this machine, as medians and as ratios within one run.
 * Nothing here passes or fails a test; the limits beside the figures are what we hold ourselves to.
 */
import { benchBrowser } from './browser'
import { benchEdit } from './edit'
import { benchFabric } from './fabric'
import { benchPiece } from './piece'
import { benchWalk } from './walk'
import { benchWords } from './words'

benchEdit()
benchWords()
benchFabric()
benchPiece()
benchWalk()
await benchBrowser()
