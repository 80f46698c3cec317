import type { AttendanceProblem } from '../core/courses/attendance.ts'
import type { Conflict } from '../core/courses/conflicts.ts'
import type { EvaluatorDays } from '../core/courses/season-needs.ts'
import type { Missing } from '../core/courses/share-out.ts'
import type { CarryProblem, NoShareRule } from '../core/courses/shares.ts'
import type { Certification } from '../core/courses/training-record.ts'
import { trainingRecordWords } from './course-words.ts'
import type { CourseNames } from './courses.ts'
import { dayText, daysText } from './days.ts'
import { findingSentence } from './findings.ts'
import { joinedByAnd } from './lists.ts'
import { ruleSourceText } from './rules.ts'
import { complexityWords, workKindWords } from './work-words.ts'

type Of<Union extends { kind: string }, Kind extends Union['kind']> = Extract<Union, { kind: Kind }>

/** What in a session collides, and why: one plain sentence. */
export function conflictSentence(conflict: Conflict, names: CourseNames): string {
  // The key picks the function for its own kind; TypeScript cannot follow that across the union.
  const sentence = CONFLICTS[conflict.kind] as (conflict: Conflict, names: CourseNames) => string
  return sentence(conflict, names)
}

const CONFLICTS: {
  [Kind in Conflict['kind']]: (conflict: Of<Conflict, Kind>, names: CourseNames) => string
} = {
  'day-outside': ({ day, firstDay, lastDay }) =>
    `Something is planned on ${dayText(day)}, and the session runs from ${dayText(firstDay)} through ${dayText(lastDay)}.`,
  'work-outside': ({ day, group, workKind }) =>
    `On ${dayText(day)} the group ${group} is planned for ${workKindWords[workKind]}, which is no work of this session.`,
  'module-unknown': ({ module, edition }, names) =>
    `The module ${names.module(module)} does not stand in “${names.edition(edition)}”.`,
  'module-without-day': ({ module }, names) =>
    `The module ${names.module(module)} belongs to the session and is planned on no day.`,
  'mixed-group': ({ day, group, workKinds, rule }) =>
    `On ${dayText(day)} the group ${group} mixes ${joinedByAnd(workKinds.map((kind) => workKindWords[kind]))}; ${ruleSourceText(rule)}.`,
  'place-closed': ({ day, place, workKind }, names) =>
    `On ${dayText(day)} ${workKindWords[workKind]} is stopped at ${names.place(place)}.`,
  'no-edition-that-day': ({ day }) =>
    `On ${dayText(day)} no edition of the book is in force at the place of this session.`,
  'over-ratio': ({ ratio, day, group, candidates, trainers, each, rule }) =>
    `On ${dayText(day)} the group ${group} has ${counted(candidates.length, 'candidate')} and ${counted(trainers.length, 'entitled trainer')}; ${
      ratio === 'per-trainer'
        ? `each has at most ${each}`
        : `while one of them cuts, each trainer has at most ${each} at hand, and the others wait their turn elsewhere`
    }; ${ruleSourceText(rule)}.`,
  elsewhere: ({ person, days, other }, names) =>
    `On ${joinedByAnd(days.map(dayText))} ${names.person(person)} is also in ${
      other.kind === 'hitch' ? names.hitch(other.id) : names.session(other.id)
    }.`,
  'teaches-and-learns': ({ person, days }, names) =>
    `On ${joinedByAnd(days.map(dayText))} ${names.person(person)} is both on the staff and on the roster.`,
  'staff-twice': ({ person, day, groups }, names) =>
    `On ${dayText(day)} ${names.person(person)} is with the groups ${joinedByAnd(groups)} at once.`,
  'staff-day-without-sitting': ({ person, day }, names) =>
    `On ${dayText(day)} ${names.person(person)} is on the staff, and nothing is planned for them.`,
  'two-groups': ({ person, day, groups }, names) =>
    `On ${dayText(day)} the place of ${names.person(person)} is for the groups ${joinedByAnd(groups)} alike; name one.`,
  'no-sitting-for-seat': ({ person }, names) =>
    `No field day is planned for the work and the group of ${names.person(person)}.`,
  'group-unknown': ({ person, group }, names) =>
    `The group ${group} of ${names.person(person)} is on no field day of the session.`,
  'carried-to-nowhere': ({ person, to }, names) =>
    `The place of ${names.person(person)} was carried over to ${names.session(to)}, where none is asked for.`,
}

