// npm test: installs what is missing, then runs every check in order and stops at the first
// that fails. Its last line counts the tests: "N passed, N failed".
//
//   npm test                       everything
//   npm test -- unit               one part; several names run several parts, in this order:
//                                  format, lint, types, layers, unit, component, browser
//   npm test -- quick              format, lint, types, layers and unit
//   npm test -- unit tests/loom    words with a slash or a dot go to vitest as file filters,
//                                  words with a leading dash go to it as they are

import { spawnSync } from 'node:child_process'
import { readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { installWhatIsMissing, root } from './install.mjs'

process.chdir(root)

const report = '.build/vitest.json'

/** Each tool is run by this Node from its own file, so that no shell is needed. */
const checks = {
  format: ['prettier/bin/prettier.cjs', '--check', '--log-level', 'warn', '.'],
  lint: [
    'eslint/bin/eslint.js',
    '--config',
    '.config/eslint.config.mjs',
    '--max-warnings',
    '0',
    '.',
  ],
  // svelte-check reads the .ts files of tsconfig.json too, so tsc would only say it all again.
  types: [
    'svelte-check/bin/svelte-check',
    '--tsconfig',
    './tsconfig.json',
    '--fail-on-warnings',
    '--output',
    'human',
  ],
  layers: [
    'dependency-cruiser/bin/dependency-cruise.mjs',
    '--config',
    '.config/dependency-cruiser.cjs',
    'src',
  ],
}
const projects = ['unit', 'component', 'browser']
const names = [...Object.keys(checks), ...projects]

/** Names for several parts. */
const groups = { quick: [...Object.keys(checks), 'unit'] }

const args = process.argv.slice(2).flatMap((arg) => groups[arg] ?? [arg])
const passedOn = args.filter((arg) => /[/.]/.test(arg) || arg.startsWith('-'))
const asked = args.filter((arg) => !passedOn.includes(arg))
const unknown = asked.filter((arg) => !names.includes(arg))
if (unknown.length > 0) {
  console.error(
    `No part is called "${unknown[0]}". The parts are: ${[...names, ...Object.keys(groups)].join(', ')}.`,
  )
  process.exit(1)
}
const chosen = names.filter((name) => asked.length === 0 || asked.includes(name))

function run(name, [tool, ...toolArgs]) {
  console.log(`\n== ${name}`)
  const started = Date.now()
  const { status } = spawnSync(process.execPath, [join(root, 'node_modules', tool), ...toolArgs], {
    stdio: 'inherit',
  })
  const seconds = ((Date.now() - started) / 1000).toFixed(1)
  console.log(status === 0 ? `== ${name}: passed in ${seconds} s` : `== ${name}: FAILED`)
  return status === 0
}

function readReport() {
  try {
    return JSON.parse(readFileSync(report, 'utf8'))
  } catch {
    return null
  }
}

/** Runs the vitest projects together and prints the closing line. */
function runTests(wanted) {
  rmSync(report, { force: true })
  const ok = run(wanted.join(', '), [
    'vitest/vitest.mjs',
    'run',
    ...wanted.flatMap((project) => ['--project', project]),
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
    ...passedOn,
  ])
  const counts = readReport()
  if (!counts) {
    console.error('npm test failed: vitest wrote no report.')
    return false
  }
  const passed = counts.numPassedTests
  // A file that could not be loaded counts as one failure: it has no tests to count.
  const broken = counts.testResults.filter(
    (file) => file.status === 'failed' && file.assertionResults.length === 0,
  ).length
  const failed = counts.numFailedTests + broken
  const skipped = counts.numPendingTests + counts.numTodoTests
  if (!ok) console.error('npm test failed in vitest.')
  if (passed + failed === 0) console.error('npm test failed: no test ran.')
  console.log(`\n${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`)
  return ok && passed > 0
}

installWhatIsMissing()

for (const name of chosen) {
  if (name in checks && !run(name, checks[name])) {
    console.error(`npm test stopped at its first failure: ${name}.`)
    process.exit(1)
  }
}
const wanted = projects.filter((project) => chosen.includes(project))
if (wanted.length > 0 && !runTests(wanted)) process.exit(1)
