import driftNetPanel from '../../seeds/drift-net-panel.json'
import fogWatchSocks from '../../seeds/fog-watch-socks.json'
import hawserBand from '../../seeds/hawser-band.json'
import hundredStepsHeel from '../../seeds/hundred-steps-heel.json'
import shingleMitt from '../../seeds/shingle-mitt.json'
import spindriftTopper from '../../seeds/spindrift-topper.json'
import { firstStarter, starter, type StarterChart } from './firstStarter'

export type { StarterChart } from './firstStarter'

/** The first one is what the app opens with. */
export const starterCharts: readonly [StarterChart, ...StarterChart[]] = [
  firstStarter,
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
