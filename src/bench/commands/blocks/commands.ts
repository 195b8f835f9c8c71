import type { Command } from '../command'
import { moveCommand, stampCommand } from './clipboard'
import { markChartCommand, markPegCommand, markRowCommand } from './marking'
import { flipCommand, shiftLeftCommand, shiftRightCommand, turnCommand } from './shapes'

/** Commands of blocks that run by a key on a chart. Those of the clipboard come as its events. */
export const blockCommands: readonly Command[] = [
  markRowCommand,
  markPegCommand,
  markChartCommand,
  stampCommand,
  moveCommand,
  flipCommand,
  turnCommand,
  shiftLeftCommand,
  shiftRightCommand,
]
