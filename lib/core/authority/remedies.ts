import type { EpochDay } from '../calendar/dates.ts'
import { hasDay, joinSpans, toDaySpan, toSpan, type DaySpan, type Span } from '../calendar/spans.ts'
import { byText } from '../kernel/order.ts'
import { INDEPENDENT, isSupervised } from '../rulebooks/standing.ts'
import type { Change, Remedies } from './answer.ts'
import type { AskedWork } from './asked-work.ts'
import type { Authority } from './authority-index.ts'
import { caseOf } from './judge-day.ts'
import { Line } from './line.ts'
import type { PersonIndex } from './person-index.ts'
import { piecesIn, possibleChanges, supervisorWanted, wishOf } from './possible-changes.ts'
import { asIfChanged, withoutMadeUp } from './as-if-changed.ts'
import { openWork } from './work-line.ts'

const MOST_CHANGES = 3
const MOST_SETS = 5
const DAYS_AWAY = 60

/** The vocabulary in its order; a change that is not in it does not exist. */
const VOCABULARY: readonly Change['kind'][] = [
  'renewal-evaluation',
  'renew-certificate',
  'record-missing-fact',
  'have-seen',
  'add-supervisor',
]

/**
 * What would let a person do the work on every day asked, on their own or with a supervisor in the set. Sets are found
 * as a hitting-set tree (R. Reiter, A theory of diagnosis from first principles, 1987): each set is tried by asking
 * again as if its changes had been made, and what is then still found says what may be added to it.
 */
export function findRemedies(
  authority: Authority,
  person: PersonIndex,
  asked: AskedWork,
  line: Line,
  span: DaySpan,
  today: EpochDay,
  countOthers: () => number,
): Remedies {
  const isMet = piecesIn(line, span).every(({ rank }) => rank === INDEPENDENT)
  const other = isMet ? undefined : anotherDate(authority, person, asked, span, today)
  return {
    sets: isMet ? [] : minimalSets(authority, person, asked, line, span, today),
    somebodyElse: countOthers(),
    ...(other === undefined ? {} : { anotherDate: other }),
    leaveIt: true,
  }
}

type Tried = { changes: readonly Change[]; line: Line; person: PersonIndex }

type Trying = { authority: Authority; person: PersonIndex; asked: AskedWork; span: DaySpan }

function minimalSets(
  authority: Authority,
  person: PersonIndex,
  asked: AskedWork,
  line: Line,
  span: DaySpan,
  today: EpochDay,
): Change[][] {
  const trying = { authority, person, asked, span }
  const found: (readonly Change[])[] = []
  const seen = new Set<string>()
  let level: Tried[] = [{ changes: [], line, person }]
  for (let size = 1; size <= MOST_CHANGES && level.length > 0; size += 1) {
    const next: Tried[] = []
    for (const node of level) {
      for (const change of possibleChanges(node.line, node.person, span, today)) {
        const changes = inOrder([...node.changes, change])
        const key = JSON.stringify(changes)
        if (node.changes.some((other) => sameChange(other, change)) || seen.has(key)) continue
        seen.add(key)
        if (found.some((set) => isWithin(set, changes))) continue
        const tried = asIfTried(trying, changes)
        if (tried.some((one) => isReached(one, span))) found.push(thinned(trying, changes))
        else next.push(...tried)
      }
    }
    level = next
  }
  return found
    .filter(
      (set, index) =>
        !found.some(
          (other, at) => at !== index && isWithin(other, set) && (at < index || !isWithin(set, other)),
        ),
    )
    .map((set) => set.map(withoutMadeUp))
    .sort(bySizeThenVocabulary)
    .slice(0, MOST_SETS)
}

/** A set as if made, in each way in which its missing facts may best be. */
function asIfTried({ authority, person, asked, span }: Trying, changes: readonly Change[]): Tried[] {
  return asIfChanged(authority, person, asked.work, changes, span).map((changed) => {
    const work = openWork(changed.authority, changed.work)
    const line = new Line(caseOf(changed.authority, changed.person, work), span)
    return { changes, person: changed.person, line }
  })
}

/** A set without the changes that it reaches the goal without: a later change may make an earlier one needless. */
function thinned(trying: Trying, changes: readonly Change[]): readonly Change[] {
  for (const change of changes) {
    const without = changes.filter((other) => other !== change)
    if (without.length > 0 && asIfTried(trying, without).some((tried) => isReached(tried, trying.span)))
      return thinned(trying, without)
  }
  return changes
}

function isWithin(set: readonly Change[], other: readonly Change[]): boolean {
  return set.every((change) => other.some((one) => sameChange(change, one)))
}

function isReached({ line, changes }: Tried, span: DaySpan): boolean {
  const supervisors = changes.filter((change) => change.kind === 'add-supervisor')
  return piecesIn(line, span).every((piece) => {
    if (piece.rank === INDEPENDENT) return true
    if (!isSupervised(piece.rank)) return false
    const wanted = supervisorWanted(line.findings(piece.index))
    return (
      wanted !== undefined &&
      supervisors.some(
        (change) =>
          wishOf(change) === wishOf(wanted) &&
          change.days.some((days) => {
            const covered = toDaySpan(days.first, days.last)
            return covered.first <= piece.first && piece.last <= covered.last
          }),
      )
    )
  })
}

function sameChange(left: Change, right: Change): boolean {
  return JSON.stringify(left) === JSON.stringify(right)
}

function inOrder(changes: readonly Change[]): Change[] {
  return [...changes].sort(byVocabulary)
}

/** A change as text for ordering: what it says, and not the records it came from. */
function textOf(change: Change): string {
  const { records: _records, ...said } = { records: [], ...change }
  return JSON.stringify(said, Object.keys(said).sort())
}

function byVocabulary(left: Change, right: Change): number {
  return VOCABULARY.indexOf(left.kind) - VOCABULARY.indexOf(right.kind) || byText(textOf(left), textOf(right))
}

function bySizeThenVocabulary(left: readonly Change[], right: readonly Change[]): number {
  if (left.length !== right.length) return left.length - right.length
  for (const [index, change] of left.entries()) {
    const other = right[index]
    const order = other === undefined ? 0 : byVocabulary(change, other)
    if (order !== 0) return order
  }
  return 0
}

/** The nearest days of the same length on which the person does the work alone; later first at equal distance. */
function anotherDate(
  authority: Authority,
  person: PersonIndex,
  asked: AskedWork,
  span: DaySpan,
  today: EpochDay,
): Span | undefined {
  const length = span.last - span.first
  const earliest = Math.max(today, span.first - DAYS_AWAY) as EpochDay
  const latest = (span.first + DAYS_AWAY) as EpochDay
  if (earliest > latest) return undefined
  const line = new Line(caseOf(authority, person, asked), {
    first: earliest,
    last: (latest + length) as EpochDay,
  })
  const alone = joinSpans(line.pieces.filter((_, index) => line.rank(index) === INDEPENDENT))
  const fits = (first: number) =>
    alone.some((run) => hasDay(run, first as EpochDay) && first + length <= run.last)
  for (let away = 0; away <= DAYS_AWAY; away += 1) {
    for (const first of [span.first + away, span.first - away]) {
      if (first < earliest || !fits(first)) continue
      return toSpan({ first: first as EpochDay, last: (first + length) as EpochDay })
    }
  }
  return undefined
}
