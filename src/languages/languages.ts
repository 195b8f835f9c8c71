import type { Stitch } from '../stitches/stitch'
import { standardVocabulary } from '../stitches/vocabulary'
import { uk, us } from './english/dialects'
import { english } from './english/english'
import type { Language } from './language'
import { termSets, type Term, type Terms } from './terms'

/** The languages of the house: one entry a language, or a dialect of one. */
export const languages: Readonly<Record<Terms, Language>> = { us: english(us), uk: english(uk) }

/** What a stitch is called. */
export const termOf = (stitch: Stitch, terms: Terms): Term => languages[terms].term(stitch)

/** All that a stitch is called or has been called: abbreviations, other spellings, then names. */
export function spellingsOf(stitch: Stitch): readonly string[] {
  const terms = termSets.map((set) => termOf(stitch, set))
  const { also } = languages.us
  const all = [...terms.map(({ abbr }) => abbr), ...also(stitch), ...terms.map(({ name }) => name)]
  return [...new Set(all)]
}

/** Stitches of the vocabulary whose spellings hold each word of this text, in any case. */
export function findStitches(query: string): Stitch[] {
  const wanted = query.trim().toLowerCase().split(/\s+/)
  return standardVocabulary.stitches.filter((stitch) => {
    const text = [stitch.id, ...spellingsOf(stitch)].join(' ').toLowerCase()
    return wanted.every((word) => text.includes(word))
  })
}
