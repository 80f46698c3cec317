import type { EndedBy, Finding, HoldsThrough, SubSpan, Work } from '../../core/authority/answer.ts'
import type { AnswerBody } from '../../core/authority/answer-one.ts'
import { askBriefly } from '../../core/authority/ask.ts'
import type { Authority } from '../../core/authority/authority-index.ts'
import { explain } from '../../core/authority/explain.ts'
import type { PersonIndex } from '../../core/authority/person-index.ts'
import { supervisors, workRuns } from '../../core/authority/work-runs.ts'
import { plusDays, type CalendarDate } from '../../core/calendar/dates.ts'
import type { Span } from '../../core/calendar/spans.ts'
import { rankOf, TRAINING, type Standing } from '../../core/rulebooks/standing.ts'
import { COMPLEXITIES, type Complexity, type SawKind, type WorkKind } from '../../core/rulebooks/words.ts'
import { statusOfAnswer, type Status } from '../../drawings/status.ts'
import { usualWork, workOf } from './usual-work.ts'

/** How far a line on a page goes back and ahead of today, in days. */
const BACK = 90
const AHEAD = 456

/** The days that the lapse lines of a page show. */
export function shownDays(today: CalendarDate): Span {
  return { first: plusDays(today, -BACK), last: plusDays(today, AHEAD) }
}

/**
 * The mark of a line, or what has none: `no-card` where no card on record is for this work, `no` where something else
 * stands in the way that neither ended nor is still to come.
 */
export type LineStatus = Status | 'no-card' | 'no'

/** A person's standing for a kind of work, today and over the days that are shown. */
export type StandingLine = {
  /** What they were asked about. */
  work: Work & { complexity: Complexity }
  /** Today's. */
  standing: Standing
  findings: readonly Finding[]
  /** How long it is no worse than today; of a no, how long it stays one. */
  through: HoldsThrough
  endedBy?: EndedBy
  /** The levels that may supervise it, lowest first. */
  supervisors: readonly string[]
  /** The runs of the days that are shown, and of the day after. */
  spans: readonly SubSpan[]
  status: LineStatus
  /** Of what ended: the last day on which it held. */
  lapsedOn?: CalendarDate
}

/** What is asked of everybody alike. */
export type KindAsked = { workKind: WorkKind; sawKind: SawKind }

/**
 * For each person the strongest line for a kind of work: of the complexities at which today's standing is best the
 * greatest; the least complex, where it is a no or not on record.
 */
export function strongestLines(
  authority: Authority,
  people: readonly PersonIndex[],
  kind: KindAsked,
  today: CalendarDate,
): Map<string, StandingLine> {
  const lines = new Map<string, StandingLine>()
  for (const { usual, members } of alike(authority, people, today)) {
    const work = workOf(usual, kind)
    const byComplexity = COMPLEXITIES.map((complexity) => ({
      complexity,
      answers: askedToday(authority, { ...work, complexity }, members, today),
    }))
    const chosen = new Map<Complexity, { id: string; answer: AnswerBody }[]>()
    members.forEach(({ id }, at) => {
      const of = byComplexity.map(({ complexity, answers }) => ({ complexity, answer: answers[at] }))
      const best = strongest(of.flatMap(({ complexity, answer }) => (answer ? [{ complexity, answer }] : [])))
      if (best === undefined) return
      const list = chosen.get(best.complexity) ?? []
      list.push({ id, answer: best.answer })
      chosen.set(best.complexity, list)
    })
    for (const [complexity, list] of chosen) {
      for (const [id, line] of linesFor(authority, { ...work, complexity }, list, today)) lines.set(id, line)
    }
  }
  return lines
}

/** A person's lines for a kind of work, one for each complexity, in rising order. */
export function allLines(
  authority: Authority,
  person: PersonIndex,
  kind: KindAsked,
  today: CalendarDate,
): StandingLine[] {
  const work = workOf(usualWork(authority, person, today), kind)
  return COMPLEXITIES.flatMap((complexity) => {
    const asked = { ...work, complexity }
    const [answer] = askedToday(authority, asked, [person], today)
    if (answer === undefined) return []
    return [...linesFor(authority, asked, [{ id: person.id, answer }], today).values()]
  })
}

