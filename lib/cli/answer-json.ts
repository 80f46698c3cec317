import { placesStopped } from '../core/authority/places-stopped.ts'
import type { Answer, Finding, Note } from '../core/authority/answer.ts'
import type { RuleRef } from '../core/rulebooks/rule-ref.ts'
import type { Standing } from '../core/rulebooks/standing.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../wording/notice.ts'
import { ANSWER_FORMAT, type AnswerJson } from './answer.schema.ts'
import { ENGINE_VERSION } from '../core/authority/engine-version.ts'
import type { AskedText } from './text/ask-text.ts'

type StandingJson = Pick<AnswerJson['answers'][number], 'standing' | 'supervision'>
type AnswerEntry = AnswerJson['answers'][number]

/** The answer as data, in the published format. */
export function answerJson(asked: AskedText): AnswerJson {
  const { open, context, runs, answers, company, cautions } = asked
  const { program, entries, invented } = open.program
  const names = new Map(open.authority.records.people.map((person) => [person.id, person.name]))
  const { work, first, last, persons, company: members } = context.question
  return {
    format: ANSWER_FORMAT,
    notice: AUTHORITY_IS_NOT_SAFETY,
    ...(invented === true ? { invented } : {}),
    engine: ENGINE_VERSION,
    program: { id: program.id, name: program.name },
    knownAt: { entry: open.knownAt, statedAt: entries[open.knownAt - 1]?.statedAt ?? '' },
    today: open.today,
    question: {
      work,
      first,
      last,
      ...(persons === undefined ? {} : { persons: [...persons] }),
      ...(members === undefined ? {} : { company: members.map(({ person }) => person) }),
    },
    governing: runs.map(({ edition, ...run }) => ({
      ...run,
      ...(edition === undefined ? {} : { edition: edition.edition.id }),
    })),
    supervisors: [...context.supervisors],
    ...(work.place === undefined
      ? { placesNotCounted: placesStopped(open.authority, context.question) }
      : {}),
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
    cautions: cautions.map(({ id, version, name, text, source }) => ({ id, version, name, text, source })),
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
        (set) => set.map((change) => structuredClone(change)) as AnswerEntry['remedies']['sets'][number],
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
