import { pegsInWork } from '../../loom/state'
import { findChart } from '../../pattern/charts'
import { pegsOfSecond } from '../../pattern/pair'
import type { Run } from '../../pattern/pattern'
import { pieceLimits, type Step } from '../../pattern/piece'
import { plainRows } from '../../pattern/amount'
import { edgePegs, type PieceWork, type StepWork } from '../../pattern/workPiece'
import type { Terms } from '../../languages/terms'
import { languages } from '../../languages/languages'
import { readChartStep, textOf } from './chartStep'
import { centimetres } from '../../pattern/size'
import type { EdgePlace, Halves, PiecePhrases } from '../../languages/piece'
import type { Unit } from '../../languages/unit'
import { goesRound } from '../../pattern/unit'

/** One line of the instructions of a piece. */
export interface PieceLine {
  readonly text: string
  /** "Rnds 1-4:", the head of the line within `text`; empty where it has none. */
  readonly label: string
  readonly kind: PieceLineKind
  /** Index of the step it belongs to; null for what belongs to the whole piece. */
  readonly step: number | null
  /** The section whose chart rows it stands for, and these rows, 0-based; null for other lines. */
  readonly chart: { readonly section: string; readonly rows: Run } | null
}

export type PieceLineKind =
  | 'cast on'
  | 'how'
  | 'chart'
  | 'times'
  | 'row'
  | 'repeat'
  | 'own'
  | 'plain'
  | 'pegs'
  | 'note'
  | 'bind off'
  | 'left out'
  | 'second'

/** Lines under a heading. */
export interface PieceBlock {
  readonly heading: string
  readonly lines: readonly PieceLine[]
}

export interface PieceWords {
  readonly terms: Terms
  readonly blocks: readonly PieceBlock[]
}

/**
 * The written instructions of the whole piece, from cast-on to bind-off. The rows of a chart are
 * written as they are worked where it stands: with the pegs that are in work there, and anew where
 * they read differently from the first time. `own`: where a chart has the designer's own words, these stand
 * in their place, as one line.
 */
export function writePiece(
  work: PieceWork,
  terms: Terms = work.pattern.style.terms,
  own = false,
): PieceWords {
  const writer = new PieceWriter(work, terms, own)
  work.steps.forEach((step, index) => writer.add(step, index))
  return { terms, blocks: writer.finish() }
}

/** What is written of one step that is no chart. */
export function linesOfStep(work: PieceWork, index: number, terms: Terms): readonly PieceLine[] {
  const writer = new PieceWriter(work, terms, false)
  // Whether all pegs are in work "again" is known from the steps before.
  work.steps.slice(0, index + 1).forEach((step, at) => {
    if (at === index || step.step.kind === 'pegs') writer.add(step, at)
  })
  return writer.finish(false).flatMap(({ lines }) => lines.filter(({ step }) => step === index))
}

class PieceWriter {
  readonly #blocks: { heading: string; lines: PieceLine[] }[] = []
  /** Notes and changes of pegs stand before the step they lead to. */
  #pending: PieceLine[] = []
  /** How each section was written last. */
  readonly #written = new Map<string, string>()
  #pegsChanged = false
  readonly #phrases: PiecePhrases

  constructor(
    private readonly work: PieceWork,
    private readonly terms: Terms,
    private readonly own: boolean,
  ) {
    this.#phrases = languages[terms].piece
  }

  add(work: StepWork, index: number): void {
    const { step } = work
    switch (step.kind) {
      case 'cast on':
        this.#castOn(step, work, index)
        break
      case 'bind off':
        this.#bindOff(step, work, index)
        break
      case 'chart':
        this.#chart(step, work, index)
        break
      case 'plain':
        this.#plain(step, work, index)
        break
      case 'pegs':
        this.#pending.push(line('pegs', this.#sayPegs(work, index), index))
        this.#pegsChanged = true
        break
      case 'note':
        if (step.text.trim()) this.#pending.push(line('note', step.text, index))
        break
    }
    if (work.leftOut > 0)
      this.#last().push(
        line('left out', this.#phrases.leftOut(work.leftOut, pieceLimits.rows.most), index),
      )
  }

  /** `second`: with what is done for the second of a pair. */
  finish(second = true): readonly PieceBlock[] {
    if (this.#pending.length > 0) this.#last().push(...this.#pending.splice(0))
    const { pair } = this.work.pattern
    if (second && pair !== 'none')
      this.#open(this.#phrases.secondHeading).push(
        line(
          'second',
          pair === 'alike'
            ? this.#phrases.alikeSecond
            : this.#phrases.mirroredSecond(pegsOfSecond(this.work.pattern)),
          null,
        ),
      )
    return this.#blocks
  }

