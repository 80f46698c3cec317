import type { Answer, CompanyDays } from '../core/authority/answer.ts'
import type { Span } from '../core/calendar/spans.ts'
import type { Standing } from '../core/rulebooks/standing.ts'
import { capitalised, joinedByAnd, joinedByOr } from './lists.ts'
import type { Names } from './names.ts'
import { onDays, spansText } from './days.ts'
import { standingText } from './standings.ts'

/** What a member of a company may do, by runs of days. */
export type MemberDays = Pick<Answer, 'person' | 'spans'>

type Learner = CompanyDays['learners'][number]

const GROUPS: readonly { title: string; standings: readonly Standing[] }[] = [
  { title: 'On their own', standings: ['independent'] },
  { title: 'Under supervision', standings: ['own-level', 'training'] },
  { title: 'Not on record', standings: ['unknown'] },
  { title: 'No', standings: ['none'] },
]

/**
 * Everybody in a company with their standing, in groups. Days stand beside a name where they are not all the days
 * asked, so that nobody with a single day that is a no passes for somebody on their own.
 */
export function memberSentences(members: readonly MemberDays[], asked: Span, names: Names): string[] {
  return GROUPS.flatMap(({ title, standings }) => {
    const parts = members.flatMap((member) =>
      standings.flatMap((standing) => memberPart(member, standing, asked, names)),
    )
    if (parts.length > 0) return [`${title}: ${parts.join('; ')}.`]
    return title === 'On their own' ? [`${title}: nobody in this company.`] : []
  })
}

function memberPart(member: MemberDays, standing: Standing, asked: Span, names: Names): string[] {
  const spans = member.spans.filter((span) => span.standing === standing)
  const [first] = spans
  if (first === undefined) return []
  const isAlways = spans.length === 1 && first.first === asked.first && first.last === asked.last
  const beside = [
    ...(standing === 'training' ? ['in training'] : []),
    ...(isAlways ? [] : [spansText(spans)]),
  ].join(', ')
  return [beside === '' ? names.person(member.person) : `${names.person(member.person)} (${beside})`]
}

/** Who supervises whom on a run of days, and what is short: sentences in the order to read them. */
export function companySentences(days: CompanyDays, names: Names, members: readonly MemberDays[]): string[] {
  const when = capitalised(onDays(days))
  if (days.learners.length === 0) return [`${when}: ${nobodySentence(days, names, members)}`]
  const sentences = days.pairs.map(
    (pair) => `${when}: ${names.person(pair.supervisor)} supervises ${names.person(pair.learner)}.`,
  )
  for (const learner of days.learners) {
    const sentence = unservedSentence(learner, days, names)
    if (sentence !== undefined) sentences.push(`${when}: ${sentence}`)
  }
  if (days.short !== undefined) sentences.push(`${when}: ${shortSentence(days.short, days, names)}`)
  return sentences
}

/** Whom a day gives no supervisor is not therefore on their own: a no and what is not on record are said as such. */
function nobodySentence(days: CompanyDays, names: Names, members: readonly MemberDays[]): string {
  const others = members.flatMap(({ person, spans }) => {
    const standings = spans
      .filter((span) => span.first <= days.last && span.last >= days.first)
      .map(({ standing }) => standing)
      .filter((standing) => standing !== 'independent')
    return [...new Set(standings)].map((standing) => ({ person, standing }))
  })
  if (members.length > 0 && others.length === 0) return 'nobody needs a supervisor.'
  const parts = (['own-level', 'training', 'unknown', 'none'] as const).flatMap((standing) => {
    const people = others.filter((other) => other.standing === standing)
    if (people.length === 0) return []
    return [`${standingText(standing)} for ${joinedByAnd(people.map(({ person }) => names.person(person)))}`]
  })
  if (parts.length === 0) return 'nobody is given a supervisor.'
  return `nobody is given a supervisor; the answer is ${parts.join(', and ')}.`
}

function unservedSentence(learner: Learner, days: CompanyDays, names: Names): string | undefined {
  const name = names.person(learner.person)
  if (learner.standing === 'absent') return `${name} is not there.`
  if (learner.standing === 'none' || learner.standing === 'unknown') {
    return `${name} may not be supervised, because the answer is ${standingText(learner.standing)}.`
  }
  if (days.pairs.some((pair) => pair.learner === learner.person)) return undefined
  if (learner.may.length === 0) return `nobody in the company may supervise ${name}.`
  return `${name} is without a supervisor; ${joinedByOr(learner.may.map(names.person))} could supervise, and ${learner.may.length === 1 ? 'is' : learner.may.length === 2 ? 'both are' : 'all are'} taken.`
}

function shortSentence(
  short: NonNullable<CompanyDays['short']>,
  { learners, pairs }: CompanyDays,
  names: Names,
): string {
  const all = learners.length - pairs.length
  const standingOf = (person: string) => learners.find((learner) => learner.person === person)?.standing
  const inStanding = (...standings: readonly (Learner['standing'] | undefined)[]) =>
    short.learners.filter((person) => standings.includes(standingOf(person)))
  const said = (people: readonly string[]) => joinedByAnd(people.map(names.person))
  const are = (people: readonly string[]) => (people.length === 1 ? 'is' : 'are')
  const needing = inStanding('own-level', 'training')
  const refused = inStanding('none')
  const unknown = inStanding('unknown')
  const absent = inStanding('absent')
  const parts = [
    ...(needing.length === 0 ? [] : [needText(needing, short, names)]),
    ...(refused.length === 0 ? [] : [`${said(refused)} may not`]),
    ...(unknown.length === 0 ? [] : [`for ${said(unknown)} the answer is not on record`]),
    ...(absent.length === 0 ? [] : [`${said(absent)} ${are(absent)} absent`]),
  ]
  const shown = short.learners.length - short.places
  // What is shown is the smallest set that proves a shortage; others may be short beside it.
  const openings = shown === all ? `short by ${all}` : `short by ${all} in all, of these by ${shown}`
  return `${openings}: ${parts.join('; ')}.`
}

function needText(
  needing: readonly string[],
  short: NonNullable<CompanyDays['short']>,
  names: Names,
): string {
  const need =
    needing.length === 1 ? 'needs a supervisor' : `together need ${needing.length} supervisors at one time`
  const places = short.places === 1 ? '1 cut' : `${short.places} cuts`
  const watching =
    short.places === 0
      ? 'nobody here may supervise'
      : `${joinedByAnd(short.supervisors.map(names.person))} may watch ${places} at one time`
  return `${joinedByAnd(needing.map(names.person))} ${need}, and ${watching}`
}
