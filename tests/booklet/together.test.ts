import { expect, test } from 'vitest'
import { paperSizes } from '../../src/booklet/page/paper'
import { starterCharts } from '../../src/shelf/seeds'
import { layOut, pageText } from './read'

test('a part of one row stands on a page with the edge that is worked after it', () => {
  const mitt = starterCharts.find(({ id }) => id === 'shingle-mitt')?.pattern()
  if (!mitt) throw new Error('no mitt among the starter charts')
  let seen = 0
  // Notes of several lengths bring the part to every height of a page.
  for (const paper of paperSizes)
    for (const largePrint of [false, true])
      for (let lines = 1; lines <= 25; lines += 2) {
        const notes = Array.from({ length: lines }, () => 'Keep the yarn slack.').join('\n')
        const booklet = layOut({ ...mitt, notes }, { paper, largePrint, charts: false })
        for (const page of pageText(booklet)) {
          const parts = page.split(/ Thumb (?=Row 1:)/u).slice(1)
          for (const part of parts) {
            seen++
            expect(part).toMatch(/Bind-off|Cast-on/u)
          }
        }
      }
  expect(seen).toBeGreaterThan(50)
})

const starters = starterCharts.map(({ id, pattern }) => [id, pattern()] as const)

test('the sketch of how sheets join stands on the page of the first of them', () => {
  const sock = starterCharts.find(({ id }) => id === 'fog-watch-socks')?.pattern()
  if (!sock) throw new Error('no sock among the starter charts')
  for (const paper of ['a4', 'letter'] as const) {
    const pages = pageText(layOut(sock, { paper }))
    const sketches = pages.flatMap((page) => page.split('Join them like this:').slice(1))
    expect(sketches.length).toBeGreaterThan(2)
    for (const after of sketches) expect(after).toMatch(/^ (Heel|Foot), sheet A /u)
  }
})

test.each(starters)(
  '%s: neither the last abbreviation nor the last pictures stand alone',
  (_, pattern) => {
    for (const paper of paperSizes)
      for (const largePrint of [false, true])
        for (let lines = 1; lines <= 13; lines += 4) {
          const notes = Array.from({ length: lines }, () => 'Keep the yarn slack.').join('\n')
          const booklet = layOut({ ...pattern, notes }, { paper, largePrint, second: false })
          for (const page of pageText(booklet)) expect(page).not.toMatch(/^st\(s\)/u)
          if (largePrint || paper === 'a5') continue
          for (const { pictures } of booklet.pages) {
            const steps = pictures.filter(({ scene }) =>
              scene.title.includes('seen from the outside'),
            ).length
            expect(steps % 4, `${paper} ${lines}`).toBe(0)
          }
        }
  },
)
