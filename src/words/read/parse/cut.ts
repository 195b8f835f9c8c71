import { languages } from '../../../languages/languages'
import { cutStitch } from '../../../stitches/cut'
import { cutsBy } from '../../../stitches/stitch'
import type { Meaning } from '../terms/spellings'
import type { Cursor } from './cursor'

/** "2/2 LC (cut at the edge of the repeat, 2 of 4 pegs)": as the writer names what is left of a stitch. */
export function cutShort(meaning: Meaning, cursor: Cursor): Meaning {
  if (meaning.is !== 'stitch' || !cursor.looksAt('( cut')) return meaning
  const { stitch } = meaning
  for (const by of cutsBy) {
    const phrase = `( ${languages.us.cut[by]} , # of # peg|pegs )`
    if (!cursor.looksAt(phrase)) continue
    const [columns, width] = cursor.numbers.map(({ value }) => value)
    if (!columns || width !== stitch.width || columns >= width) continue
    cursor.eat(phrase, 'stitch')
    return { ...meaning, stitch: cutStitch(stitch, columns, by) }
  }
  return meaning
}
