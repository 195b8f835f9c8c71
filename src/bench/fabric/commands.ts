import type { Command } from '../commands/command'
import { placeCommands } from '../commands/moving'
import type { Bench } from '../state/bench.svelte'
import { rowName } from '../../words/rowName'
import { fabricOf, type FabricState } from '../state/fabric.svelte'

const allFollowed = 'Four strands are followed, the most there can be. Stop following one first.'

const notHere = (bench: Bench, { here }: FabricState): string | null =>
  here < 0 ? `${rowName(bench.work, bench.spot.row)} is not in this fabric.` : null

/** Follow the strand at the current place, or let it go. */
export const followStrand: Command = {
  id: 'fabric-follow',
  label: 'Follow this strand',
  keys: ['f'],
  reason: (bench) => {
    const fabric = fabricOf(bench)
    const absent = notHere(bench, fabric)
    if (absent) return absent
    if (fabric.waleHere < 0) return 'There is no loop here. Choose a stitch that is worked.'
    if (fabric.bundleOf(fabric.waleHere)) return null
    return fabric.hasRoom ? null : allFollowed
  },
  run: (bench) => {
    const fabric = fabricOf(bench)
    const known = fabric.bundleOf(fabric.waleHere)
    if (known) letGo(bench, known.number)
    else {
      fabric.follow([fabric.waleHere])
      tell(bench)
    }
  },
}

/** Follow the two groups of a cross, each in a tone of its own. */
export const followCross: Command = {
  id: 'fabric-follow-cross',
  label: 'Follow the strands of this cross',
  keys: ['Shift+f'],
  reason: (bench) => {
    const fabric = fabricOf(bench)
    const absent = notHere(bench, fabric)
    if (absent) return absent
    if (!fabric.crossHere) return 'There is no cross here.'
    const { front, behind } = fabric.crossHere
    if ([...front, ...behind].every((wale) => fabric.bundleOf(wale)))
      return 'The strands of this cross are followed already.'
    return fabric.hasRoom ? null : allFollowed
  },
  run: (bench) => {
    const fabric = fabricOf(bench)
    const groups = fabric.crossHere
    if (!groups) return
    fabric.follow(groups.front)
    fabric.follow(groups.behind)
    tell(bench)
  },
}

function tell(bench: Bench): void {
  const fabric = fabricOf(bench)
  const list = fabric.bundles.map((bundle) => `${bundle.number}: ${fabric.wayOf(bundle)}`)
  bench.say(`Followed: ${list.join('; ')}.`)
}

export function letGo(bench: Bench, number: number): void {
  fabricOf(bench).letGo(number)
  bench.say(`Strand ${number} is no longer followed.`)
}

const turning = (id: string, label: string, keys: readonly string[], pegs: number): Command => ({
  id,
  label,
  keys,
  reason: (bench) => (fabricOf(bench).isRing ? null : 'A flat piece is not turned.'),
  run: (bench) => fabricOf(bench).turnBy(pegs),
})

const turnLeft = turning('fabric-left', 'Turn to the left', ['[', 'Shift+ArrowLeft'], -1)
const turnRight = turning('fabric-right', 'Turn to the right', [']', 'Shift+ArrowRight'], 1)

/** Commands that run while the fabric has the focus: the place is moved, nothing is painted. */
export const fabricCommands: readonly Command[] = [
  ...placeCommands.filter(({ id }) => id.startsWith('go-')),
  turnLeft,
  turnRight,
  followStrand,
  followCross,
]
