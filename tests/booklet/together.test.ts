import { expect, test } from 'vitest'
import { paperSizes } from '../../src/booklet/paper'
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
          const parts = page.split(/ Thumb (?=Work Thumb)/u).slice(1)
          for (const part of parts) {
            seen++
            expect(part).toMatch(/Bind-off|Cast-on/u)
          }
        }
      }
  expect(seen).toBeGreaterThan(50)
})
