/** What the two large panes can show, the first one first. */
export const leftReadings = ['Rows', 'Fabric'] as const
export const rightReadings = ['Ring', 'Pegs'] as const
export type LeftReading = (typeof leftReadings)[number]
export type RightReading = (typeof rightReadings)[number]
