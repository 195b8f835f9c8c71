import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults } from 'axe-core'
import type { BenchPage } from './bench'

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** axe-core's own rules for WCAG 2.2 A and AA; its findings as short lines. */
export async function violations({ page }: BenchPage): Promise<string[]> {
  const results = await page.evaluate(async (source) => {
    // The page's policy allows no script written into it; evaluate is the debugger's.
    ;(0, eval)(source)
    const { axe } = globalThis as unknown as {
      axe: { run: (options: object) => Promise<AxeResults> }
    }
    return axe.run({
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
    })
  }, axe)
  return results.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${target.join(' ')} ${failureSummary ?? ''}`),
  )
}
