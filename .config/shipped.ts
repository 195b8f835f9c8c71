/** What the built app is shipped with besides its scripts: licences, icon, and the worker that keeps it for use without a network. */
import { readdirSync, readFileSync } from 'node:fs'
import type { Plugin } from 'vite'
import { VitePWA, type VitePWAOptions } from 'vite-plugin-pwa'

const root = new URL('../', import.meta.url)
const text = (path: string): string => readFileSync(new URL(path, root), 'utf8').trim()

/** Parts of the PDF library that no booklet uses (shots of pages, sanitizer, SVG on a canvas). They are not shipped. */
export const notShipped = ['html2canvas', 'dompurify', 'canvg']

export const licencesFile = 'licences.md'

/**
 * All that the first picture of the bench needs is one script: in many small ones it would be larger by a sixth.
 * What is imported only when it is wanted is divided by the bundler.
 */
const first = new Set<string>()
export const oneFirstScript = { groups: [{ name: 'first', test: (id: string) => first.has(id) }] }
export function findFirst(): Plugin {
  return {
    name: 'find-first',
    apply: 'build',
    buildEnd() {
      const add = (id: string) => {
        if (first.has(id)) return
        first.add(id)
        this.getModuleInfo(id)?.importedIds.forEach(add)
      }
      for (const id of this.getModuleIds()) if (this.getModuleInfo(id)?.isEntry) add(id)
    },
  }
}

/** The worker is made apart from the app, so the packages in it are named here. */
const inWorker = ['workbox-core', 'workbox-precaching', 'workbox-routing', 'workbox-strategies']

/** Its own licence is that of the package; the font in it has another. */
const font = '@expo-google-fonts/atkinson-hyperlegible'

function licenceOf(name: string): string {
  const folder = `node_modules/${name}/`
  const { version, license } = JSON.parse(text(`${folder}package.json`)) as Record<string, string>
  const file = readdirSync(new URL(folder, root)).find((one) => /^licen[cs]e/i.test(one))
  return [`## ${name} - ${version} (${license})`, file ? text(folder + file) : ''].join('\n\n')
}

/** Completes the list of licences that the bundler writes of the packages in the app. */
export function ownParts(): Plugin {
  return {
    name: 'own-parts',
    apply: 'build',
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const listed = bundle[licencesFile]
        if (listed?.type !== 'asset') this.error(`There is no ${licencesFile} to complete`)
        const [, ...packages] = String(listed.source).split(/^(?=## )/m)
        const ofFont = packages.findIndex((one) => one.includes(font))
        if (ofFont < 0) this.error(`${font} is not listed among the packages`)
        packages[ofFont] += `\n${text(`node_modules/${font}/LICENSE_FONT`)}\n`
        const own = `# Licences\n\nWhat Pegwright is made of, and under which terms.\n\n## Pegwright\n\n${text('LICENSE')}\n`
        listed.source = [own, ...packages, ...inWorker.map((name) => `${licenceOf(name)}\n`)].join(
          '\n',
        )
        this.emitFile({ type: 'asset', fileName: 'icon.svg', source: text('src/bench/icon.svg') })
      },
    },
  }
}

/**
 * The app can be installed, and works without a network from the second start. A new version is
 * fetched whole and waits: `src/bench/offline` takes it when the app starts and no window uses the old one.
 */
const withoutNetwork: Partial<VitePWAOptions> = {
  filename: 'worker.js',
  registerType: 'prompt',
  injectRegister: null,
  manifest: {
    name: 'Pegwright',
    short_name: 'Pegwright',
    description: 'Peg charts, words and booklets for loom knitters',
    background_color: '#f2f0ea',
    theme_color: '#f2f0ea',
    icons: [{ src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' }],
  },
  workbox: {
    globPatterns: ['**/*'],
    dontCacheBustURLsMatching: /^assets\//,
    inlineWorkboxRuntime: true,
    clientsClaim: true,
    cleanupOutdatedCaches: true,
  },
}

export const offline = () => VitePWA(withoutNetwork)
