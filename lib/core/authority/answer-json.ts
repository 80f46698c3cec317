import type { CalendarDate } from '../calendar/dates.ts'
import type { RuleRef } from '../rulebooks/rule-ref.ts'
import type { Standing } from '../rulebooks/standing.ts'
import type { Answer, Finding, Note } from './answer.ts'
import { ANSWER_FORMAT, type AnswerJson } from './answer.schema.ts'
import type { Answers } from './ask.ts'
import type { BesideAnswer } from './beside-answer.ts'
import { ENGINE_VERSION } from './engine-version.ts'
import type { Question } from './question.ts'

type StandingJson = Pick<AnswerJson['answers'][number], 'standing' | 'supervision'>
type AnswerEntry = AnswerJson['answers'][number]

/** An answer with all that is written with it. */
export type AnswerToWrite = Answers & {
  /** What is to be read before all else. */
  notice: string
  program: { id: string; name: string }
  /** Whether everything in the program is made up. */
  invented: boolean
  /** The entry as known at which it was answered, and when that was stated. */
  knownAt: { entry: number; statedAt: string }
  today: CalendarDate
  question: Question
  beside: BesideAnswer
  /** Everybody on record, for their names. */
  people: readonly { id: string; name: string }[]
}

/** The answer as data, in the published format. */
export function answerJson(asked: AnswerToWrite): AnswerJson {
  const { program, knownAt, beside, answers, company } = asked
  const names = new Map(asked.people.map((person) => [person.id, person.name]))
  const { work, first, last, persons, company: members } = asked.question
  return {
    format: ANSWER_FORMAT,
    notice: asked.notice,
    ...(asked.invented ? { invented: true as const } : {}),
    engine: ENGINE_VERSION,
    program: { id: program.id, name: program.name },
    knownAt,
    today: asked.today,
    question: {
      work,
      first,
      last,
      ...(persons === undefined ? {} : { persons: [...persons] }),
      ...(members === undefined ? {} : { company: members.map(({ person }) => person) }),
    },
    governing: beside.runs.map(({ edition, ...run }) => ({
      ...run,
      ...(edition === undefined ? {} : { edition: edition.edition.id }),
    })),
    supervisors: [...beside.supervisors],
    ...(beside.placesNotCounted === undefined ? {} : { placesNotCounted: [...beside.placesNotCounted] }),
    answers: answers.map((answer) => answerEntry(answer, names.get(answer.person) ?? answer.person)),
    ...(company === undefined
      ? {}
      : {
          company: company.map(({ learners, pairs, short, ...days }) => ({
            ...days,
            learners: learners.map((learner) => ({ ...learner, may: [...learner.may] })),
            pairs: pairs.map((pair) => ({ ...pair })),
            ...(short === undefined
              ? {}
              : {
                  short: {
                    learners: [...short.learners],
                    supervisors: [...short.supervisors],
                    places: short.places,
                  },
                }),
          })),
        }),
    cautions: beside.cautions.map(({ id, version, name, text, source }) => ({
      id,
      version,
      name,
      text,
      source,
    })),
  }
}

/** A standing as answers state it: the kind of supervision stands apart. */
export function standingJson(standing: Standing): StandingJson {
  return standing === 'own-level' || standing === 'training'
    ? { standing: 'supervised', supervision: standing }
    : { standing }
}

function answerEntry(answer: Answer, name: string): AnswerEntry {
  const { endedBy, remedies } = answer
  return {
    person: answer.person,
    name,
    ...standingJson(answer.standing),
    spans: answer.spans.map((span) => ({
      first: span.first,
      last: span.last,
      ...standingJson(span.standing),
      findings: span.findings.map(findingJson),
    })),
    holdsThrough: answer.holdsThrough,
    ...(endedBy === undefined
      ? {}
      : {
          endedBy: {
            day: endedBy.day,
            ...standingJson(endedBy.standing),
            came: endedBy.came.map(findingJson),
            went: endedBy.went.map(findingJson),
          },
        }),
    atLeastThrough: answer.atLeastThrough,
    findings: answer.findings.map(findingJson),
    notes: answer.notes.map(noteJson),
    remedies: {
      sets: remedies.sets.map(
        (set) => set.map((change) => ({ ...change })) as AnswerEntry['remedies']['sets'][number],
      ),
      somebodyElse: remedies.somebodyElse,
      ...(remedies.anotherDate === undefined ? {} : { anotherDate: remedies.anotherDate }),
      leaveIt: remedies.leaveIt,
    },
  }
}

/** A finding with its figures apart. */
export function findingJson(finding: Finding): AnswerEntry['findings'][number] {
  const { kind, rule, records, allows, ...figures } = finding
  return {
    kind,
    ...(rule === undefined ? {} : ruleJson(rule)),
    records: [...records],
    allows,
    figures,
  }
}

function noteJson(note: Note): AnswerEntry['notes'][number] {
  const { kind, rule, records, days, ...figures } = note
  return {
    kind,
    ...(rule === undefined ? {} : ruleJson(rule)),
    records: [...records],
    days: days.map((span) => ({ ...span })),
    figures,
  }
}

function ruleJson({ rule, source, mark, edition }: RuleRef): RuleRef {
  return { rule, source, mark, edition }
}
