import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults } from 'axe-core'
import type { BenchPage } from './bench'

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']
const ofColours = { type: 'rule', values: ['color-contrast', 'link-in-text-block'] }

/**
 * axe-core's own rules for WCAG 2.2 A and AA, by light and by dark; its findings as short lines. By dark
 * only colours differ, so only the rules of colours are asked again.
 */
export async function violations(bench: Pick<BenchPage, 'page'>): Promise<string[]> {
  await bench.page.emulateMedia({ colorScheme: 'dark' })
  const dark = await found(bench, ofColours)
  await bench.page.emulateMedia({ colorScheme: 'light' })
  const light = await found(bench, rules)
  return [...light, ...dark.map((line) => `in dark, ${line}`)]
}

async function found({ page }: Pick<BenchPage, 'page'>, runOnly: object): Promise<string[]> {
  const results = await page.evaluate(
    async ([source, runOnly]) => {
      // The page's policy allows no script written into it; evaluate is the debugger's.
      ;(0, eval)(source)
      const { axe } = globalThis as unknown as {
        axe: { run: (options: object) => Promise<AxeResults> }
      }
      return axe.run({ runOnly })
    },
    [axe, runOnly] as const,
  )
  return results.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${target.join(' ')} ${failureSummary ?? ''}`),
  )
}
