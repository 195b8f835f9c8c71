import { chartErrors, pieceErrors } from '../checks/open'
import { asDraft } from '../drawing/draft'
import { flatChart } from '../drawing/flat'
import { sidePicture } from '../drawing/piece/side'
import { ringChart } from '../drawing/ring'
import type { Scene } from '../drawing/scene'
import { writeSvg } from '../drawing/svg'
import { newPattern, type Pattern } from '../pattern/pattern'
import { isPlainPiece } from '../pattern/charts'
import { workPattern } from '../pattern/work'
import { workPiece } from '../pattern/workPiece'
import { pieceText } from '../words/piece/text'
import { read } from '../words/read/read'
import { readSettingsOf, type ReadSettings } from '../words/read/reading'
import { plainText } from '../words/text'
import {
  agreeWithShape,
  agreeWithSizes,
  atChart,
  directionOf,
  drawnAsOf,
  onlyFile,
  pegsOf,
  sizeOf,
  termsOf,
  Unusable,
  type Call,
  type Drawing,
  type OptionName,
} from './call'
import { isInput, readPattern, readWords, refuseInputs, saveText } from './files'
import { reportCompared, reportPattern } from './patternReport'
import { findingLine, hasErrors, jsonOf, rowLine, type FileReport } from './report'
import { reportWords } from './wordsReport'

/** What a call prints and how it ends. */
export interface Answer {
  readonly output: string
  /** For the standard error: a line for each thing that could not be used. */
  readonly complaints: readonly string[]
  /** 0: no error found; 1: some; 2: the call or a file could not be used. */
  readonly exit: 0 | 1 | 2
}

export interface Command {
  readonly options: readonly OptionName[]
  readonly run: (call: Call) => Promise<Answer>
}

const wordOptions = ['pegs', 'flat', 'direction', 'size', 'needles', 'terms'] as const

const linesOf = (lines: readonly string[]): string => lines.map((line) => `${line}\n`).join('')

const nameOf = (file: string | undefined): string =>
  file === undefined || file === '-' ? 'standard input' : file

/** Settings for words that stand alone. */
function settingsOf(command: string, call: Call): ReadSettings {
  const pegs = pegsOf(call)
  if (pegs === undefined)
    throw new Unusable(`${command} needs --pegs N, the loops on the loom before the first row.`)
  agreeWithShape(call)
  const pattern = newPattern()
  return {
    ...readSettingsOf(pattern),
    shape: call.values.flat ? 'bar' : 'ring',
    pegs,
    direction: directionOf(call) ?? pattern.loom.direction,
    terms: termsOf(call) ?? 'us',
    size: sizeOf(call),
    needles: call.values.needles ?? false,
  }
}

const outcome = (
  reports: readonly FileReport[],
  output: string,
  problems: readonly string[] = [],
): Answer => ({
  output,
  complaints: problems,
  exit: problems.length > 0 ? 2 : hasErrors(reports) ? 1 : 0,
})

const readCommand: Command = {
  options: [...wordOptions, 'json'],
  run: async (call) => {
    if (call.files.length > 1) onlyFile('read', call)
    const settings = settingsOf('read', call)
    const [file] = call.files
    const text = await readWords(file)
    agreeWithSizes(call, text)
    const reading = read(text, settings)
    const report = reportWords(nameOf(file), reading, settings.terms)
    if (call.values.json) return outcome([report], `${jsonOf([report])}\n`)
    return outcome(
      [report],
      linesOf([
        ...reading.rows.map((row) => rowLine(row, settings.shape, settings.terms)),
        ...report.findings.map((finding) => findingLine(finding)),
      ]),
    )
  },
}

const checkCommand: Command = {
  options: [...wordOptions, 'words', 'chart', 'json'],
  run: async (call) => {
    const { words } = call.values
    const { reports, problems } =
      words === undefined
        ? await checkFiles(call)
        : { reports: await checkWords(call, words), problems: [] }
    const output = call.values.json
      ? `${jsonOf(reports, problems)}\n`
      : linesOf(
          reports.flatMap(({ file, findings }) =>
            findings.map((finding) => `${file}: ${findingLine(finding)}`),
          ),
        )
    return outcome(reports, output, problems)
  },
}

/** A file that cannot be used does not keep the others from being checked. */
async function checkFiles(call: Call): Promise<{ reports: FileReport[]; problems: string[] }> {
  if (call.files.length === 0)
    throw new Unusable('check needs pattern files, or --words FILE --pegs N. See --help.')
  for (const name of ['pegs', 'flat', 'direction', 'size', 'needles'] as const)
    if (call.values[name] !== undefined)
      throw new Unusable(`--${name} is for words; a pattern file has its own loom.`)
  if (call.values.chart !== undefined)
    throw new Unusable('--chart is for words; all charts of a pattern file are checked.')
  const terms = termsOf(call) ?? 'us'
  const reports: FileReport[] = []
  const problems: string[] = []
  for (const file of call.files) {
    try {
      reports.push(reportPattern(nameOf(file), await readPattern(file), terms, true))
    } catch (error) {
      if (!(error instanceof Unusable)) throw error
      problems.push(error.message)
    }
  }
  return { reports, problems }
}

