import {
  leftReadings,
  rightReadings,
  type LeftReading,
  type RightReading,
} from '../charts/readings'

/** All that a phone shows, one at a time. */
export const readings = [
  ...leftReadings,
  ...rightReadings,
  'Words',
  'Steps',
  'Findings',
  'Here',
] as const
export type ReadingName = (typeof readings)[number]

/** What the panes of the bench show. */
export class Panes {
  left: LeftReading = $state('Rows')
  right: RightReading = $state('Ring')
  /** On a phone, the one reading that is shown. */
  reading: ReadingName = $state('Rows')
  piece: boolean = $state(matchMedia('(width >= 1400px)').matches)

  show(name: ReadingName): void {
    this.reading = name
    if (name === 'Rows' || name === 'Fabric') this.left = name
    else if (name === 'Ring' || name === 'Pegs') this.right = name
  }
}
