import type { CompanyDays } from '../core/authority/answer.ts'
import { capitalised, joinedByAnd, joinedByOr } from './lists.ts'
import type { Names } from './names.ts'
import { onDays } from './days.ts'
import { standingText } from './standings.ts'

/** Who supervises whom on a run of days, and what is short: sentences in the order to read them. */
export function companySentences(days: CompanyDays, names: Names): string[] {
  const when = capitalised(onDays(days))
  if (days.learners.length === 0) return [`${when}: nobody needs a supervisor.`]
  const sentences = days.pairs.map(
    (pair) => `${when}: ${names.person(pair.supervisor)} supervises ${names.person(pair.learner)}.`,
  )
  for (const learner of days.learners) {
    const sentence = unservedSentence(learner, days, names)
    if (sentence !== undefined) sentences.push(`${when}: ${sentence}`)
  }
  if (days.short !== undefined) sentences.push(`${when}: ${shortSentence(days.short, names)}`)
  return sentences
}

function unservedSentence(
  learner: CompanyDays['learners'][number],
  days: CompanyDays,
  names: Names,
): string | undefined {
  const name = names.person(learner.person)
  if (learner.standing === 'absent') return `${name} is not there.`
  if (learner.standing === 'none' || learner.standing === 'unknown') {
    return `${name} may not be supervised, because the answer is ${standingText(learner.standing)}.`
  }
  if (days.pairs.some((pair) => pair.learner === learner.person)) return undefined
  if (learner.may.length === 0) return `nobody in the company may supervise ${name}.`
  return `${name} is without a supervisor; ${joinedByOr(learner.may.map(names.person))} could supervise, and is taken.`
}

function shortSentence(short: NonNullable<CompanyDays['short']>, names: Names): string {
  const learners = joinedByAnd(short.learners.map(names.person))
  const supervisors =
    short.supervisors.length === 0 ? 'nobody' : joinedByAnd(short.supervisors.map(names.person))
  const places = short.places === 1 ? '1 cut' : `${short.places} cuts`
  const needs =
    short.learners.length === 1
      ? 'needs a supervisor'
      : `together need ${short.learners.length} supervisors at one time`
  return `short by ${short.learners.length - short.places}: ${learners} ${needs}, and ${supervisors} may watch ${places} at one time.`
}
