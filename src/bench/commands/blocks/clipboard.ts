import { makePlain } from '../../../pattern/blocks/area'
import { blockIn } from '../../../pattern/blocks/block'
import { writeBlock } from '../../../words/block'
import { readSettingsOf } from '../../../words/read/reading'
import type { Bench } from '../../state/bench.svelte'
import type { Kept, Preview } from '../../state/block.svelte'
import { reader } from '../../words/reader.svelte'
import type { Command } from '../command'
import { applyToStitches } from '../lost'
import { blockArea, lay, markArea } from './laying'
import { areaSize } from './said'

/** Keep what is marked as the copy; gives its text. */
function keep(bench: Bench, isOutside: boolean): Kept {
  const area = blockArea(bench)
  const block = blockIn(bench.pattern, area)
  const { loom, style } = bench.pattern
  const text = writeBlock(block, { shape: loom.shape, terms: style.terms })
  return (bench.block.kept = { block, text, isOutside })
}

const refusedCopy =
  'The browser does not let the clipboard be written. The copy is kept here: it can be pasted in every chart and piece of this window.'

/** Copy what is marked; the clipboard holds it as text. */
async function copyMarked(bench: Bench, cut: boolean): Promise<void> {
  const area = blockArea(bench)
  const { text } = keep(bench, true)
  const said = `${cut ? 'Cut' : 'Copied'}: ${areaSize(bench, area)}.`
  if (cut) makeMarkedPlain(bench)
  try {
    await navigator.clipboard.writeText(text)
    bench.say(said, { undo: cut })
  } catch {
    const { kept } = bench.block
    if (kept?.text === text) bench.block.kept = { ...kept, isOutside: false }
    bench.say(`${said} ${refusedCopy}`, { undo: cut })
  }
}

/** Plain where the marked block stands. */
function makeMarkedPlain(bench: Bench): void {
  const area = blockArea(bench)
  applyToStitches(bench, `Cut ${areaSize(bench, area)}`, (p) => makePlain(p, area))
  if (bench.corner) markArea(bench, area)
}

/** The browser's own copying or cutting, by its keys or its menu. */
export function copyEvent(bench: Bench, event: ClipboardEvent, cut: boolean): void {
  if (!event.clipboardData) return
  event.preventDefault()
  if (cut && bench.isSecond) {
    bench.apply('Cut', (p) => p)
    return
  }
  const area = blockArea(bench)
  event.clipboardData.setData('text/plain', keep(bench, true).text)
  if (cut) makeMarkedPlain(bench)
  bench.say(`${cut ? 'Cut' : 'Copied'}: ${areaSize(bench, area)}.`, { undo: cut })
}

/** Files, and the text of one, are no blocks: whoever opens pieces takes them. */
export function pasteEvent(bench: Bench, event: ClipboardEvent): void {
  const { clipboardData, defaultPrevented } = event
  if (!clipboardData || defaultPrevented) return
  const text = clipboardData.getData('text/plain')
  if (clipboardData.files.length > 0 || /^\s*\{/.test(text)) return
  event.preventDefault()
  layText(bench, text, 'paste')
}

/** Lay the block of this text on the chart; the one that is kept, where the clipboard did not take that. */
function layText(bench: Bench, text: string, how: Preview['how']): void {
  if (bench.isSecond) {
    bench.apply('Paste', (p) => p)
    return
  }
  const { kept } = bench.block
  if (kept && (!kept.isOutside || isSame(text, kept.text))) {
    lay(bench, { block: kept.block, how, from: null })
    return
  }
  const { pattern, chart } = bench
  const parts = reader()
  if (!parts) {
    bench.say('What reads words is not there yet: paste again in a moment.')
    return
  }
  const { background } = pattern.style
  const read = parts.readBlock(text, readSettingsOf(pattern), chart.columns, background)
  if (!read.ok) {
    bench.say(read.message)
    return
  }
  lay(bench, { block: read.block, how, from: null })
  if (read.lacks) bench.say(`Not all of it is understood: ${read.lacks}`)
}

/** Systems write the ends of lines in their own ways. */
const isSame = (one: string, other: string): boolean =>
  one.replaceAll('\r\n', '\n').trim() === other.replaceAll('\r\n', '\n').trim()

/** Paste by a button: the browser may ask first, or refuse. */
async function pasteText(bench: Bench, how: Preview['how']): Promise<void> {
  const { kept } = bench.block
  try {
    layText(bench, await navigator.clipboard.readText(), how)
  } catch {
    if (!kept)
      bench.say(
        'The browser does not let the clipboard be read. Paste with its keys: Ctrl or ⌘ and V.',
      )
    else {
      lay(bench, { block: kept.block, how, from: null })
      bench.say(
        'The browser does not let the clipboard be read. This is what was copied here last.',
      )
    }
  }
}

// Their keys are the browser's own, which come as events of the clipboard.
export const copyCommand: Command = {
  id: 'block-copy',
  label: 'Copy',
  keys: ['Mod+c'],
  run: (bench) => void copyMarked(bench, false),
}
export const cutCommand: Command = {
  id: 'block-cut',
  label: 'Cut',
  keys: ['Mod+x'],
  edits: true,
  run: (bench) => void copyMarked(bench, true),
}
export const pasteCommand: Command = {
  id: 'block-paste',
  label: 'Paste',
  keys: ['Mod+v'],
  edits: true,
  run: (bench) => void pasteText(bench, 'paste'),
}
/** The marked block itself at each press; with nothing marked, what was copied. */
export const stampCommand: Command = {
  id: 'block-stamp',
  label: 'Stamp',
  keys: ['Shift+p'],
  edits: true,
  run: (bench) => {
    if (!bench.corner) void pasteText(bench, 'stamp')
    else lay(bench, { block: blockIn(bench.pattern, blockArea(bench)), how: 'stamp', from: null })
  },
}
export const moveCommand: Command = {
  id: 'block-move',
  label: 'Move',
  keys: ['Shift+m'],
  edits: true,
  run: (bench) => {
    const from = blockArea(bench)
    if (!bench.corner) markArea(bench, from)
    lay(bench, { block: blockIn(bench.pattern, from), how: 'move', from })
  },
}
