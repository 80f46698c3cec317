import { fromEpochDay, type EpochDay } from '../calendar/dates.ts'
import { toSpan, type DaySpan } from '../calendar/spans.ts'
import { INDEPENDENT, standingOf, worse, type StandingRank } from '../rulebooks/standing.ts'
import type { Answer, HoldsThrough, SubSpan } from './answer.ts'
import { sortedFindings } from './finding-order.ts'
import type { LineReading, PieceDetail } from './line.ts'
import { joinNotes, notesOver } from './notes.ts'

/** How far ahead an end is looked for: a change on that day after the first is told, a later one is `open`. */
export const HORIZON_DAYS = 3660

/** An answer before anything that would change it. */
export type AnswerBody = Omit<Answer, 'remedies'>

/** Reads the answer for a span off a line whose window reaches the horizon. */
export function answerOf(person: string, line: LineReading, span: DaySpan): AnswerBody {
  const from = line.at(span.first)
  const whole = line.pieces[from]
  if (whole !== undefined && span.last <= whole.last) return answerOfOnePiece(person, line, from, span)
  const runs: Run[] = []
  let rank: StandingRank = INDEPENDENT
  for (let index = from; index < line.pieces.length; index += 1) {
    const piece = line.pieces[index]
    if (piece === undefined || piece.first > span.last) break
    rank = worse(rank, line.rank(index))
    const { key, findings, notes } = line.detail(index)
    runs.push({
      first: piece.first > span.first ? piece.first : span.first,
      last: piece.last < span.last ? piece.last : span.last,
      rank: line.rank(index),
      key,
      findings,
      notes,
    })
  }
  const spans = subSpans(runs)
  return {
    person,
    standing: standingOf(rank),
    spans,
    ...holds(line, from, span.first),
    findings:
      spans.length === 1
        ? (spans[0]?.findings ?? [])
        : sortedFindings(spans.flatMap(({ findings }) => findings)),
    notes: joinNotes(runs),
  }
}

/** Most spans asked lie within days on which nothing changes: their answer is the piece's own. */
function answerOfOnePiece(person: string, line: LineReading, index: number, span: DaySpan): AnswerBody {
  const { findings, notes } = line.detail(index)
  const days = toSpan(span)
  const standing = standingOf(line.rank(index))
  return {
    person,
    standing,
    spans: [{ first: days.first, last: days.last, standing, findings }],
    ...holds(line, index, span.first),
    findings,
    notes: notesOver(notes, days),
  }
}

type Run = DaySpan & Pick<PieceDetail, 'key' | 'findings' | 'notes'> & { rank: StandingRank }

/** The longest runs of days with equal standing and equal findings. */
function subSpans(runs: readonly Run[]): SubSpan[] {
  const spans: SubSpan[] = []
  let open: Run | undefined
  for (const run of runs) {
    const last = spans.at(-1)
    if (open !== undefined && last !== undefined && open.rank === run.rank && open.key === run.key)
      last.last = fromEpochDay(run.last)
    else spans.push({ ...toSpan(run), standing: standingOf(run.rank), findings: run.findings })
    open = run
  }
  return spans
}

function holds(
  line: LineReading,
  from: number,
  first: EpochDay,
): Pick<Answer, 'holdsThrough' | 'endedBy' | 'atLeastThrough'> {
  const { pieces } = line
  const start = line.rank(from)
  let ends: number | undefined
  let drops: number | undefined
  for (let index = from + 1; index < pieces.length && drops === undefined; index += 1) {
    const piece = pieces[index]
    if (piece === undefined || piece.first > first + HORIZON_DAYS) break
    const rank = line.rank(index)
    if (rank !== start) ends ??= index
    if (rank < start) drops = index
  }
  const holdsThrough = dayBefore(line, ends)
  const atLeastThrough = dayBefore(line, drops)
  return ends === undefined
    ? { holdsThrough, atLeastThrough }
    : { holdsThrough, endedBy: line.turn(ends), atLeastThrough }
}

function dayBefore({ pieces }: LineReading, index: number | undefined): HoldsThrough {
  const piece = index === undefined ? undefined : pieces[index]
  return piece === undefined ? 'open' : fromEpochDay((piece.first - 1) as EpochDay)
}
