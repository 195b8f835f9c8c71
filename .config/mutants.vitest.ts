/** The unit tests as mutants are tried with: properties in few cases, since each mutant asks anew. */
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'
import { BaseSequencer, type TestSpecification } from 'vitest/node'

/** The folders whose tests are asked: MUTANTS_TESTS=loom,pattern asks fewer. */
const folders = (process.env['MUTANTS_TESTS'] ?? '*').split(',')

/** Quick files first, since the first red test ends a mutant; files of long properties last. */
const rank = ({ moduleId }: TestSpecification): number =>
  /laws|turn-round|pair|trace|spoilt/.test(moduleId)
    ? 2
    : /tests\/(loom|stitches|published)\//.test(moduleId)
      ? 0
      : 1

class QuickFirst extends BaseSequencer {
  override sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return Promise.resolve(files.toSorted((a, b) => rank(a) - rank(b)))
  }
}

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  resolve: {
    alias: [
      { find: /^fast-check$/, replacement: fileURLToPath(new URL('fewCases.ts', import.meta.url)) },
    ],
  },
  test: {
    environment: 'node',
    include: folders.map((folder) => `tests/${folder}/**/*.test.ts`),
    exclude: [
      'tests/bench/**',
      'tests/browser/**',
      'tests/cli/**',
      'tests/fuzz/**',
      'tests/shelf/**',
      'tests/drawing/**',
      'tests/booklet/**',
      // Long, and they hold only that nothing throws or that units stay the same.
      'tests/words/read/fuzz.test.ts',
      'tests/words/units.test.ts',
      'tests/pattern/generate/laws.test.ts',
      // These count how many of their cases said something, and say so of few.
      'tests/pattern/edits/turned-piece.test.ts',
      'tests/checks/cross-mends.test.ts',
      'tests/checks/piece/edges.test.ts',
      'tests/wholePiece.test.ts',
      'tests/words/read/laws.test.ts',
      'tests/words/read/wholePiece.test.ts',
    ],
    // A mutant that takes too long is ended by Stryker.
    testTimeout: 600_000,
    pool: 'threads',
    isolate: false,
    sequence: { sequencer: QuickFirst },
  },
})
