import { fromEpochDay } from '../calendar/dates.ts'
import { toSpan, type DaySpan, type Span } from '../calendar/spans.ts'
import { InvariantBroken } from '../kernel/result.ts'
import { INDEPENDENT, standingOf, worse, type StandingRank } from '../rulebooks/standing.ts'
import type { Answer, Finding, SubSpan } from './answer.ts'
import { DatedNotes } from './dated-notes.ts'
import { isSameFinding, sortedFindings } from './finding-order.ts'
import type { Line } from './line.ts'
import { joinNotes, type DayNote } from './notes.ts'
import { outlookOf, type Outlook } from './outlook.ts'
import { phaseOf, type Phase } from './phases.ts'

/** An answer before anything that would change it. */
export type AnswerBody = Omit<Answer, 'remedies'>

/** The days that are asked about, with what everybody's answer about them has in common. */
export type AskedDays = { span: DaySpan; days: Span; notes: DatedNotes }

/** Some days made ready to be asked about; `note` is of the work on the first of them. */
export function askedDays(span: DaySpan, note?: DayNote): AskedDays {
  const days = toSpan(span)
  return { span, days, notes: new DatedNotes(days, note) }
}

/** Reads the answer for a span off a line that begins with it and reaches the horizon. */
export function answerOfLine(person: string, line: Line, span: DaySpan): AnswerBody {
  const last = line.pieces.at(-1)?.last ?? span.last
  return answerOf(person, [phaseOf({ first: span.first, last })], [line], askedDays(span))
}

/** Reads an answer off lines that follow each other, one for each phase; the first phase holds the first day asked. */
export function answerOf(
  person: string,
  phases: readonly Phase[],
  lines: readonly Line[],
  asked: AskedDays,
): AnswerBody {
  const { span, days } = asked
  const phase = phases[0]
  const line = lines[0]
  if (phase === undefined || line === undefined)
    throw new InvariantBroken('an answer is read off one line at least')
  const from = line.at(span.first)
  const outlook = outlookOf(phases, lines, from, span.first)
  if (span.last > phase.last || !isAllAlike(line, from, span))
    return answerOfRuns(person, runsOf(phases, lines, from, span), outlook)
  // Most spans asked lie within days on which nothing is told to change: their answer is the piece's own.
  const findings = line.findings(from)
  const standing = standingOf(line.rank(from))
  const spans = [{ first: days.first, last: days.last, standing, findings }]
  return bodyOf(person, standing, spans, outlook, findings, asked.notes.of(line.notes(from)))
}

/** Whether nothing that is told differs over a span that begins in a piece. */
function isAllAlike(line: Line, from: number, span: DaySpan): boolean {
  for (let next = from + 1; span.last > line.piece(next - 1).last; next += 1)
    if (
      line.rank(next) !== line.rank(from) ||
      !areEqual(line.findings(from), line.findings(next)) ||
      !areIdentical(line.notes(from), line.notes(next))
    )
      return false
  return true
}

/** Whether notes are the very same, each of one record at most, so that there is nothing to join. */
function areIdentical(left: readonly DayNote[], right: readonly DayNote[]): boolean {
  return (
    left.length === right.length && left.every((note, at) => note === right[at] && note.records.length < 2)
  )
}

function bodyOf(
  person: string,
  standing: Answer['standing'],
  spans: Answer['spans'],
  { holdsThrough, endedBy, atLeastThrough }: Outlook,
  findings: Answer['findings'],
  notes: Answer['notes'],
): AnswerBody {
  return endedBy === undefined
    ? { person, standing, spans, holdsThrough, atLeastThrough, findings, notes }
    : { person, standing, spans, holdsThrough, endedBy, atLeastThrough, findings, notes }
}

/** Days on which nothing changes. */
type Run = DaySpan & { rank: StandingRank; findings: readonly Finding[]; notes: readonly DayNote[] }

function runsOf(phases: readonly Phase[], lines: readonly Line[], from: number, span: DaySpan): Run[] {
  const runs: Run[] = []
  phases.forEach((phase, number) => {
    const line = lines[number]
    if (line === undefined || phase.first > span.last) return
    for (let index = number === 0 ? from : line.at(phase.first); index < line.pieces.length; index += 1) {
      const piece = line.piece(index)
      if (piece.first > phase.last || piece.first > span.last) break
      const notes = line.notes(index)
      runs.push({
        first: latest(piece.first, phase.first, span.first),
        last: earliest(piece.last, phase.last, span.last),
        rank: line.rank(index),
        findings: line.findings(index),
        notes: phase.note === undefined ? notes : [...notes, phase.note],
      })
    }
  })
  return runs
}

function latest<Day extends number>(one: Day, other: Day, third: Day): Day {
  return one > other ? (one > third ? one : third) : other > third ? other : third
}

function earliest<Day extends number>(one: Day, other: Day, third: Day): Day {
  return one < other ? (one < third ? one : third) : other < third ? other : third
}

function answerOfRuns(person: string, runs: readonly Run[], outlook: Outlook): AnswerBody {
  const spans = subSpans(runs)
  const [only] = spans
  return bodyOf(
    person,
    standingOf(runs.reduce<StandingRank>((rank, run) => worse(rank, run.rank), INDEPENDENT)),
    spans,
    outlook,
    only !== undefined && spans.length === 1
      ? only.findings
      : sortedFindings(spans.flatMap(({ findings }) => findings)),
    joinNotes(runs),
  )
}

/** The longest runs of days with equal standing and equal findings. */
function subSpans(runs: readonly Run[]): SubSpan[] {
  const spans: SubSpan[] = []
  let open: Run | undefined
  for (const run of runs) {
    const last = spans.at(-1)
    if (
      open !== undefined &&
      last !== undefined &&
      open.rank === run.rank &&
      areEqual(open.findings, run.findings)
    )
      last.last = fromEpochDay(run.last)
    else spans.push({ ...toSpan(run), standing: standingOf(run.rank), findings: run.findings })
    open = run
  }
  return spans
}

function areEqual(left: readonly Finding[], right: readonly Finding[]): boolean {
  if (left === right) return true
  return (
    left.length === right.length &&
    left.every((finding, at) => {
      const other = right[at]
      return other !== undefined && isSameFinding(finding, other)
    })
  )
}