/** What a candidate should get and does not: one plain sentence. */
export function missingShareSentence(missing: Missing, names: CourseNames): string {
  const { person, workKind, complexity, wanted, got, because } = missing
  const why = {
    'none-on-site': 'the session lists none',
    'may-not-train': 'they may not train on any of those the session lists',
    'too-few': 'there are too few for all who want them',
  } satisfies Record<Missing['because'], string>
  return `For ${workKindWords[workKind]} that is ${complexityWords[complexity]}, ${names.person(person)} gets ${got} of ${wanted}, because ${why[because]}.`
}

/** That no rule says what somebody should get: one plain sentence. */
export function noShareRuleSentence({ person, level, workKind }: NoShareRule, names: CourseNames): string {
  return `The book does not say what ${names.person(person)}, who asks for ${level}, gets of ${workKindWords[workKind]}.`
}

/** Why a share is not carried over: one plain sentence. */
export function carryProblemSentences(problem: CarryProblem, names: CourseNames): readonly string[] {
  switch (problem.kind) {
    case 'not-later':
      return [`It stands on ${dayText(problem.day)} and can be carried over to a later day only.`]
    case 'no-field-day':
      return [`For them ${dayText(problem.to)} is no field day of this work.`]
    case 'not-a-day-of-the-item':
      return [`The log or tree is not there to be worked on ${dayText(problem.to)}.`]
    case 'may-not-that-day':
      return [
        problem.standing === 'unknown'
          ? `Whether they may work on it on ${dayText(problem.to)} is not on record.`
          : `On ${dayText(problem.to)} they may not work on it.`,
        ...problem.findings.map((finding) => findingSentence(finding, names)),
      ]
    case 'not-on-roster':
      return [`No place on the roster is held by ${names.person(problem.person)}.`]
    case 'not-an-item-of-the-session':
      return [`The list of the session does not hold ${names.item(problem.item)}.`]
  }
}

/** What on a sheet of attendance does not fit: one plain sentence. */
export function attendanceProblemSentence(problem: AttendanceProblem, names: CourseNames): string {
  const { person, module, day } = problem
  const what = `On ${dayText(day)} the sheet names ${names.person(person)} for ${names.module(module)}`
  switch (problem.kind) {
    case 'not-planned-that-day':
      return `${what}, which is not planned that day.`
    case 'not-on-roster':
      return `${what}, without a place on the roster.`
    case 'said-twice':
      return `${what} more than once: ${joinedByAnd(problem.was.map((was) => WAS[was]))}.`
  }
}

const WAS = { present: 'present', partly: 'there for a part', absent: 'absent' } as const

/** What a certification of training lacks: one plain sentence; nothing where it lacks nothing. */
export function certificationLacksSentence({ missing, rule }: Certification): string | undefined {
  if (missing.length === 0 || rule === undefined) return undefined
  return `This certification lacks ${joinedByAnd(missing.map((part) => trainingRecordWords[part]))}; ${ruleSourceText(rule)}.`
}

/** The days of evaluators that a season wants against those it has, with the sum: one plain sentence. */
export function evaluatorDaysSentence(days: EvaluatorDays): string {
  const { workKind, byCards, bySeats, candidates, had } = days
  const who = `For ${workKindWords[workKind]} there are ${counted(candidates, 'candidate')} (${byCards.length} by cards that end, ${bySeats.length} by places asked for)`
  if (!days.reckoned)
    return `${who}; the book has no rule of kind ${days.lacks}, so nothing is reckoned from it.`
  const { each, fieldDays, wanted, short, eachRule, daysRule } = days
  return `${who}: divided by ${each}, rounded up, times ${counted(fieldDays, 'field day')}, that is ${daysText(wanted)} of an evaluator wanted, ${had} had and ${short} short; ${ruleSourceText(eachRule)}, ${ruleSourceText(daysRule)}.`
}

function counted(count: number, one: string): string {
  return count === 1 ? `1 ${one}` : `${count} ${one}s`
}
