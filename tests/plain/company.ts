import type { CompanyDays } from '../../lib/core/authority/answer.ts'
import type { CompanyMember, Question } from '../../lib/core/authority/question.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import { ageOn } from './ages-day.ts'
import { lineOf, type Line } from './answer.ts'
import { levelHere, rankOfLevel, ruleOf, supervisorLevel } from './books-day.ts'
import { dayNumber, daysFrom, dayText, isCovered } from './days.ts'
import { canonicalJson, compareTexts } from './findings.ts'
import { bestMatching, shortOf } from './matching.ts'
import { planner } from './ratings-day.ts'

type Learner = CompanyDays['learners'][number]

/** Who could supervise whom on each day, and whether all are served at once; days with equal answers are joined. */
export function plainCompany(records: Records, question: Question): CompanyDays[] {
  const { company, work } = question
  if (company === undefined) return []
  const plan = planner(records, work)
  const lines = new Map<string, Line>()
  const lineFor = (person: string) => {
    let line = lines.get(person)
    if (line === undefined) {
      line = lineOf(records, work, person, plan)
      lines.set(person, line)
    }
    return line
  }
  const runs: CompanyDays[] = []
  for (const day of daysFrom(dayNumber(question.first), dayNumber(question.last))) {
    const next = companyOn(question, company, lineFor, day)
    const open = runs.at(-1)
    if (open !== undefined && sameDay(open) === sameDay(next)) open.last = next.last
    else runs.push(next)
  }
  return runs
}

function sameDay({ learners, feasible }: CompanyDays): string {
  return canonicalJson([learners, feasible])
}

function companyOn(
  question: Question,
  company: readonly CompanyMember[],
  lineFor: (person: string) => Line,
  day: number,
): CompanyDays {
  const present = new Map<string, CompanyMember>()
  for (const member of company) {
    if (!isCovered(day, member.days?.first, member.days?.last)) continue
    if (!present.has(member.person)) present.set(member.person, member)
  }
  const named = question.persons === undefined ? undefined : [...new Set(question.persons)]
  const listed = new Set(company.map(({ person }) => person))
  for (const person of named ?? []) if (!listed.has(person)) present.set(person, { person })
  const learners: Learner[] = []
  for (const person of (named ?? [...present.keys()]).sort(compareTexts)) {
    const { standing } = lineFor(person).at(day)
    if (standing === 'independent') continue
    const isSupervised = standing === 'training' || standing === 'own-level'
    const member = present.get(person)
    if (named === undefined && !isSupervised) continue
    if (member === undefined) learners.push({ person, standing: 'absent', may: [] })
    else if (!isSupervised) learners.push({ person, standing, may: [] })
    else learners.push({ person, standing, may: whoMay(member, [...present.values()], lineFor, day) })
  }
  const places = cutsAtOnce(lineFor, learners, day)
  const pairs = bestMatching(learners, places)
  const feasible = pairs.length === learners.length
  const short = feasible ? undefined : shortOf(learners, places)
  const date = dayText(day)
  return {
    first: date,
    last: date,
    learners,
    pairs,
    feasible,
    ...(short === undefined ? {} : { short }),
  }
}

function cutsAtOnce(lineFor: (person: string) => Line, learners: readonly Learner[], day: number): number {
  const someone = learners.find((learner) => learner.may.length > 0)
  const edition = someone === undefined ? undefined : lineFor(someone.person).at(day).edition
  return edition === undefined ? 1 : ruleOf(edition, 'supervision').cutsAtOnce
}

/** The members who may supervise a learner on a day. */
function whoMay(
  learner: CompanyMember,
  present: readonly CompanyMember[],
  lineFor: (person: string) => Line,
  day: number,
): string[] {
  const learning = lineFor(learner.person).at(day)
  return present
    .filter((member) => member.person !== learner.person && member.party === learner.party)
    .filter(({ person }) => {
      const line = lineFor(person)
      const { standing, edition } = line.at(day)
      if (standing !== 'independent' || edition === undefined) return false
      if (ageOn(line.asked.person, ruleOf(edition, 'supervision').ofAge, day) !== 'reached') return false
      if (learning.standing !== 'training') return true
      return isTrainer(line, day) && (learning.trainers === undefined || learning.trainers.includes(person))
    })
    .map((member) => member.person)
    .sort(compareTexts)
}

/** Whether somebody is designated at or above the lowest level that is independent for the work. */
function isTrainer({ asked, at, plan }: Line, day: number): boolean {
  const { records, work, id } = asked
  const { edition } = at(day)
  if (edition === undefined) return false
  const least = supervisorLevel(edition, work, plan(day).complexity)
  if (least === undefined) return false
  const { roles } = ruleOf(edition, 'supervision.trainer')
  const leastRank = rankOfLevel(edition, least) ?? Infinity
  return records.designations.some((one) => {
    if (one.person !== id || !roles.includes(one.role)) return false
    if (!one.workKinds.includes(work.workKind) || one.sawKind !== work.sawKind) return false
    if (!isCovered(day, one.firstDay, one.lastDay)) return false
    const level = levelHere(edition, one.book, one.level, work)
    return level !== undefined && (rankOfLevel(edition, level) ?? -1) >= leastRank
  })
}
