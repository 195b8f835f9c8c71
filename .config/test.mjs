// npm test: installs what is missing, runs the checks that need no tests two at a time, and then the
// tests if nothing was wrong. Its last line counts the tests: "N passed, N failed".
//
//   npm test                       everything
//   npm test -- unit               one part; several names run several parts:
//                                  lint, types, format, layers, unit, component, browser
//   npm test -- quick              lint, types, format, layers and unit; files that did not change since the
//                                  last quick run are not linted again, so what they say of changed ones may be old
//   npm test -- unit tests/loom    words with a slash or a dot go to vitest as file filters,
//                                  words with a leading dash go to it as they are

import { spawn, spawnSync } from 'node:child_process'
import { readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { installWhatIsMissing, root } from './install.mjs'

process.chdir(root)

const report = '.build/vitest.json'

/**
 * Each tool is run by this Node from its own file, so that no shell is needed. The longest comes first,
 * so that two at a time end at about the same time.
 */
const checks = {
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
  format: ['prettier/bin/prettier.cjs', '--check', '--log-level', 'warn', '.'],
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

/** Prints how a part ended; `since` is when it began. */
function ended(name, ok, since) {
  const seconds = ((Date.now() - since) / 1000).toFixed(1)
  console.log(ok ? `== ${name}: passed in ${seconds} s` : `== ${name}: FAILED`)
}

/** What a quick run remembers of the last one; "npm test" remembers nothing. */
const memory = {
  lint: ['--cache', '--cache-strategy', 'content', '--cache-location', '.build/eslint'],
  format: ['--cache', '--cache-strategy', 'content', '--cache-location', '.build/prettier'],
}
const isQuick = process.argv.includes('quick')

const commandOf = ([tool, ...toolArgs]) => [join(root, 'node_modules', tool), ...toolArgs]

/** Runs a check; what it says is printed in one piece when it has ended, so that two do not mix. */
async function check(name) {
  const since = Date.now()
  const child = spawn(
    process.execPath,
    commandOf([...checks[name], ...((isQuick && memory[name]) || [])]),
  )
  const said = []
  child.stdout.on('data', (part) => said.push(part))
  child.stderr.on('data', (part) => said.push(part))
  const status = await new Promise((resolve) => {
    child.on('error', (error) => said.push(Buffer.from(`${error.message}\n`)))
    child.on('close', resolve)
  })
  console.log(`\n== ${name}`)
  process.stdout.write(Buffer.concat(said))
  ended(name, status === 0, since)
  return status === 0
}

/** Runs checks two at a time; gives the names of those that failed. */
async function checkAll(wanted) {
  const waiting = [...wanted]
  const failed = []
  const workThrough = async () => {
    for (let name = waiting.shift(); name; name = waiting.shift())
      if (!(await check(name))) failed.push(name)
  }
  await Promise.all([workThrough(), workThrough()])
  return failed
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
  const name = wanted.join(', ')
  console.log(`\n== ${name}`)
  const since = Date.now()
  const command = commandOf([
    'vitest/vitest.mjs',
    'run',
    ...wanted.flatMap((project) => ['--project', project]),
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
    ...passedOn,
  ])
  const ok = spawnSync(process.execPath, command, { stdio: 'inherit' }).status === 0
  ended(name, ok, since)
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

const failed = await checkAll(chosen.filter((name) => name in checks))
if (failed.length > 0) {
  console.error(`npm test stopped before the tests: ${failed.join(', ')} failed.`)
  process.exit(1)
}
const wanted = projects.filter((project) => chosen.includes(project))
if (wanted.length > 0 && !runTests(wanted)) process.exit(1)
