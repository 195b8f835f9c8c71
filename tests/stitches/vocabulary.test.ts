import { describe, expect, test } from 'vitest'
import { headings } from '../../src/loom/direction'
import { crossings, loomRow, transfers, type Site } from '../../src/loom/row'
import { castOn, pegsInWork } from '../../src/loom/state'
import { emptyStack } from '../../src/loom/strand'
import { workRow, type Habits } from '../../src/loom/work'
import { termSets } from '../../src/languages/terms'
import { roles, type Stitch } from '../../src/stitches/stitch'
import { findStitch, standardVocabulary, stitchOf, Vocabulary } from '../../src/stitches/vocabulary'
import { languages, termOf } from '../../src/languages/languages'

const plain = stitchOf('k')

/** The stitch in the middle of a loom, with just the loops it takes in work on its pegs. */
function workAlone(stitch: Stitch, habits: Partial<Habits>, heading: 'forward' | 'back') {
  const edge = 2
  const span = Math.max(stitch.takes, stitch.width)
  const pegs = edge + span + edge
  const full = castOn(pegs)
  const none = stitchOf('none')
  const sites: Site<Stitch>[] = []
  for (let peg = 0; peg < edge; peg++) sites.push({ stitch: plain, peg })
  sites.push({ stitch, peg: edge })
  for (let peg = edge + stitch.width; peg < edge + span; peg++) sites.push({ stitch: none, peg })
  for (let peg = edge + span; peg < pegs; peg++) sites.push({ stitch: plain, peg })
  const gap = heading === 'forward' ? 0 : pegs
  const before = {
    ...full,
    yarn: { ...full.yarn, gap },
    stacks: full.stacks.map((stack, peg) =>
      peg >= edge + stitch.takes && peg < edge + span ? emptyStack : stack,
    ),
  }
  const row = loomRow(sites, 0, pegs - 1, heading, 'on')
  const run = workRow(before, row, {
    shape: 'bar',
    direction: 'clockwise',
    knit: 'u-wrap',
    crossing: 'move then knit',
    transfer: 'ordered',
    ...habits,
  })
  return { before, run }
}

describe.each(standardVocabulary.stitches.map((stitch) => [stitch.id, stitch] as const))(
  '%s',
  (_id, stitch) => {
    test('leaves as many loops as it says, whichever way it is worked', () => {
      for (const heading of headings)
        for (const direction of ['clockwise', 'counterclockwise'] as const)
          for (const crossing of crossings)
            for (const transfer of transfers) {
              const { before, run } = workAlone(stitch, { direction, crossing, transfer }, heading)
              expect(run.miscount).toBeNull()
              expect(pegsInWork(run.after) - pegsInWork(before)).toBe(stitch.makes - stitch.takes)
            }
    })

    test('stands on its width and is found by its id', () => {
      expect(stitch.width).toBeGreaterThanOrEqual(Math.max(1, stitch.makes))
      expect(findStitch(stitch.id)).toBe(stitch)
    })

    test('has a mirror image with the same counts, whose mirror image it is', () => {
      const mirrored = stitchOf(stitch.mirror)
      expect(mirrored.mirror).toBe(stitch.id)
      expect([mirrored.takes, mirrored.makes, mirrored.width]).toEqual([
        stitch.takes,
        stitch.makes,
        stitch.width,
      ])
    })

    test('is plain data, which a file could hold', () => {
      expect(JSON.parse(JSON.stringify(stitch))).toEqual(stitch)
    })

    test('says of itself that the yarn passes its pegs where its moves do', () => {
      const all = 'rightToLeft' in stitch.moves ? [] : stitch.moves
      expect(stitch.passes ?? false).toBe(all.some((move) => move.do === 'pass'))
    })

    test('seen from behind twice is the stitch itself, or the plain one of those that look like it', () => {
      const behind = standardVocabulary.behind(stitch)
      if (!behind) return
      expect([behind.takes, behind.makes, behind.width]).toEqual([
        stitch.takes,
        stitch.makes,
        stitch.width,
      ])
      const again = standardVocabulary.behind(behind)
      if (stitch.look === 'knit') expect(again).toBe(standardVocabulary.withRole('knit'))
      else expect(again).toBe(stitch)
    })

    test('is named in both sets of terms', () => {
      for (const terms of termSets) {
        const { abbr, name } = termOf(stitch, terms)
        expect(abbr).toMatch(/\S/)
        expect(name).toMatch(/[a-z]{2}/)
        if (stitch.id !== 'tuck') expect(name).not.toBe(stitch.id)
      }
    })

    test('is explained: by a sentence, or by its moves where loops change their pegs', () => {
      const movesLoops = stitch.cross !== undefined || stitch.takes > stitch.makes
      const told = stitch.role === 'knit' || movesLoops ? /^$/ : /^[A-Z].*\.$/
      for (const terms of termSets) expect(languages[terms].steps(stitch)).toMatch(told)
    })
  },
)

test('there is every cross a/b with a and b from 1 to 4, two leans and three textures', () => {
  expect(standardVocabulary.stitches.filter(({ cross }) => cross)).toHaveLength(4 * 4 * 2 * 3)
})

test('no two stitches share an abbreviation or another spelling', () => {
  for (const terms of termSets) {
    const said = standardVocabulary.stitches.flatMap((stitch) => [
      ...new Set([termOf(stitch, terms).abbr.toLowerCase(), ...languages[terms].also(stitch)]),
    ])
    const twice = said.filter((word, index) => said.indexOf(word) !== index)
    expect(twice).toEqual([])
  }
})

test('nearly every stitch has one that it is seen from behind', () => {
  const without = standardVocabulary.stitches.filter((one) => !standardVocabulary.behind(one))
  expect(without.map(({ id }) => id)).toEqual(['m1l', 'm1r', 'kfb', 'cdd', 'k3tog', 'sk2p'])
})

test('each role has one stitch, and each key', () => {
  const given = standardVocabulary.stitches.flatMap(({ role }) => role ?? [])
  expect(given.toSorted()).toEqual([...roles].sort())
  for (const role of roles) expect(standardVocabulary.withRole(role).role).toBe(role)
  const keys = standardVocabulary.stitches.flatMap(({ key }) => key ?? [])
  expect(keys).toHaveLength(new Set(keys).size)
})

test('a vocabulary of other stitches has its own widest, places and what is made of it', () => {
  const small = new Vocabulary([stitchOf('p'), stitchOf('2/1 LC')])
  expect([small.widest, standardVocabulary.widest]).toEqual([3, 8])
  expect(small.placeOf(stitchOf('2/1 LC'))).toBe(1)
  expect(small.placeOf(plain)).toBe(-1)
  expect(() => small.withRole('knit')).toThrow('No stitch of the vocabulary has the role "knit"')
  expect(small.behind(stitchOf('p'))).toBeUndefined()
  const count = ({ stitches }: Vocabulary) => ({ stitches: stitches.length })
  expect(small.made(count)).toEqual({ stitches: 2 })
  expect(small.made(count)).toBe(small.made(count))
  expect(standardVocabulary.made(count)).not.toEqual(small.made(count))
})

test('an unknown id is refused with its name', () => {
  expect(() => stitchOf('zigzag')).toThrow('There is no stitch "zigzag" among the')
})
