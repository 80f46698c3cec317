import type { Lack, UnmetPrerequisite } from '../core/courses/prerequisites.ts'
import type { RosterLimit } from '../core/courses/roster-limit.ts'
import type { SeatState } from '../core/courses/roster.ts'
import type { MayNotEvaluate, StaffDay, StaffProblem } from '../core/courses/staff-authority.ts'
import type { NothingAssigned } from '../core/courses/assignments-of-seats.ts'
import type { RosterBound } from '../core/courses/roster-limit.ts'
import { dayText } from './days.ts'
import { findingSentence } from './findings.ts'
import { aLevel } from './levels.ts'
import { joinedByAnd, joinedByOr } from './lists.ts'
import type { Names } from './names.ts'
import { ruleSourceText } from './rules.ts'
import { sawKindWords, workKindWords } from './work-words.ts'

/** What the sentences about courses call things, sessions and modules among them. */
export type CourseNames = Names & { session: (id: string) => string; module: (id: string) => string }

type Of<Union extends { kind: string }, Kind extends Union['kind']> = Extract<Union, { kind: Kind }>
type Sentences<Union extends { kind: string }> = {
  [Kind in Union['kind']]: (one: Of<Union, Kind>, names: CourseNames) => string
}

/** How a place that somebody asked for stands: one plain sentence. */
export function seatSentence(state: SeatState, names: CourseNames): string {
  // The key picks the function for its own kind; TypeScript cannot follow that across the union.
  const sentence = SEATS[state.kind] as (state: SeatState, names: CourseNames) => string
  return sentence(state, names)
}

const SEATS: Sentences<SeatState> = {
  'on-roster': ({ number, movedUp }, names) =>
    movedUp === undefined
      ? `On the roster as number ${number}.`
      : `On the roster as number ${number}: moved up on ${dayText(movedUp.day)} because ${names.person(movedUp.because.person)} ${LEFT[movedUp.because.how]}.`,
  waiting: ({ number }) => `On the waiting list as number ${number}.`,
  withdrew: ({ day, staysEmpty }) => `Withdrew on ${dayText(day)}.${staysEmpty ? STAYS_EMPTY : ''}`,
  'carried-over': ({ day, to, staysEmpty }, names) =>
    `Carried over to ${names.session(to)} on ${dayText(day)}.${staysEmpty ? STAYS_EMPTY : ''}`,
  'asked-already': () => 'Asked before, and that place counts; nobody has two.',
}

const LEFT = { withdrew: 'withdrew', 'carried-over': 'was carried over' } as const

const STAYS_EMPTY = ' The session had begun, so the place stays empty.'

/** How many places a session has and what says so: one plain sentence. */
export function rosterLimitSentence({ places, bound }: RosterLimit, names: CourseNames): string {
  if (bound === undefined) return 'No rule limits this roster.'
  const sentence = BOUNDS[bound.kind] as (bound: RosterBound, places: number, names: CourseNames) => string
  return sentence(bound, places, names)
}

const BOUNDS: {
  [Kind in RosterBound['kind']]: (bound: Of<RosterBound, Kind>, places: number, names: CourseNames) => string
} = {
  trainers: ({ day, trainers, each, rule }, places, names) =>
    trainers.length === 0
      ? `This roster has no places, because nobody on the staff is entitled on ${dayText(day)}; ${ruleSourceText(rule)}.`
      : `This roster has ${placesText(places)}: ${each} for each trainer entitled on ${dayText(day)} (${joinedByAnd(trainers.map(names.person))}); ${ruleSourceText(rule)}.`,
  'on-roster': ({ rule }, places) =>
    `This roster has ${placesText(places)}, the most in the field; ${ruleSourceText(rule)}.`,
}

function placesText(places: number): string {
  return places === 1 ? '1 place' : `${places} places`
}

/** Why somebody on the staff may not teach or evaluate on a field day: plain sentences, reasons last. */
export function staffProblemSentences(
  { person, day, workKind }: Pick<StaffDay, 'person' | 'day' | 'workKind'>,
  problem: StaffProblem,
  names: CourseNames,
): readonly string[] {
  const who = `On ${dayText(day)} ${names.person(person)}`
  switch (problem.kind) {
    case 'staff-not-on-record':
      return [`${who} is on the staff and is no person on record.`]
    case 'staff-without-edition':
      return [`On ${dayText(day)} no edition of the book is in force at this place.`]
    case 'not-designated':
      return [`${who} is not designated ${ROLE[problem.role]} for ${workKindWords[workKind]}.`]
    case 'not-designated-that-day':
      return [
        `${who} is not designated ${ROLE[problem.role]}: the designation for ${workKindWords[workKind]} runs from ${dayText(problem.firstDay)}${
          problem.lastDay === undefined ? ' on' : ` through ${dayText(problem.lastDay)}`
        }.`,
      ]
    case 'no-own-authority':
      return [
        problem.standing === 'unknown'
          ? `${who} is on the staff, and own authority for ${workKindWords[workKind]} is not on record.`
          : `${who} has no authority on their own for ${workKindWords[workKind]}.`,
        ...problem.findings.map((finding) => findingSentence(finding, names)),
      ]
  }
}