/** Words alone, or held against the pattern that is named beside them. */
async function checkWords(call: Call, words: string): Promise<FileReport[]> {
  if (call.files.length === 0) {
    if (call.values.chart !== undefined)
      throw new Unusable('--chart names a part of a pattern file, and none is named here.')
    const settings = settingsOf('check --words', call)
    const text = await readWords(words)
    agreeWithSizes(call, text)
    const reading = read(text, settings)
    return [reportWords(nameOf(words), reading, settings.terms)]
  }
  const file = onlyFile('check with --words', call)
  if (isInput(file) && isInput(words))
    throw new Unusable('The pattern and the words cannot both come from the standard input.')
  const pattern = atChart(await readPattern(file), call)
  agreeWithLoom(call, pattern.loom)
  const settings: ReadSettings = {
    ...readSettingsOf(pattern),
    terms: termsOf(call) ?? pattern.style.terms,
    size: call.values.size === undefined ? pattern.readAs.size : sizeOf(call),
    needles: call.values.needles ?? pattern.readAs.needles,
  }
  const work = workPattern(pattern)
  const terms = termsOf(call) ?? 'us'
  const text = await readWords(words)
  agreeWithSizes(call, text)
  const reading = read(text, settings)
  return [
    reportPattern(nameOf(file), pattern, terms),
    reportCompared(nameOf(words), reading, work, terms),
  ]
}

/** Options that say something else than the pattern would be passed over in silence. */
function agreeWithLoom(
  call: Call,
  { pegs, direction, shape }: ReturnType<typeof newPattern>['loom'],
): void {
  const asked = pegsOf(call)
  if (asked !== undefined && asked !== pegs)
    throw new Unusable(`The pattern is for ${pegs} pegs; --pegs says ${asked}. Leave --pegs out.`)
  const way = directionOf(call)
  if (way !== undefined && way !== direction)
    throw new Unusable(
      `The pattern is worked ${direction}; --direction says ${way}. Leave --direction out.`,
    )
  if (call.values.flat && shape !== 'bar')
    throw new Unusable('The pattern is worked in the round; leave --flat out.')
  if (call.values.needles && shape !== 'bar')
    throw new Unusable(
      'The pattern is worked in the round, which has no wrong-side rows; leave --needles out.',
    )
}

const writeCommand: Command = {
  options: ['terms', 'chart', 'from-charts'],
  run: async (call) => {
    const terms = termsOf(call)
    const pattern = await readPattern(onlyFile('write', call))
    // Own words are in the terms of whoever wrote them.
    const isOwn = !call.values['from-charts'] && terms === undefined
    if (call.values.chart === undefined && !isPlainPiece(pattern))
      return outcome([], pieceText(workPiece(pattern), terms, isOwn))
    const work = workPattern(atChart(pattern, call))
    const own = isOwn ? work.words : null
    return outcome([], own === null ? plainText(work, terms) : `${own.trimEnd()}\n`)
  },
}

/** Room of the picture from the side and its letters, mm. */
const sideRoom = { width: 120, height: 160, text: 3.2, chosen: null }

const sceneOf: Readonly<Record<Drawing, (pattern: Pattern) => Scene>> = {
  rows: (pattern) => flatChart(workPattern(pattern)),
  ring: (pattern) => ringChart(workPattern(pattern)),
  side: (pattern) => sidePicture(workPiece(pattern), sideRoom).scene,
}

const drawCommand: Command = {
  options: ['as', 'chart', 'output'],
  run: async (call) => {
    const as = drawnAsOf(call)
    const { output, chart } = call.values
    if (output === undefined) throw new Unusable('draw needs -o OUT.svg, the file to be written.')
    if (as === 'side' && chart !== undefined)
      throw new Unusable('--chart is for --as rows and --as ring; --as side draws the whole piece.')
    refuseInputs(output, call.files)
    const pattern = atChart(await readPattern(onlyFile('draw', call)), call)
    if (as === 'ring' && pattern.loom.shape === 'bar')
      throw new Unusable(
        'The pattern is worked back and forth on a rake, which has no ring chart; say --as rows.',
      )
    const scene = sceneOf[as](pattern)
    const errors = (as === 'side' ? pieceErrors : chartErrors)(workPattern(pattern))
    const svg = writeSvg(errors.length > 0 ? asDraft(scene, pattern.style.terms) : scene)
    if (output === '-') return outcome([], svg)
    saveText(output, svg)
    return outcome([], '')
  },
}

export const commands: ReadonlyMap<string, Command> = new Map([
  ['read', readCommand],
  ['check', checkCommand],
  ['write', writeCommand],
  ['draw', drawCommand],
])
