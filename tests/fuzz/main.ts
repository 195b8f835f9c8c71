/**
 * `npm run fuzz`: spoilt texts and pattern files, in a process that may end. None may throw, end its
 * process, or say what is no number, and nothing that a person waits for (reading, charting, a
 * repair, a drawing) may take longer than a second of the processor.
 *
 *   npm run fuzz                          100,000 texts and 100,000 files of seed 1
 *   npm run fuzz -- --seed 7              others
 *   npm run fuzz -- --count 5000 texts    fewer, and only texts
 *   npm run fuzz -- --seed 7 --from 123 --count 1 --show texts    one case again, with its input
 */
import { fork } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { caseOf, kinds, type Kind } from './cases'
import type { Report } from './child'

/** Milliseconds of the processor that one thing may take. */
const limit = 1000
/** Without a new case for so long the process is ended: seconds by the clock. */
const patience = 120
/** After so many failures it is not worth going on. */
const mostFailures = 20

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seed: { type: 'string', default: '1' },
    count: { type: 'string', default: '100000' },
    from: { type: 'string', default: '0' },
    show: { type: 'boolean', default: false },
  },
})
const [seed, count, first] = [values.seed, values.count, values.from].map(Number) as [
  number,
  number,
  number,
]
const wanted = kinds.filter((kind) => positionals.length === 0 || positionals.includes(kind))
if (wanted.length === 0 || ![seed, count, first].every(Number.isSafeInteger)) {
  console.error('Say texts, files or nothing, and whole numbers for --seed, --count and --from.')
  process.exit(2)
}

interface Failure {
  readonly index: number
  readonly reason: string
}

const folder = mkdtempSync(join(tmpdir(), 'pegwright-fuzz-'))
const place = join(folder, 'now')

/** Up to the end, or up to the case that ended the process. */
function runFrom(
  kind: Kind,
  from: number,
  hear: (report: Report) => void,
): Promise<{ readonly ended: number | null; readonly why: string }> {
  return new Promise((resolve) => {
    const child = fork(
      fileURLToPath(new URL('child.ts', import.meta.url)),
      [kind, seed, from, first + count - from, place, limit].map(String),
      {
        execArgv: [...process.execArgv, '--max-old-space-size=2048'],
        stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
      },
    )
    let [errors, isDone, isHung] = ['', false, false]
    child.stderr
      ?.setEncoding('utf8')
      .on('data', (text: string) => (errors = (errors + text).slice(-4000)))
    child.on('message', (report: Report) => {
      if (report.what === 'done') isDone = true
      hear(report)
    })
    let [last, since] = ['', Date.now()]
    const watch = setInterval(() => {
      const now = noted()
      if (now !== last) [last, since] = [now, Date.now()]
      else if (Date.now() - since > patience * 1000) {
        isHung = true
        child.kill('SIGKILL')
      }
    }, 1000)
    child.on('close', () => {
      clearInterval(watch)
      const why = isHung
        ? `no end after ${patience} s`
        : `it ended the process: ${errors.trim().slice(0, 300)}`
      resolve({ ended: isDone ? null : Number(noted()), why })
    })
  })
}

function noted(): string {
  try {
    return readFileSync(place, 'utf8').trim()
  } catch {
    return ''
  }
}

const shortened = (text: string): string =>
  text.length > 600 && !values.show ? `${text.slice(0, 600)} ... (${text.length} characters)` : text

function show(kind: Kind, { index, reason }: Failure): void {
  const { input, settings } = caseOf(kind, seed, index)
  console.log(`\n${kind} ${index}: ${reason.split('\n').slice(0, 6).join('\n')}`)
  console.log(`npm run fuzz -- --seed ${seed} --from ${index} --count 1 --show ${kind} ${settings}`)
  console.log(shortened(input))
}

async function fuzz(kind: Kind): Promise<number> {
  const started = Date.now()
  const failures: Failure[] = []
  let [used, worst, slowest] = [0, 0, first]
  const fail = (failure: Failure): void => {
    failures.push(failure)
    show(kind, failure)
  }
  const hear = (report: Report): void => {
    if (report.what === 'failed') fail(report)
    else if (report.what === 'slow')
      fail({ index: report.index, reason: `${report.step} took ${Math.round(report.time)} ms` })
    else {
      used += report.used
      if (report.time > worst) [worst, slowest] = [report.time, report.slowest]
    }
  }
  let from = first
  while (from < first + count && failures.length < mostFailures) {
    const { ended, why } = await runFrom(kind, from, hear)
    if (ended === null) break
    fail({ index: ended, reason: why })
    from = ended + 1
  }
  if (values.show && failures.length === 0) console.log(shortened(caseOf(kind, seed, first).input))
  const seconds = Math.round((Date.now() - started) / 1000)
  console.log(
    `${kind}: ${count} from seed ${seed} in ${seconds} s, ${used} of use, ${failures.length} failed; the slowest took ${Math.round(worst)} ms (number ${slowest}).`,
  )
  return failures.length
}

let failed = 0
for (const kind of wanted) failed += await fuzz(kind)
rmSync(folder, { recursive: true, force: true })
process.exitCode = failed > 0 ? 1 : 0
