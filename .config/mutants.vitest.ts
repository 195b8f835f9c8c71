/** The unit tests as mutants are tried with: properties in few cases, since each mutant asks anew. */
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  resolve: {
    alias: [
      { find: /^fast-check$/, replacement: fileURLToPath(new URL('fewCases.ts', import.meta.url)) },
    ],
  },
  test: {
    environment: 'node',
    include: ['tests/**/*.test.ts'],
    exclude: [
      'tests/bench/**',
      'tests/browser/**',
      'tests/cli/**',
      'tests/fuzz/**',
      'tests/shelf/**',
      // These count how many of their cases said something, and say so of few.
      'tests/checks/cross-mends.test.ts',
      'tests/checks/piece/edges.test.ts',
      'tests/words/read/laws.test.ts',
      'tests/words/read/wholePiece.test.ts',
    ],
    testTimeout: 60_000,
  },
})
