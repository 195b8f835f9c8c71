import { expect, test } from 'vitest'
import { trayGroups, trayItems } from '../../src/bench/state/tray'
import { readings } from '../../src/bench/state/panes.svelte'
import { smallBench } from './render'

test('whatever stands at the right, no reading is offered twice', () => {
  const { panes } = smallBench()
  for (const name of readings) {
    panes.show(name)
    expect(new Set(panes.readings).size).toBe(panes.readings.length)
    expect(panes.rights).toContain(panes.right)
  }
})

test('a rake has no ring to be shown', () => {
  const bench = smallBench()
  bench.panes.show('Ring')
  expect(bench.panes.right).toBe('Ring')
  bench.apply('Rake', (p) => ({ ...p, loom: { ...p.loom, shape: 'bar' } }))
  expect(bench.panes.rights).not.toContain('Ring')
  expect(bench.panes.right).toBe('Fabric')
})

test('the groups of the tray hold each stitch once', () => {
  const bench = smallBench()
  const items = trayItems(bench.pattern, bench.stitch)
  const grouped = trayGroups(items).flatMap((group) => group.items)
  expect(grouped).toHaveLength(items.length)
  expect(new Set(grouped)).toEqual(new Set(items))
})
