import { withChart } from '../../src/pattern/edits/chart'
import { chartOn, namedOn } from '../../src/pattern/charts'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { setWords } from '../../src/pattern/edits/words'
import { limits, newPattern, type Pattern } from '../../src/pattern/pattern'
import { fileName, readFile, writeFile } from '../../src/shelf/format'
import { standardVocabulary, stitchOf } from '../../src/stitches/vocabulary'
import { arbitraryPattern, cellsOf } from '../arbitraries'
import { cellsFrom } from '../cells'

const otherFile = 'This is not a Pegwright file. Choose a file that was saved in Pegwright.'
const messageOf = (text: string): string => {
  const result = readFile(text)
  return result.ok ? 'read' : result.message
}
const written = writeFile(newPattern(36, 12))
const changed = (from: string | RegExp, to: string): string => {
  const text = written.replace(from, to)
  expect(text).not.toBe(written)
  return text
}
/** The file with its rows' texts replaced, from the first row on. */
const withRows = (...rows: string[]): string => {
  const file = JSON.parse(written) as { charts: [{ rows: { stitches: string }[] }] }
  rows.forEach((stitches, index) => (file.charts[0].rows[index] = { stitches }))
  return JSON.stringify(file)
}

/** The file with a second chart of one row. */
const withSecond = (change: object): string => {
  const file = JSON.parse(written) as { charts: object[] }
  const [first] = file.charts
  file.charts.push({ ...first, rows: [{ stitches: 'k' }], ...change })
  return JSON.stringify(file)
}

describe('round trip', () => {
  test('read(write(pattern)) is the pattern, cut stitches and all characters included', () => {
    fc.assert(
      fc.property(arbitraryPattern({ cut: true, times: limits.times.most }), (pattern) => {
        expect(readFile(writeFile(pattern))).toStrictEqual({ ok: true, pattern })
      }),
      { numRuns: 300 },
    )
  })

  test('writing again gives the same text, in whatever order the keys were made', () => {
    const turned = (value: unknown): unknown =>
      Array.isArray(value)
        ? value.map(turned)
        : typeof value === 'object' && value !== null
          ? Object.fromEntries(
              Object.entries(value)
                .reverse()
                .map(([key, item]) => [key, turned(item)]),
            )
          : value
    fc.assert(
      fc.property(arbitraryPattern({ cut: true, times: limits.times.most }), (pattern) => {
        expect(writeFile(turned(pattern) as Pattern)).toBe(writeFile(pattern))
      }),
    )
  })

  test('the largest chart: 400 columns, 600 rows', () => {
    const cells = standardVocabulary.stitches.flatMap(cellsOf).slice(0, 399)
    const row = { cells: cellsFrom([...cells, 'k']), run: null, heading: null, end: 'on' as const }
    const pattern = newPattern(400, 600)
    const large = withChart(pattern, { rows: chartOn(pattern).rows.map(() => row) })
    expect(readFile(writeFile(large))).toStrictEqual({ ok: true, pattern: large })
  })

  test('one row changes one line', () => {
    const before = newPattern(36, 12)
    const rows = chartOn(before).rows.map((row, index) =>
      index === 4 ? { ...row, cells: row.cells.with(7, stitchOf('p')) } : row,
    )
    const lines = written.split('\n')
    const after = writeFile(withChart(before, { rows })).split('\n')
    expect(after.length).toBe(lines.length)
    expect(after.filter((line, index) => line !== lines[index])).toEqual([
      '        { "stitches": "k*7 p k*28" },',
    ])
  })

  test('own words are kept letter by letter, one line a line', () => {
    const words = 'Cuff\n\nRnd 1: k2,  p2 to end.\r\n"As Rnd 1" – twice.\n'
    const text = writeFile(setWords(newPattern(36, 12), words))
    expect(text).toContain(
      '        "Rnd 1: k2,  p2 to end.\\r",\n        "\\"As Rnd 1\\" – twice.",\n',
    )
    const result = readFile(text)
    expect(result.ok && namedOn(result.pattern).words).toBe(words)
  })

  test('a byte order mark and Windows line ends are no fault', () => {
    expect(messageOf(`\uFEFF${written.replaceAll('\n', '\r\n')}`)).toBe('read')
  })
})

