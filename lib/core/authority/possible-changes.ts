import { fromEpochDay, type EpochDay } from '../calendar/dates.ts'
import { joinSpans, toDaySpan, toSpan, type DaySpan, type Span } from '../calendar/spans.ts'
import { lastCountingDay } from '../cards/card-index.ts'
import { sortedTexts } from '../kernel/order.ts'
import type { StandingRank } from '../rulebooks/standing.ts'
import type { Change, Finding } from './answer.ts'
import type { Line } from './line.ts'
import type { PersonIndex } from './person-index.ts'

/** A stretch of the days asked, with its number on the line. */
export type PieceIn = DaySpan & { rank: StandingRank; index: number }

/** The stretches of the days asked on which nothing changes. */
export function piecesIn(line: Line, span: DaySpan): PieceIn[] {
  return line.pieces.flatMap(({ first, last }, index) =>
    last < span.first || first > span.last
      ? []
      : [
          {
            first: first > span.first ? first : span.first,
            last: last < span.last ? last : span.last,
            rank: line.rank(index),
            index,
          },
        ],
  )
}

/** Who is asked for: somebody of a level, who is to be a trainer or not, and under an assignment one of those named. */
export type SupervisorWanted = { level: string; trainer: boolean; trainers?: readonly string[] }

/** The supervisor that findings of a day ask for. */
export function supervisorWanted(findings: readonly Finding[]): SupervisorWanted | undefined {
  for (const finding of findings) {
    const wanted = wantedBy(finding)
    if (wanted !== undefined) return wanted
  }
  return undefined
}

function wantedBy(finding: Finding): SupervisorWanted | undefined {
  if (finding.kind !== 'training-only' && finding.kind !== 'needs-supervisor') return undefined
  if (finding.supervisor === undefined) return undefined
  const trainers = finding.kind === 'training-only' ? finding.trainers : undefined
  return {
    level: finding.supervisor,
    trainer: finding.kind === 'training-only',
    ...(trainers === undefined ? {} : { trainers }),
  }
}

/** What makes two wishes for a supervisor one. */
export function wishOf({ level, trainer, trainers = [] }: SupervisorWanted): string {
  return `${level}|${trainer}|${trainers.join(' ')}`
}

/** The changes that the findings of the days asked call for, each once. */
export function possibleChanges(line: Line, person: PersonIndex, span: DaySpan, today: EpochDay): Change[] {
  const changes = new Map<string, Change>()
  for (const piece of piecesIn(line, span)) {
    for (const finding of line.findings(piece.index)) {
      const change = changeFor(finding, piece, person, span, today)
      if (change === undefined) continue
      const key = keyOf(change)
      const known = changes.get(key)
      changes.set(key, known === undefined ? change : joined(known, change))
    }
  }
  return [...changes.values()]
}

function changeFor(
  finding: Finding,
  piece: PieceIn,
  person: PersonIndex,
  span: DaySpan,
  today: EpochDay,
): Change | undefined {
  const { records } = finding
  switch (finding.kind) {
    case 'certificate-lapsed':
    case 'certificate-delivery':
      return piece.first < today
        ? undefined
        : { kind: 'renew-certificate', subject: finding.subject, by: fromEpochDay(piece.first) }
    case 'certificate-not-on-record':
      return { kind: 'record-missing-fact', what: 'certificate', subject: finding.subject, records }
    case 'certificate-not-seen':
      return { kind: 'have-seen', subject: finding.subject, records }
    case 'card-no-longer-valid':
      return renewal(records, person, span, today)
    case 'training-only':
    case 'needs-supervisor': {
      const wanted = wantedBy(finding)
      return wanted === undefined ? undefined : { kind: 'add-supervisor', ...wanted, days: [toSpan(piece)] }
    }
    case 'words-unresolved':
      return { kind: 'record-missing-fact', what: 'meaning-of-words', records }
    case 'complexity-unrated':
      return { kind: 'record-missing-fact', what: 'rating', records }
    case 'guardian-permission-missing':
      return finding.says === 'not-on-record' || finding.says === 'ended'
        ? { kind: 'record-missing-fact', what: 'guardian-permission', records }
        : undefined
    case 'no-agreement':
      return finding.says === 'not-on-record' || finding.says === 'no-last-day'
        ? { kind: 'record-missing-fact', what: 'agreement', records }
        : undefined
    case 'not-on-record':
      return { kind: 'record-missing-fact', what: finding.what, records }
    // Nothing that may be asked for cures these: no level is raised, nothing lifted, eased or lowered.
    case 'rule-failed':
    case 'no-edition':
    case 'outside-book':
    case 'suspended':
    case 'no-card':
    case 'book-does-not-recognise':
    case 'card-not-yet-valid':
    case 'level-too-low':
    case 'over-diameter':
    case 'outside-places':
    case 'outside-species':
    case 'above-greatest-complexity':
    case 'double-bucking-only':
    case 'no-felling':
    case 'under-age':
      return undefined
  }
}

/** A card in force on the first day that ends in the span is renewed by its last day; one that has ended never is. */
function renewal(
  records: readonly string[],
  person: PersonIndex,
  span: DaySpan,
  today: EpochDay,
): Change | undefined {
  const indexed = person.cards.find(({ card }) => records.includes(card.id))
  if (indexed?.last === undefined || indexed.endsFrom <= indexed.last) return undefined
  const last = lastCountingDay(indexed)
  const isInForceAtFirst = indexed.effective <= span.first && span.first <= last
  if (!isInForceAtFirst || last >= span.last || last < today) return undefined
  return { kind: 'renewal-evaluation', card: indexed.card.id, by: fromEpochDay(last) }
}

/** What makes two changes of a question one: the days and records of both are joined. */
function keyOf(change: Change): string {
  switch (change.kind) {
    case 'renewal-evaluation':
      return `${change.kind}|${change.card}`
    case 'renew-certificate':
    case 'have-seen':
      return `${change.kind}|${change.subject}`
    case 'record-missing-fact':
      return `${change.kind}|${change.what}|${change.subject ?? ''}`
    case 'add-supervisor':
      return `${change.kind}|${wishOf(change)}`
  }
}

function joined(known: Change, change: Change): Change {
  if (known.kind === 'add-supervisor' && change.kind === 'add-supervisor') {
    const days = [...known.days, ...change.days].map(({ first, last }: Span) => toDaySpan(first, last))
    return { ...known, days: joinSpans(days).map(toSpan) }
  }
  if ('records' in known && 'records' in change)
    return { ...known, records: sortedTexts([...known.records, ...change.records]) }
  return known
}
