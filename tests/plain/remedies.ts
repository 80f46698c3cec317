import type { Change, Finding, Remedies } from '../../lib/core/authority/answer.ts'
import type { Question } from '../../lib/core/authority/question.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import type { Span } from '../../lib/core/calendar/spans.ts'
import { lineOf, type Line } from './answer.ts'
import { candidatesFor, trainersOf, type Candidate, type Ground } from './changes.ts'
import { dayNumber, daysFrom, dayText, isCovered } from './days.ts'
import { canonicalJson, compareTexts } from './findings.ts'
import { planner } from './ratings-day.ts'

const MOST_CHANGES = 3
const MOST_SETS = 5
const MOST_DAYS_AWAY = 60

const VOCABULARY: readonly Change['kind'][] = [
  'renewal-evaluation',
  'renew-certificate',
  'record-missing-fact',
  'have-seen',
  'add-supervisor',
]

/** What would change an answer: every set of changes is tried on altered records, and the smallest are kept. */
export function plainRemedies(records: Records, question: Question, person: string): Remedies {
  const line = lineOf(records, question.work, person)
  const days = daysFrom(dayNumber(question.first), dayNumber(question.last))
  const isOnTheirOwn = isIndependentOn(line, days)
  const anotherDate = isOnTheirOwn ? undefined : nearestDate(line, question, days.length)
  return {
    sets: isOnTheirOwn ? [] : smallestSets(records, question, person, days),
    somebodyElse: countOthers(records, question, person, days),
    ...(anotherDate === undefined ? {} : { anotherDate }),
    leaveIt: true,
  }
}

function isIndependentOn(line: Line, days: readonly number[]): boolean {
  return days.every((day) => line.at(day).standing === 'independent')
}

/** Some changes, and the grounds on which they could leave the question. */
type Tried = { set: readonly Candidate[]; grounds: readonly Ground[] }

/** Grows sets change by change: what is still found after some changes says what may be added to them. */
function smallestSets(
  records: Records,
  question: Question,
  person: string,
  days: readonly number[],
): Change[][] {
  const start: Ground = { records, work: question.work }
  const reaches = (set: readonly Candidate[]) =>
    groundsAfter([start], set).some((ground) => reachesGoal(ground, set, person, days))
  /** What of a set is needed: each change in turn is left out, and stays out where the goal is reached without it. */
  const needed = (set: readonly Candidate[]): readonly Candidate[] => {
    const shorter = set
      .map((change) => set.filter((other) => other !== change))
      .find((without) => without.length > 0 && reaches(without))
    return shorter === undefined ? set : needed(shorter)
  }
  const found: (readonly Candidate[])[] = []
  const seen = new Set<string>()
  let tried: Tried[] = [{ set: [], grounds: [start] }]
  for (let size = 1; size <= MOST_CHANGES; size += 1) {
    const next: Tried[] = []
    for (const one of tried) {
      for (const candidate of candidatesOn(one.grounds, question, person, days)) {
        if (holds(one.set, candidate)) continue
        const set = [...one.set, candidate].sort((left, right) => compareChanges(left.change, right.change))
        const key = set.map(textOf).join(' ')
        if (seen.has(key)) continue
        seen.add(key)
        if (found.some((smaller) => smaller.every((other) => holds(set, other)))) continue
        const grounds = groundsAfter(one.grounds, [candidate])
        if (grounds.some((ground) => reachesGoal(ground, set, person, days))) found.push(needed(set))
        else next.push({ set, grounds })
      }
    }
    tried = next
  }
  const distinct = found.filter((set, index) => found.findIndex((other) => isSame(set, other)) === index)
  return distinct
    .filter(
      (set) => !distinct.some((other) => other.length < set.length && other.every((one) => holds(set, one))),
    )
    .map((set) => set.map((one) => one.change))
    .sort(fewestFirst)
    .slice(0, MOST_SETS)
}

function groundsAfter(grounds: readonly Ground[], set: readonly Candidate[]): readonly Ground[] {
  return set.reduce<readonly Ground[]>(
    (so, { ways }) => (ways.length === 0 ? so : so.flatMap((ground) => ways.map((way) => way(ground)))),
    grounds,
  )
}

function isSame(left: readonly Candidate[], right: readonly Candidate[]): boolean {
  return left.length === right.length && left.every((one) => holds(right, one))
}

function candidatesOn(
  grounds: readonly Ground[],
  question: Question,
  person: string,
  days: readonly number[],
): Candidate[] {
  return grounds.flatMap(({ records, work }) => candidatesFor(question, lineOf(records, work, person), days))
}

function holds(set: readonly Candidate[], candidate: Candidate): boolean {
  return set.some((one) => textOf(one) === textOf(candidate))
}

/** A change as text; of which records it speaks does not make it another. */
function textOf({ change }: Pick<Candidate, 'change'>): string {
  return canonicalJson({ ...change, records: [] })
}

/** By the vocabulary, then by the plain text of the change. */
function compareChanges(left: Change, right: Change): number {
  const byKind = VOCABULARY.indexOf(left.kind) - VOCABULARY.indexOf(right.kind)
  return byKind || compareTexts(textOf({ change: left }), textOf({ change: right }))
}

function fewestFirst(left: readonly Change[], right: readonly Change[]): number {
  if (left.length !== right.length) return left.length - right.length
  for (const [index, change] of left.entries()) {
    const other = right[index]
    const order = other === undefined ? 0 : compareChanges(change, other)
    if (order !== 0) return order
  }
  return 0
}

/** Whether the work can be done on every day: alone, or under the supervisors of the set. */
function reachesGoal(
  { records, work }: Ground,
  set: readonly Candidate[],
  person: string,
  days: readonly number[],
): boolean {
  const line = lineOf(records, work, person)
  return days.every((day) => {
    const { standing, findings } = line.at(day)
    if (standing === 'independent') return true
    if (standing !== 'training' && standing !== 'own-level') return false
    return findings.every((finding) => isSupervisedBy(set, finding, day))
  })
}

/** Whether a need of a supervisor is met on a day by somebody of the set; other findings ask for nobody. */
function isSupervisedBy(set: readonly Candidate[], finding: Finding, day: number): boolean {
  if (finding.kind !== 'training-only' && finding.kind !== 'needs-supervisor') return true
  const { kind, supervisor } = finding
  return set.some(
    ({ change }) =>
      change.kind === 'add-supervisor' &&
      change.level === supervisor &&
      change.trainer === (kind === 'training-only') &&
      (change.trainers ?? []).join() === trainersOf(finding).join() &&
      change.days.some((span) => isCovered(day, span.first, span.last)),
  )
}

function countOthers(records: Records, question: Question, person: string, days: readonly number[]): number {
  const plan = planner(records, question.work)
  return records.people.filter(
    ({ id }) => id !== person && isIndependentOn(lineOf(records, question.work, id, plan), days),
  ).length
}

/** The nearest dates of the same length, not before today, on which the person is on their own throughout. */
function nearestDate(line: Line, question: Question, length: number): Span | undefined {
  const first = dayNumber(question.first)
  for (let away = 1; away <= MOST_DAYS_AWAY; away += 1) {
    for (const start of [first + away, first - away]) {
      const days = daysFrom(start, start + length - 1)
      if (start < dayNumber(question.today) || !isIndependentOn(line, days)) continue
      return { first: dayText(start), last: dayText(start + length - 1) }
    }
  }
  return undefined
}