describe('messages', () => {
  const cases: [what: string, text: () => string, message: string][] = [
    ['empty', () => '', otherFile],
    ['other JSON', () => '{"title": "A song"}', otherFile],
    ['a number only', () => '7', otherFile],
    [
      'version in words',
      () => changed('"pegwright": 5', '"pegwright": "one"'),
      'This file does not say which version it is: "pegwright" must be a whole number from 1 to 5.',
    ],
    [
      'newer',
      () => changed('"pegwright": 5', '"pegwright": 6'),
      'A newer Pegwright saved this file: it is of version 6, and this Pegwright opens versions 1 to 5. Open it with the newer one.',
    ],
    [
      'broken off',
      () => written.slice(0, written.indexOf('"pitch"')),
      'This Pegwright file is damaged at line 9, column 5: the file ends where a name is expected. Open an earlier copy, or mend that line in a text editor.',
    ],
    [
      'twice',
      () => changed('"designer"', '"title"'),
      'This Pegwright file is damaged at line 4, column 3: "title" is given twice. Open an earlier copy, or mend that line in a text editor.',
    ],
    [
      'unknown key',
      () => changed('"pegs": 36', '"pegs": 36, "colour": "red"'),
      '"loom.colour" is unknown to this Pegwright, and saving would lose it. Remove it from the file, or open the file with the Pegwright that saved it.',
    ],
    [
      'a key of every object',
      () => changed('"pegs": 36', '"pegs": 36, "__proto__": {}'),
      '"loom.__proto__" is unknown to this Pegwright, and saving would lose it. Remove it from the file, or open the file with the Pegwright that saved it.',
    ],
    ['missing', () => changed(/ *"pegs": 36,\n/, ''), '"loom.pegs" is missing.'],
    [
      'a step of no kind',
      () => changed('"step": "cast on", ', ''),
      'In step 1, "step" is missing.',
    ],
    [
      'too few pegs',
      () => changed('"pegs": 36', '"pegs": 2'),
      '"loom.pegs" is 2; it must be a whole number from 3 to 400.',
    ],
    [
      'pitch beyond numbers',
      () => changed('"pitch": 9.5', '"pitch": 1e999'),
      '"loom.pitch" is too large a number; it must be a number from 3 to 40.',
    ],
    [
      'shape',
      () => changed('"ring"', '"moebius"'),
      '"loom.shape" is "moebius"; it must be "ring" or "bar".',
    ],
    [
      'loom',
      () => changed(/"loom": \{[^}]*\}/, '"loom": 36'),
      '"loom" is 36; it must be an object with shape, pegs, pitch, direction.',
    ],
    [
      'gauge',
      () => changed('"gauge": null', '"gauge": { "stitches": 0, "rows": 30 }'),
      '"gauge.stitches" is 0; it must be a number from 1 to 100.',
    ],
    [
      'a list item',
      () => changed('"off": []', '"off": ["float", 5]'),
      'Item 2 of "checks.off" is 5; it must be a text in quotes.',
    ],
    [
      'background',
      () => changed('"background": "k"', '"background": "2/2 LC"'),
      '"style.background" is "2/2 LC"; it must be a stitch of one column, such as "k".',
    ],
    ['short row', () => withRows('k*36', 'k*35'), 'Row 2 has 35 columns; the chart has 36.'],
    ['one column', () => withRows('k'), 'Row 1 has 1 column; the chart has 36.'],
    ['no column', () => withRows(''), 'Row 1 has 0 columns; the chart has 36.'],
    [
      'endless row',
      () => withRows('k*36', 'k*999'),
      'Row 2, column 1: there are more than 400 columns.',
    ],
    ['unknown stitch', () => withRows('k*4 kk*32'), 'Row 1, column 5: there is no stitch "kk".'],
    [
      'more of one stitch than any chart has',
      () => withRows('k*4 p*32', 'k*5000'),
      'Row 2, column 1: "k*5000" is more than the 400 columns that a chart can have.',
    ],
    [
      'no token',
      () => withRows('k*4 p*x'),
      'Row 1, column 5: "p*x" is not a stitch with a count, such as k*4.',
    ],
    [
      'cut too long',
      () => withRows('2/2_LC:4 k*32'),
      'Row 1, column 1: "2/2_LC" has 4 columns and cannot be cut to 4.',
    ],
    [
      'row item',
      () => changed('{ "stitches": "k*36" }', '"k*36"'),
      'Row 1 is "k*36"; it must be an object with stitches, pegs, heading, end.',
    ],
    [
      'heading',
      () => changed('"k*36" }', '"k*36", "heading": "up" }'),
      'In row 1, "heading" is "up"; it must be "forward" or "back".',
    ],
    [
      'row run',
      () => changed('"k*36" }', '"k*36", "pegs": { "from": 9, "to": 2 } }'),
      'Row 1 runs from peg 9 to peg 2, which stands before it.',
    ],
    [
      'peg number',
      () => changed('"k*36" }', '"k*36", "pegs": { "from": 0, "to": 2 } }'),
      'In row 1, "pegs.from" is 0; it must be a whole number from 1 to 400.',
    ],
    [
      'repeat',
      () => changed('"repeat": null', '"repeat": { "from": 5, "to": 40 }'),
      'The repeat runs to column 40; there are only 36 columns.',
    ],
    [
      'band',
      () => changed('"bands": []', '"bands": [{ "from": 9, "to": 13, "times": 2 }]'),
      'Band 1 runs to row 13; there are only 12 rows.',
    ],
    [
      'band times',
      () => changed('"bands": []', '"bands": [{ "from": 1, "to": 2, "times": 1 }]'),
      'In band 1, "times" is 1; it must be a whole number from 2 to 99.',
    ],
    [
      'bands overlap',
      () =>
        changed(
          '"bands": []',
          '"bands": [{ "from": 1, "to": 4, "times": 2 }, { "from": 4, "to": 6, "times": 2 }]',
        ),
      'Band 2 starts at row 4, but band 1 goes to row 4; bands must follow one another.',
    ],
    [
      'words',
      () => changed('"words": null', '"words": ["Rnd 1: k", 2]'),
      'Item 2 of "words" is 2; it must be a text in quotes.',
    ],
    [
      'endless words',
      () =>
        changed('"words": null', `"words": ["${'k'.repeat(600_000)}", "${'p'.repeat(600_000)}"]`),
      '"words" has 1200001 characters; it can have up to 1000000.',
    ],
    [
      'a step of a chart that is not there',
      () => changed('"chart": "Chart"', '"chart": "Thumb"'),
      'Step 2 works chart "Thumb", which is not in the file.',
    ],
    [
      'two charts of one name',
      () => withSecond({ name: 'Chart', columns: 1 }),
      'Two charts are called "Chart"; names must differ.',
    ],
    [
      'another chart',
      () => withSecond({ name: 'Thumb', columns: 2 }),
      'In the chart "Thumb": Row 1 has 1 column; the chart has 2.',
    ],
    [
      'a key of a row of another chart',
      () => withSecond({ name: 'Thumb', columns: 1, rows: [{ stitches: 'k', end: 'off' }] }),
      'In chart 2, row 1, "end" is "off"; it must be "on" or "German turn" or "wrap".',
    ],
    [
      'plain rows of a stitch that is not plain',
      () =>
        changed(
          '"how": "basic" }',
          '"how": "basic" }, { "step": "plain", "stitch": "yo", "rows": 2 }',
        ),
      'Step 4 works rows of "yo"; it must be a stitch that makes one loop of one, such as "k".',
    ],
    [
      'plain rows of no length',
      () => changed('"how": "basic" }', '"how": "basic" }, { "step": "plain", "stitch": "k" }'),
      'Step 4 needs either "rows" or "mm".',
    ],
    [
      'a step that is none',
      () => changed('"step": "cast on"', '"step": "felt"'),
      'In step 1, "step" is "felt"; it must be a step: "cast on", "chart", "plain", "pegs", "note" or "bind off".',
    ],
    [
      'no rows',
      () => changed(/"rows": \[[^\]]*\]/, '"rows": []'),
      '"rows" is a list of 0; it must be a list of 1 to 600 rows.',
    ],
  ]
  test.each(cases)('%s', (_, text, message) => {
    expect(messageOf(text())).toBe(message)
  })
})

