import { rules } from '../../checks/rules'
import { stepNamed } from '../../checks/piece/steps'
import { doneSaid } from '../../languages/english/done'
import { pegsNamed } from '../../languages/english/pegs'
import { worstFirst, type Finding } from '../../pattern/finding'
import { sayLost } from '../commands/lost'
import { chooseStep } from '../commands/piece'
import type { Bench } from '../state/bench.svelte'
import { rowName } from '../../words/rowName'

/** What a finding is about. */
type About = 'chart' | 'words' | 'piece'

/** A finding as the list of findings shows it. */
export interface Entry extends Pick<Finding, 'id' | 'severity' | 'message' | 'advice'> {
  readonly where: string
  /** The check that found it, which can be switched off; null: none can be. */
  readonly check: string | null
  /** Can this one be set aside alone? */
  readonly alone: boolean
  readonly goTo: () => void
  /** Labels of its repairs, found when someone looks; and the same one after the other. */
  readonly fixes: readonly { readonly label: string; readonly mend: () => void }[]
  readonly repairs: Finding['repairs']
  /** Why it is not mended the other way as well. */
  readonly lacking: string | null
}

/** Rules that are not switched off by themselves, or are none of the checks: those of own words. */
const isFixed = (id: string): boolean => {
  const rule = rules.find((one) => one.id === id)
  return !rule || (rule.scope === 'piece' && rule.always === true)
}

function entryOf(bench: Bench, about: About, finding: Finding): Entry {
  const { id, severity, message, advice, rule } = finding
  const goTo = () => show(bench, about, finding)
  return {
    // Of the piece, several things may be wrong at one step.
    id: about === 'piece' ? `${id}/${message}` : id,
    severity,
    where: whereIs(bench, about, finding),
    message,
    advice,
    check: isFixed(rule) ? null : rule,
    alone: about !== 'piece',
    goTo,
    repairs: finding.repairs,
    get fixes() {
      return finding.fixes.map((fix) => ({
        label: fix.label,
        mend: () => {
          if (about === 'piece') bench.piece.chosen = finding.place.step
          else goTo()
          if (about === 'words') bench.wording.mend(finding, fix.label)
          else if (!bench.apply(fix.label, fix.edit)) return
          if (about === 'piece') bench.say(doneSaid(fix.label))
          else sayLost(bench, doneSaid(fix.label))
        },
      }))
    },
    get lacking() {
      return finding.lacking ?? null
    },
  }
}

/** Go where it is. */
function show(bench: Bench, about: About, { place: { step, rows, pegs, text } }: Finding): void {
  if (about === 'piece') return chooseStep(bench, step)
  const row = rows[0] ?? (about === 'chart' ? bench.spot.row : undefined)
  const rest = about === 'chart' ? 0 : bench.spot.peg
  if (row !== undefined) bench.goTo({ row, peg: pegs[0]?.from ?? rest })
  if (text) bench.wording.showAt(text)
}

function whereIs(bench: Bench, about: About, { place: { step, rows, pegs } }: Finding): string {
  if (about === 'piece') return step === null ? 'Whole piece' : stepNamed(bench.piece.work, step)
  const [first] = rows
  const row = first === undefined ? null : rowName(bench.work, first)
  if (about === 'words') {
    const name = row === null ? 'Words' : `Words, ${row.toLowerCase()}`
    return rows.length > 1 ? `${name} and others` : name
  }
  return [row ?? 'Whole chart', ...pegs.map((run) => pegsNamed(run))].join(', ')
}

/**
 * All that is found: the worst first; of the piece before of the words and of the chart, but its
 * hints last; then in order of place.
 */
export function entriesOf(bench: Bench): Entry[] {
  const entries = (about: About, findings: readonly Finding[]) =>
    findings.map((one) => entryOf(bench, about, one))
  const ofPiece = entries('piece', bench.piece.findings)
  const isHint = ({ severity }: Entry): boolean => severity === 'hint'
  return [
    ...worstFirst([
      ...ofPiece.filter((one) => !isHint(one)),
      ...entries('words', bench.wording.findings),
      ...entries('chart', bench.report.findings),
    ]),
    ...ofPiece.filter(isHint),
  ]
}

/** Those that are set aside. */
export const entriesAside = (bench: Bench): Entry[] => [
  ...bench.wording.aside.map((one) => entryOf(bench, 'words', one)),
  ...bench.report.aside.map((one) => entryOf(bench, 'chart', one)),
]
