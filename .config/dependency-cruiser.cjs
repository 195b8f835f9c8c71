// The layers of src: which folder may import which.

const below = {
  loom: [],
  stitches: ['loom'],
  languages: ['loom', 'stitches'],
  pattern: ['loom', 'stitches', 'languages'],
  checks: ['loom', 'stitches', 'languages', 'pattern'],
  words: ['loom', 'stitches', 'languages', 'pattern'],
  drawing: ['loom', 'stitches', 'languages', 'pattern'],
  turning: ['loom', 'stitches', 'languages', 'pattern', 'checks', 'words'],
  booklet: ['loom', 'stitches', 'languages', 'pattern', 'checks', 'words', 'drawing'],
  shelf: ['loom', 'stitches', 'languages', 'pattern'],
  bench: [
    'loom',
    'stitches',
    'languages',
    'pattern',
    'checks',
    'words',
    'drawing',
    'turning',
    'booklet',
    'shelf',
  ],
  cli: [
    'loom',
    'stitches',
    'languages',
    'pattern',
    'checks',
    'words',
    'drawing',
    'booklet',
    'shelf',
  ],
}
const folders = Object.keys(below)

const layers = folders.map((folder) => ({
  name: `layer-${folder}`,
  comment: `src/${folder} may import only from ${['itself', ...below[folder]].join(', ')}`,
  severity: 'error',
  from: { path: `^src/${folder}/` },
  to: { path: '^(src|tests)/', pathNot: `^src/(${[folder, ...below[folder]].join('|')})/` },
}))

module.exports = {
  forbidden: [
    ...layers,
    {
      name: 'known-folder',
      comment: 'Every source lies in one of the folders named here',
      severity: 'error',
      from: { path: '^src/', pathNot: `^src/(${folders.join('|')})/` },
      to: {},
    },
    {
      name: 'any-language',
      comment:
        'What is printed speaks any language: only what reads and compares English words, or names rows on the screen, knows English',
      severity: 'error',
      from: {
        path: '^src/(words|drawing|booklet)/',
        pathNot: '^src/words/(read/|compare/|rowName)',
      },
      to: { path: '^src/languages/english/' },
    },
    {
      name: 'no-circle',
      comment: 'Files must not import each other in a circle',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'plain-core',
      comment: 'The core draws and prints without Svelte and without the PDF writer',
      severity: 'error',
      from: {
        path: '^src/((loom|stitches|languages|pattern|checks|words|drawing|turning|booklet)/|shelf/format)',
        pathNot: '^src/booklet/pdf\\.ts$',
      },
      to: { path: '(^|/)(svelte|jspdf|svg2pdf\\.js)(/|$)' },
    },
    {
      name: 'node-only-in-cli',
      comment: 'Only the command line runs in Node alone; all the rest also runs in a browser',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/cli/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'no-development-package',
      comment: 'Sources import only packages that package.json lists as dependencies',
      severity: 'error',
      from: { path: '^src/' },
      to: { dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown'] },
    },
    {
      name: 'resolvable',
      comment: 'Every import must lead somewhere',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true, pathNot: '\\?(url|raw|inline|worker)$' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsConfig: { fileName: 'tsconfig.json' },
    // Imports of types count as well.
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['svelte', 'browser', 'import', 'default', 'types'],
      extensions: ['.ts', '.svelte', '.svelte.ts', '.js', '.mjs', '.json'],
      mainFields: ['module', 'main', 'types'],
    },
  },
}
