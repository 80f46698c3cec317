import type {
  Answer,
  EndedBy,
  Finding,
  HoldsThrough,
  SubSpan,
  Work,
} from '../../lib/core/authority/answer.ts'
import type { Question } from '../../lib/core/authority/question.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import type { Standing } from '../../lib/core/rulebooks/standing.ts'
import { askAbout, type Asked } from './asked.ts'
import { dayNumber, daysFrom, dayText } from './days.ts'
import { findingKey, rankOfStanding, sortedFindings, worstOf } from './findings.ts'
import { joinNotes, notesOnDay } from './notes-day.ts'
import { askOneDay, type OneDay } from './one-day.ts'
import { quietAfter } from './quiet-after.ts'
import { planner, type PlannedDay } from './ratings-day.ts'

const HORIZON = 3660

/** One person asked about one piece of work, day by day; days already asked are remembered. */
export type Line = { asked: Asked; at: (day: number) => OneDay; plan: (day: number) => PlannedDay }

/** Makes the line of a person over time. A plan of the work's complexity may be shared by many persons. */
export function lineOf(
  records: Records,
  work: Work,
  person: string,
  plan: (day: number) => PlannedDay = planner(records, work),
): Line {
  const asked = askAbout(records, work, person)
  const days = new Map<number, OneDay>()
  const at = (day: number) => {
    let one = days.get(day)
    if (one === undefined) {
      one = askOneDay(asked, day, plan(day).complexity)
      days.set(day, one)
    }
    return one
  }
  return { asked, at, plan }
}

/** The answer about one person, computed one day after the other; remedies apart. */
export function plainAnswer(records: Records, question: Question, person: string): Omit<Answer, 'remedies'> {
  const line = lineOf(records, question.work, person)
  const first = dayNumber(question.first)
  const days = daysFrom(first, dayNumber(question.last))
  const spans = subSpans(line, days)
  const notes = days.map((day) => ({ day, notes: notesOnDay(line.asked, day, line.at(day), line.plan(day)) }))
  return {
    person,
    standing: worstOf(spans.map((span) => span.standing)),
    spans,
    ...endOfRun(line, first, quietAfter(records, person)),
    findings: sortedFindings(spans.flatMap((span) => span.findings)),
    notes: joinNotes(notes),
  }
}

function subSpans(line: Line, days: readonly number[]): SubSpan[] {
  const spans: SubSpan[] = []
  for (const day of days) {
    const { standing } = line.at(day)
    const findings = sortedFindings(line.at(day).findings)
    const open = spans.at(-1)
    if (open !== undefined && open.standing === standing && haveSameFindings(open.findings, findings)) {
      open.last = dayText(day)
    } else {
      spans.push({ first: dayText(day), last: dayText(day), standing, findings })
    }
  }
  return spans
}

function haveSameFindings(left: readonly Finding[], right: readonly Finding[]): boolean {
  if (left.length !== right.length) return false
  const keys = new Set(left.map(findingKey))
  return right.every((finding) => keys.has(findingKey(finding)))
}

/** Walks from the first day until the standing changes, and on until it is worse than on the first day. */
function endOfRun(
  line: Line,
  first: number,
  quiet: number,
): { holdsThrough: HoldsThrough; endedBy?: EndedBy; atLeastThrough: HoldsThrough } {
  const start = line.at(first).standing
  const changed = firstDayAfter(line, first, quiet, (standing) => standing !== start)
  if (changed === undefined) return { holdsThrough: 'open', atLeastThrough: 'open' }
  const worse = firstDayAfter(
    line,
    first,
    quiet,
    (standing) => rankOfStanding(standing) < rankOfStanding(start),
  )
  const [before, after] = [line.at(changed - 1), line.at(changed)]
  const endedBy = {
    day: dayText(changed),
    standing: after.standing,
    came: sortedFindings(without(after.findings, before.findings)),
    went: sortedFindings(without(before.findings, after.findings)),
  }
  const atLeastThrough = worse === undefined ? 'open' : dayText(worse - 1)
  return { holdsThrough: dayText(changed - 1), endedBy, atLeastThrough }
}

/** The first day of which something is so; days after the last one that anything on record speaks of are not walked. */
function firstDayAfter(
  line: Line,
  first: number,
  quiet: number,
  isIt: (standing: Standing) => boolean,
): number | undefined {
  for (let day = first + 1; day <= Math.min(first + HORIZON, quiet); day += 1) {
    if (isIt(line.at(day).standing)) return day
  }
  return undefined
}

function without(findings: readonly Finding[], others: readonly Finding[]): Finding[] {
  const keys = new Set(others.map(findingKey))
  return findings.filter((finding) => !keys.has(findingKey(finding)))
}
