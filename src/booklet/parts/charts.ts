import { chartBlocks } from '../chart/chart'
import { filledBy, type Block } from '../page/flow'
import type { PrintWarning } from '../page/page'
import type { Part } from '../part'

/** The charts, each under its name where there are several. */
export const charts: Part = {
  id: 'charts',
  label: 'Charts',
  leavable: { setting: 'charts', isOffered: () => true },
  isAsked: ({ settings }) => settings.charts,
  blocks: (context) => {
    const blocks: Block[] = []
    const warnings: PrintWarning[] = []
    for (const work of context.charts) {
      const filled = filledBy([...context.before, ...blocks], context.area)
      const section = context.isOneChart ? null : work.name
      const made = chartBlocks(work, { ...context, filled }, section)
      blocks.push(...made.blocks)
      warnings.push(...made.warnings)
    }
    return { blocks, warnings }
  },
}