describe('nothing throws', () => {
  const isAnswer = (text: string) => {
    const result = readFile(text)
    if (result.ok) expect(readFile(writeFile(result.pattern))).toStrictEqual(result)
    else expect(result.message).toMatch(/\S.*\.$/s)
  }

  test('any text', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary' }), isAnswer), { numRuns: 500 })
  })

  test('any JSON, also with our version', () => {
    fc.assert(
      fc.property(fc.json(), fc.dictionary(fc.string(), fc.jsonValue()), (json, keys) => {
        isAnswer(json)
        isAnswer(JSON.stringify({ ...keys, pegwright: 4 }))
      }),
      { numRuns: 300 },
    )
  })

  test('a file with some of its text changed', () => {
    const splice = fc.tuple(fc.nat(), fc.nat(12), fc.oneof(fc.string(), fc.constantFrom('"', '9')))
    fc.assert(
      fc.property(
        arbitraryPattern({ times: limits.times.most }),
        fc.array(splice, { minLength: 1 }),
        (pattern, splices) => {
          let text = writeFile(pattern)
          for (const [at, length, put] of splices) {
            const from = at % (text.length + 1)
            text = text.slice(0, from) + put + text.slice(from + length)
          }
          isAnswer(text)
        },
      ),
      { numRuns: 300 },
    )
  })

  test('a file with any one value replaced by another', () => {
    type Node = Record<string, unknown>
    const slotsOf = (node: Node): [Node, string][] =>
      Object.keys(node).flatMap((key) => {
        const child = node[key]
        return typeof child === 'object' && child !== null
          ? [[node, key] as [Node, string], ...slotsOf(child as Node)]
          : [[node, key] as [Node, string]]
      })
    const odd = fc.oneof(
      fc.jsonValue(),
      fc.constantFrom('', 'k*400', '2/2_LC:9', '-*3', -1, 0.5, 401, 1e300),
    )
    fc.assert(
      fc.property(
        arbitraryPattern({ times: limits.times.most }),
        fc.nat(),
        odd,
        (pattern, pick, value) => {
          const file = JSON.parse(writeFile(pattern)) as Node
          const slots = slotsOf(file)
          const [node, key] = slots[pick % slots.length] ?? [file, 'title']
          node[key] = value
          isAnswer(JSON.stringify(file))
        },
      ),
      { numRuns: 500 },
    )
  })

  test('nesting without end', () => {
    expect(messageOf(`{"pegwright":${'['.repeat(200_000)}`)).toContain(
      'nests more than 100 levels deep',
    )
  })
})

describe('file name', () => {
  test.each([
    ['Gull Cuff', 'gull-cuff.pegwright.json'],
    ['  Überzug: «rechts/links» ', 'überzug-rechts-links.pegwright.json'],
    ['../..', 'untitled.pegwright.json'],
    ['CON', 'chart-con.pegwright.json'],
    ['', 'untitled.pegwright.json'],
  ])('%j is kept as %s', (title, name) => {
    expect(fileName({ title })).toBe(name)
  })

  test('any title gives a name without signs that a system forbids', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (title) => {
        const name = fileName({ title })
        expect(name).not.toMatch(/[\\/:*?"<>|\p{Cc}\s]/u)
        expect(name).toMatch(/^[^.-].*\.pegwright\.json$/u)
      }),
    )
  })
})
