import type { EpochDay } from '../calendar/dates.ts'
import { longestRuns } from '../calendar/partitions.ts'
import { Cuts } from '../calendar/partitions.ts'
import { hasDay, toDaySpan, toSpan, type DaySpan } from '../calendar/spans.ts'
import { recognisedLevel } from '../cards/card-index.ts'
import { byText } from '../kernel/order.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import { INDEPENDENT, isSupervised, standingOf, TRAINING, type StandingRank } from '../rulebooks/standing.ts'
import type { CompanyDays } from './answer.ts'
import type { AskedWork } from './asked-work.ts'
import { isDesignated, type Authority } from './authority-index.ts'
import { openAssignments } from './judge-assignment.ts'
import { caseOf, explainDay, judgeDay } from './judge-day.ts'
import { matchLearners } from './matching.ts'
import type { PersonIndex } from './person-index.ts'
import type { CompanyMember } from './question.ts'

type Member = { person: PersonIndex; days: DaySpan; party: string | undefined }
type Present = Member & { rank: StandingRank }
type CompanyDay = Omit<CompanyDays, 'first' | 'last'>

/**
 * Who supervises whom on each day, within the ratio of the book: for each who needs a supervisor everybody who may be
 * it, and one matching of greatest size. Standing never depends on it.
 */
export function judgeCompany(
  authority: Authority,
  asked: AskedWork,
  span: DaySpan,
  company: readonly CompanyMember[],
  named: readonly string[] | undefined,
): CompanyDays[] {
  const members = membersOf(authority, company, named ?? [])
  const cuts = new Cuts(span)
  for (const day of asked.changes) cuts.at(day)
  for (const { person, days } of members) {
    for (const day of person.changes) cuts.at(day)
    for (const day of authority.shared.designationChanges(person.id)) cuts.at(day)
    cuts.around(days)
  }
  const pieces = cuts
    .pieces()
    .map((piece) => ({ ...piece, value: judgeCompanyDay(authority, asked, members, named, piece.first) }))
  return longestRuns(pieces, (left, right) => JSON.stringify(left) === JSON.stringify(right)).map((run) => ({
    ...toSpan(run),
    ...run.value,
  }))
}

function membersOf(
  authority: Authority,
  company: readonly CompanyMember[],
  named: readonly string[],
): Member[] {
  const listed = new Set(company.map(({ person }) => person))
  const all: CompanyMember[] = [
    ...company,
    ...named.filter((id) => !listed.has(id)).map((person) => ({ person })),
  ]
  return all.flatMap(({ person: id, days, party }) => {
    const person = authority.person(id)
    return person === undefined ? [] : [{ person, days: toDaySpan(days?.first, days?.last), party }]
  })
}

function judgeCompanyDay(
  authority: Authority,
  asked: AskedWork,
  members: readonly Member[],
  named: readonly string[] | undefined,
  day: EpochDay,
): CompanyDay {
  const { edition } = asked.pieceOn(day)
  const judged = members.map((member): Present => ({
    ...member,
    rank: judgeDay(caseOf(authority, member.person, asked), day),
  }))
  const present = judged.filter(({ days }) => hasDay(days, day))
  const learners = judged.filter((member) => {
    if (named !== undefined) return named.includes(member.person.id) && member.rank !== INDEPENDENT
    return isSupervised(member.rank) && hasDay(member.days, day)
  })
  const supervisors =
    edition === undefined ? [] : present.filter((member) => maySupervise(edition, member, day))
  const may = learners.map((learner) =>
    edition === undefined || !hasDay(learner.days, day)
      ? []
      : supervisors.filter((supervisor) => serves(authority, edition, asked, supervisor, learner, day)),
  )
  const capacity = edition?.all('supervision')[0]?.cutsAtOnce ?? 1
  const matched = matchLearners({
    learners: learners.length,
    supervisors: supervisors.length,
    capacity,
    may: may.map((list) => list.map((supervisor) => supervisors.indexOf(supervisor))),
  })
  const idOf = (list: readonly Present[], index: number) => list[index]?.person.id ?? ''
  const { deficient } = matched
  return {
    learners: learners.map((learner, index) => ({
      person: learner.person.id,
      standing: hasDay(learner.days, day) ? standingOf(learner.rank) : 'absent',
      may: (may[index] ?? []).map(({ person }) => person.id).sort(byText),
    })),
    pairs: matched.pairs.map(({ learner, supervisor }) => ({
      learner: idOf(learners, learner),
      supervisor: idOf(supervisors, supervisor),
    })),
    feasible: deficient === undefined,
    ...(deficient === undefined
      ? {}
      : {
          short: {
            learners: deficient.learners.map((index) => idOf(learners, index)),
            supervisors: deficient.supervisors.map((index) => idOf(supervisors, index)),
            places: deficient.supervisors.length * capacity,
          },
        }),
  }
}

function maySupervise(edition: EditionIndex, { person, rank }: Present, day: EpochDay): boolean {
  const [rule] = edition.all('supervision')
  return rule !== undefined && rank === INDEPENDENT && person.ages.on(rule.ofAge, day) === 'reached'
}

function serves(
  authority: Authority,
  edition: EditionIndex,
  asked: AskedWork,
  supervisor: Present,
  learner: Present,
  day: EpochDay,
): boolean {
  if (supervisor.party !== learner.party || !isSupervised(learner.rank)) return false
  if (learner.rank !== TRAINING) return true
  const { work } = asked
  const complexity = asked.pieceOn(day).planned.planned
  const least =
    complexity === 'not-rated' ? undefined : edition.supervisor(work.workKind, work.sawKind, complexity)
  if (least === undefined) return false
  const roles = edition.all('supervision.trainer')[0]?.roles ?? []
  const isTrainer = isDesignated(
    authority,
    supervisor.person.id,
    work.workKind,
    work.sawKind,
    day,
    (designation) => {
      const level = recognisedLevel(edition, designation, work.workKind, work.sawKind)
      const rank = level === undefined ? undefined : edition.level(level)?.rank
      return roles.includes(designation.role) && rank !== undefined && rank >= least.rank
    },
  )
  if (!isTrainer) return false
  if (explainDay(caseOf(authority, learner.person, asked), day).speaker?.by !== 'assignment') return true
  return openAssignments(authority, edition, learner.person, asked, complexity, day).some(({ assignment }) =>
    assignment.trainers.includes(supervisor.person.id),
  )
}