/** The level at which a person is judged for a line today, in the words of the book that governs; nothing without a card. */
export function levelOfLine(
  authority: Authority,
  person: string,
  work: Work,
  today: CalendarDate,
): { level: string; card: string } | undefined {
  const [day] = explain(authority, { work, first: today, last: today, today }, person)
  if (day === undefined || day.spokenBy.by !== 'card' || day.spokenBy.level === undefined) return undefined
  return { level: day.spokenBy.level, card: day.spokenBy.card }
}

/** People who are asked about the same work are asked together. */
function alike(authority: Authority, people: readonly PersonIndex[], today: CalendarDate) {
  const groups = new Map<string, { usual: ReturnType<typeof usualWork>; members: PersonIndex[] }>()
  for (const person of people) {
    const usual = usualWork(authority, person, today)
    const key = JSON.stringify([usual.place, usual.species])
    const group = groups.get(key)
    if (group === undefined) groups.set(key, { usual, members: [person] })
    else group.members.push(person)
  }
  return groups.values()
}

function askedToday(
  authority: Authority,
  work: Work,
  members: readonly { id: string }[],
  today: CalendarDate,
): readonly AnswerBody[] {
  const persons = members.map(({ id }) => id)
  return askBriefly(authority, { work, first: today, last: today, today, persons })
}

function strongest(answers: readonly { complexity: Complexity; answer: AnswerBody }[]) {
  const [least, ...others] = answers
  if (least === undefined || !isYes(least.answer.standing)) return least
  return others.reduce(
    (best, other) => (rankOf(other.answer.standing) >= rankOf(best.answer.standing) ? other : best),
    least,
  )
}

function linesFor(
  authority: Authority,
  work: Work & { complexity: Complexity },
  people: readonly { id: string; answer: AnswerBody }[],
  today: CalendarDate,
): Map<string, StandingLine> {
  const shown = shownDays(today)
  const persons = people.map(({ id }) => id)
  // One day more than is shown: a run that goes on past the edge is told from one that ends there.
  const days = { first: shown.first, last: plusDays(shown.last, 1) }
  const runs = askBriefly(authority, { work, ...days, today, persons })
  const question = { work, first: today, last: today, today }
  const levels = supervisors(workRuns(authority, question), question)
  return new Map(
    people.flatMap(({ id, answer }, at) => {
      const spans = runs[at]?.spans
      if (spans === undefined) return []
      return [[id, { work, ...todayOf(authority, work, answer, today), supervisors: levels, spans }]]
    }),
  )
}

function todayOf(authority: Authority, work: Work, answer: AnswerBody, today: CalendarDate) {
  const { standing, findings, holdsThrough, atLeastThrough } = answer
  const through = isYes(standing) ? atLeastThrough : holdsThrough
  const endedBy =
    through === holdsThrough || through === 'open'
      ? answer.endedBy
      : // It grows better first: what makes it worse is asked on its last good day.
        askBriefly(authority, { work, first: through, last: through, today, persons: [answer.person] })[0]
          ?.endedBy
  const status = statusOf({ ...answer, holdsThrough: through }, today)
  const lapsedOn = status === 'lapsed' ? firstEnd(findings) : undefined
  return {
    standing,
    findings,
    through,
    status,
    ...(endedBy === undefined || through === 'open' ? {} : { endedBy }),
    ...(lapsedOn === undefined ? {} : { lapsedOn }),
  }
}

function statusOf(answer: AnswerBody, today: CalendarDate): LineStatus {
  const status = statusOfAnswer(answer, today, today)
  if (isYes(answer.standing) || status === 'not-on-record') return status
  if (answer.findings.some(({ kind }) => kind === 'no-card')) return 'no-card'
  return status === 'not-yet' && !answer.findings.some(isStillToCome) ? 'no' : status
}

/** Whether a finding goes away by itself on a later day. */
function isStillToCome(finding: Finding): boolean {
  if (finding.kind === 'no-agreement') return finding.says === 'not-begun'
  return finding.kind === 'card-not-yet-valid' || finding.kind === 'under-age'
}

/** Whether a standing lets somebody work, on their own or under somebody. */
export function isYes(standing: Standing): boolean {
  return rankOf(standing) >= TRAINING
}

/** The earliest last day among what ended. */
function firstEnd(findings: readonly Finding[]): CalendarDate | undefined {
  const days = findings.flatMap((finding) => {
    if (finding.kind === 'card-no-longer-valid' || finding.kind === 'certificate-lapsed')
      return [finding.lastDay]
    return finding.kind === 'no-agreement' && finding.says === 'ended' ? (finding.day ?? []) : []
  })
  return days.sort()[0]
}