const ROLE = { instructor: 'as instructor', evaluator: 'as evaluator' } satisfies Record<
  StaffDay['role'],
  string
>

/** Why somebody may not evaluate for a level: one plain sentence. */
export function mayNotEvaluateSentence(reason: MayNotEvaluate, names: CourseNames): string {
  const sentence = EVALUATING[reason.kind] as (reason: MayNotEvaluate, names: CourseNames) => string
  return sentence(reason, names)
}

const EVALUATING: Sentences<MayNotEvaluate> = {
  'evaluates-themselves': () => 'Nobody evaluates themselves.',
  'unknown-level': ({ level }) => `The book has no level ${level}.`,
  'not-designated': ({ workKind, sawKind }) =>
    `No designation as evaluator for ${workKindWords[workKind]} with ${sawKindWords[sawKind]} is on record.`,
  'not-designated-on-day': ({ firstDay, lastDay }) =>
    `The designation as evaluator runs from ${dayText(firstDay)}${lastDay === undefined ? ' on' : ` through ${dayText(lastDay)}`}.`,
  'designated-below': ({ level, wanted }) =>
    `The designation as evaluator reaches level ${level}, and level ${wanted} is asked for.`,
  'no-card': ({ workKind, sawKind }) =>
    `No card of their own for ${workKindWords[workKind]} with ${sawKindWords[sawKind]} is in force.`,
  'holds-below': ({ holds, wanted }) =>
    `Their own card gives level ${holds}, and level ${wanted} is asked for.`,
  'no-evaluator-rule': ({ holds }) => `The book does not say whom ${aLevel([holds])} evaluates.`,
  'not-among-recommended': ({ holds, recommends }) =>
    recommends.length === 0
      ? `By the book ${aLevel([holds])} evaluates nobody.`
      : `By the book ${aLevel([holds])} evaluates for ${joinedByAnd(recommends)} only.`,
}

/** What somebody lacks before field days: the days and the lack first, then the reasons. */
export function prerequisiteSentences(unmet: UnmetPrerequisite, names: CourseNames): readonly string[] {
  const before = `For ${workKindWords[unmet.workKind]} on ${joinedByAnd(unmet.days.map(dayText))}`
  const sentence = LACKS[unmet.kind] as (lack: Lack, names: CourseNames) => readonly string[]
  const [what = '', ...reasons] = sentence(unmet, names)
  return [`${before}: ${what}.`, ...reasons]
}

const LACKS: { [Kind in Lack['kind']]: (lack: Of<Lack, Kind>, names: CourseNames) => readonly string[] } = {
  'candidate-not-on-record': () => ['nobody of this id is on record'],
  'day-without-edition': () => ['no edition of the book is in force at this place'],
  'rules-unmet': ({ standing, findings }, names) => [
    standing === 'unknown'
      ? 'the record does not hold what the book asks for'
      : 'what the book asks for is not met',
    ...findings.map((finding) => findingSentence(finding, names)),
  ],
  'below-age': ({ years, says }) => [
    says === 'unknown'
      ? `whether the age of ${years} is reached is not on record`
      : `the least age is ${years}, and that birthday is still to come`,
  ],
  'card-wanted': ({ levels, ended }) => [
    `a card of level ${joinedByOr(levels)} is wanted, ${
      ended === undefined ? 'and none is on record' : `and the last one ended on ${dayText(ended)}`
    }`,
  ],
  'module-missed': ({ module, was }, names) => [`${names.module(module)} ${MISSED[was]}`],
  'module-not-planned': ({ module }, names) => [
    `${names.module(module)} is wanted first, and the session plans it on no day before`,
  ],
}

const MISSED = {
  partly: 'was attended in part only',
  absent: 'was not attended',
  'not-recorded': 'is wanted first, and no attendance is recorded',
} satisfies Record<Of<Lack, 'module-missed'>['was'], string>

/** Why a place on the roster opens nothing on some days: one plain sentence. */
export function nothingAssignedSentence(
  { kind, person, workKind, days }: NothingAssigned,
  names: CourseNames,
): string {
  const why = {
    'no-items': 'the session lists no log or tree for it',
    'no-trainers': 'nobody on the staff is with their group',
  } satisfies Record<NothingAssigned['kind'], string>
  return `On ${joinedByAnd(days.map(dayText))} the place of ${names.person(person)} opens no ${workKindWords[workKind]}, because ${why[kind]}.`
}