  #castOn(step: Step & { kind: 'cast on' }, work: StepWork, index: number): void {
    const loops = pegsInWork(work.after) - pegsInWork(work.before)
    const { castOn, castOnHeading, castOnWay } = this.#phrases
    const { forBaby } = this.work.pattern.making
    const where = this.#placeOf(step.pegs, work)
    this.#open(castOnHeading).push(
      line('cast on', castOn(step.how, loops, where), index),
      line('how', castOnWay(step.how, loops, where, forBaby), index),
    )
  }

  #bindOff(step: Step & { kind: 'bind off' }, work: StepWork, index: number): void {
    const loops = pegsInWork(work.before) - pegsInWork(work.after)
    const { bindOff, bindOffHeading, bindOffWay, newYarn } = this.#phrases
    const lines = this.#open(bindOffHeading)
    lines.push(line('bind off', bindOff(step.how, loops, this.#placeOf(step.pegs, work)), index))
    const newEnd = work.edge?.newEnd ?? false
    const goesOn = pegsInWork(work.after) > 0 && !newEnd
    if (loops > 0) lines.push(line('how', bindOffWay(step.how, goesOn, halvesOf(work)), index))
    if (newEnd) lines.push(line('how', newYarn, index))
  }

  #chart(step: Step & { kind: 'chart' }, work: StepWork, index: number): void {
    const { chart: name, times } = step
    const lines = this.#open(name)
    const read = readChartStep(this.work, index, this.terms)
    if (!read) {
      lines.push(line('chart', this.#phrases.noChart(name), index))
      return
    }
    const rows = languages[this.terms].label(read.kind, 1, read.rows)
    const own = this.own ? (findChart(this.work.pattern, name)?.words ?? null) : null
    const text = own ?? read.readings.map((reading) => textOf(reading.lines)).join('\n\n')
    const again = this.#written.get(name) === text
    lines.push(line('chart', this.#phrases.workChart(name, rows, times, again), index))
    if (again) return
    this.#written.set(name, text)
    if (own !== null) {
      const chart = { section: name, rows: { from: 0, to: read.rows - 1 } }
      lines.push({ text: own, label: '', kind: 'own', step: index, chart })
      return
    }
    for (const reading of read.readings) {
      if (read.readings.length > 1)
        lines.push(line('times', this.#phrases.whichTimes(reading.times), index))
      for (const { text: words, label, rows: chartRows, kind } of reading.lines)
        lines.push({
          text: words,
          label,
          kind,
          step: index,
          chart: { section: name, rows: chartRows },
        })
    }
  }

  #plain(step: Step & { kind: 'plain' }, work: StepWork, index: number): void {
    const { pattern } = this.work
    const { plain, plainToLength, plainHeading } = this.#phrases
    const kind = this.#kindOf(work)
    const { stitch } = step
    const rows = plainRows(pattern, step.amount)
    const { gauge } = pattern
    const text =
      'mm' in step.amount && !gauge
        ? plainToLength(stitch, kind, centimetres(step.amount.mm))
        : plain(stitch, kind, rows, gauge && centimetres((rows * 100) / gauge.rows))
    this.#open(plainHeading[kind]).push(line('plain', text, index))
  }

  #kindOf({ rows, toAndFro }: StepWork): Unit {
    const { shape } = this.work.pattern.loom
    const [first] = rows?.rows ?? []
    if (first && !toAndFro) return goesRound(first, shape) ? 'round' : 'row'
    return toAndFro ? 'row' : 'round'
  }

  /** Some of the pegs are named in the order in which their first row comes to them. */
  #sayPegs({ before, pegs, toAndFro }: StepWork, index: number): string {
    const { onAllPegs, onSomePegs } = this.#phrases
    const last = before.stacks.length - 1
    const open = this.work.pattern.loom.shape === 'bar' ? 'bar' : 'open ring'
    if (pegs.from === 0 && pegs.to === last)
      return onAllPegs(toAndFro ? open : 'round', last + 1, this.#pegsChanged)
    const wait = before.stacks.some(
      (stack, peg) => stack.length > 0 && (peg < pegs.from || peg > pegs.to),
    )
    const next = this.work.steps.slice(index + 1).find(({ step }) => step.kind !== 'note')
    const back = next?.rows?.rows[0]?.heading === 'back'
    const [first, end] = back ? [pegs.to, pegs.from] : [pegs.from, pegs.to]
    return onSomePegs(first + 1, end + 1, wait)
  }

  /** The pegs of an edge in the order it is worked, 1-based. */
  #placeOf(run: Run | null, { before, edge }: StepWork): EdgePlace {
    const { from, to } = edgePegs({ pegs: run }, before)
    const { heading, pegs } = edge?.way ?? { heading: 'forward', pegs: [] }
    const start = pegs[0] ?? from
    const end = pegs.at(-1) ?? to
    const [first, last] = heading === 'forward' ? [from + 1, to + 1] : [to + 1, from + 1]
    const whole = from === 0 && to === before.stacks.length - 1
    return {
      whole,
      open: !whole || this.work.pattern.loom.shape === 'bar',
      first,
      last,
      round: start > end === (heading === 'forward') && start !== end ? [start + 1, end + 1] : null,
    }
  }

  /** The lines under this heading: of the block that is open, if it has it, or of a new one. */
  #open(heading: string): PieceLine[] {
    const open = this.#blocks.at(-1)
    const block = open?.heading === heading ? open : { heading, lines: [] }
    if (block !== open) this.#blocks.push(block)
    block.lines.push(...this.#pending.splice(0))
    return block.lines
  }

  #last(): PieceLine[] {
    const open = this.#blocks.at(-1)
    return open ? open.lines : this.#open(languages[this.terms].headings.instructions)
  }
}

const line = (kind: PieceLineKind, text: string, step: number | null): PieceLine => ({
  text,
  label: '',
  kind,
  step,
  chart: null,
})

/** The first half of the pegs of an edge, and those that lie across from them. */
function halvesOf({ edge, before }: StepWork): Halves {
  const pegs = edge?.way.pegs ?? []
  const doubled = pegs.filter((peg) =>
    before.stacks[peg]?.some(({ kind }) => kind === 'German turn'),
  )
  const half = Math.ceil(pegs.length / 2)
  return { near: pegs.slice(0, half), far: pegs.slice(pegs.length - half).toReversed(), doubled }
}
