import { readFileSync } from 'node:fs'
import { svelte } from '@sveltejs/vite-plugin-svelte'
import { svelteTesting } from '@testing-library/svelte/vite'
import type { Plugin } from 'vite'
import { defineConfig } from 'vitest/config'
import {
  findFirst,
  licencesFile,
  notShipped,
  offline,
  oneFirstScript,
  ownParts,
} from './.config/shipped.ts'

const policyTag = /<meta\s+http-equiv="Content-Security-Policy"\s+content="([^"]*)"\s*\/?>/

/** The policy is written once, in index.html; the server sends the same as a header. */
function contentSecurityPolicy(): string {
  const page = readFileSync(new URL('index.html', import.meta.url), 'utf8')
  const policy = policyTag.exec(page)?.[1]
  if (!policy) throw new Error('index.html has no Content-Security-Policy')
  return policy.trim().replace(/\s+/g, ' ')
}

/** While developing, styles are injected as they change, which the policy forbids. */
function dropPolicyInDev(): Plugin {
  return {
    name: 'drop-policy-in-dev',
    apply: (_config, { command, isPreview }) => command === 'serve' && !isPreview,
    transformIndexHtml: (html) => html.replace(policyTag, ''),
  }
}

export default defineConfig({
  // Relative addresses: the built app works in any folder of any static host.
  base: './',
  appType: 'mpa',
  publicDir: false,
  plugins: [svelte({ configFile: false }), dropPolicyInDev(), findFirst(), ownParts(), offline()],
  build: {
    outDir: '.build/app',
    emptyOutDir: true,
    // Fonts and icons stay files: the policy allows no data: addresses for fonts.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    sourcemap: false,
    license: { fileName: licencesFile },
    rolldownOptions: { external: notShipped, output: { codeSplitting: oneFirstScript } },
    // The largest chunk is the PDF writer, loaded only when a booklet is printed.
    chunkSizeWarningLimit: 1500,
  },
  preview: {
    port: 4173,
    headers: { 'Content-Security-Policy': contentSecurityPolicy() },
  },
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/bench/**', 'tests/browser/**'],
          setupFiles: ['tests/chance.ts'],
          // Nothing under test keeps a state of its own, so the modules are read once for each core.
          pool: 'threads',
          isolate: false,
          maxWorkers: 2,
          testTimeout: 60_000,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        // Picks Svelte's browser build and clears the page after each test.
        plugins: [svelteTesting()],
        test: {
          name: 'component',
          environment: 'happy-dom',
          include: ['tests/bench/**/*.test.ts'],
          setupFiles: ['tests/chance.ts', 'tests/bench/setup.ts'],
          maxWorkers: 2,
          testTimeout: 60_000,
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          environment: 'node',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/serve.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // What a page does in a moment may take longer while the other page is busy.
          expect: { poll: { timeout: 15_000 } },
          // Each worker opens one browser (tests/browser/browser.ts), and its clipboard is its own.
          pool: 'forks',
          isolate: false,
          maxWorkers: 2,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
})
