import type { Pattern } from '../pattern/pattern'
import driftNetPanel from '../../seeds/drift-net-panel.json'
import fogWatchSocks from '../../seeds/fog-watch-socks.json'
import hawserBand from '../../seeds/hawser-band.json'
import hundredStepsHeel from '../../seeds/hundred-steps-heel.json'
import lampRoomCuff from '../../seeds/lamp-room-cuff.json'
import shingleMitt from '../../seeds/shingle-mitt.json'
import spindriftTopper from '../../seeds/spindrift-topper.json'
import { readFile } from './format'

/** A chart that ships with the app, from the light of Tarrow Skerry. */
export interface StarterChart {
  /** The name of its file in seeds/. */
  readonly id: string
  readonly title: string
  /** One line for the list: what it is, on which loom. */
  readonly about: string
  /** Reads the file; the same pattern each time. */
  readonly pattern: () => Pattern
}

function starter(id: string, file: { title: string }, about: string): StarterChart {
  let known: Pattern | undefined
  const pattern = (): Pattern => {
    if (known) return known
    const result = readFile(JSON.stringify(file))
    if (!result.ok) throw new Error(`seeds/${id}.json: ${result.message}`)
    return (known = result.pattern)
  }
  return { id, title: file.title, about, pattern }
}

/** The first one is what the app opens with. */
export const starterCharts: readonly [StarterChart, ...StarterChart[]] = [
  starter('lamp-room-cuff', lampRoomCuff, 'Wrist cuff of rib and ropes; round loom of 36 pegs'),
  starter('drift-net-panel', driftNetPanel, 'Flat panel of moss lozenges; rake of 52 pegs'),
  starter(
    'spindrift-topper',
    spindriftTopper,
    'Boot topper of lace and purl; round loom of 48 pegs',
  ),
  starter(
    'hundred-steps-heel',
    hundredStepsHeel,
    'Heel in German short rows; round loom of 40 pegs',
  ),
  starter('hawser-band', hawserBand, 'Headband of plaits and bobbles; round loom of 81 pegs'),
  starter(
    'fog-watch-socks',
    fogWatchSocks,
    'A pair of socks, cast-on to toe; round loom of 48 pegs',
  ),
  starter(
    'shingle-mitt',
    shingleMitt,
    'Fingerless mitt of slips and tucks, with a thumb; round loom of 32 pegs',
  ),
]
