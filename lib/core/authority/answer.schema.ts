import { z } from 'zod'
import { STANDINGS } from '../rulebooks/standing.ts'
import {
  change,
  day,
  days,
  finding,
  id,
  ids,
  note,
  ratedOrNot,
  ruleFields,
  sawKind,
  standingFields,
  through,
  workKind,
} from './answer-parts.schema.ts'

/** The name of the format of an answer. */
export const ANSWER_FORMAT = 'kerfbook-answer/1'

const work = z.strictObject({
  workKind,
  sawKind,
  diameter: z.number(),
  hands: z.exactOptional(z.enum(['one', 'two'])),
  species: z.exactOptional(z.string()),
  place: z.exactOptional(id),
  item: z.exactOptional(id),
  complexity: z.exactOptional(ratedOrNot),
})

const answer = z.strictObject({
  person: id,
  name: z.string(),
  ...standingFields,
  spans: z.array(z.strictObject({ ...days.shape, ...standingFields, findings: z.array(finding) })),
  holdsThrough: through,
  endedBy: z.exactOptional(
    z.strictObject({ day, ...standingFields, came: z.array(finding), went: z.array(finding) }),
  ),
  atLeastThrough: through,
  findings: z.array(finding),
  notes: z.array(note),
  remedies: z.strictObject({
    sets: z.array(z.array(change)),
    somebodyElse: z.int(),
    anotherDate: z.exactOptional(days),
    leaveIt: z.literal(true),
  }),
})

const companyDays = z.strictObject({
  ...days.shape,
  learners: z.array(z.strictObject({ person: id, standing: z.enum([...STANDINGS, 'absent']), may: ids })),
  pairs: z.array(z.strictObject({ learner: id, supervisor: id })),
  feasible: z.boolean(),
  short: z.exactOptional(z.strictObject({ learners: ids, supervisors: ids, places: z.int() })),
})

const spokenBy = z.union([
  z.strictObject({ by: z.literal('card'), card: id, level: z.exactOptional(z.string()) }),
  z.strictObject({ by: z.enum(['assignment', 'nothing']) }),
])

const explainedDays = z.strictObject({
  ...days.shape,
  ...standingFields,
  spokenBy,
  met: z.array(
    z.strictObject({
      kind: z.string(),
      ...ruleFields,
      records: ids,
      figures: z.record(z.string(), z.union([z.string(), z.number(), z.boolean()])),
    }),
  ),
  notMet: z.array(finding),
  others: z.array(z.strictObject({ spokenBy, ...standingFields, notMet: z.array(finding) })),
  records: z.array(
    z.strictObject({
      section: z.string(),
      id,
      entry: z.int(),
      actor: z.string(),
      statedAt: z.exactOptional(z.string()),
      corrects: z.exactOptional(z.int()),
      says: z.string(),
    }),
  ),
})

/** What `ask --json` and `explain --json` print. It is written from this schema and published under seeds/. */
const answerSchema = z.strictObject({
  format: z.literal(ANSWER_FORMAT),
  /** That authority is not safety: it goes wherever the answer goes. */
  notice: z.string(),
  /** Present and true where everything in the program is made up. */
  invented: z.exactOptional(z.literal(true)),
  engine: z.string(),
  program: z.strictObject({ id, name: z.string() }),
  knownAt: z.strictObject({ entry: z.int(), statedAt: z.string() }),
  today: day,
  question: z.strictObject({
    work,
    first: day,
    last: day,
    persons: z.exactOptional(ids),
    company: z.exactOptional(ids),
  }),
  /** What governs the work by runs of days; without `edition` no edition of the book is in force. */
  governing: z.array(
    z.strictObject({ ...days.shape, book: id, edition: z.exactOptional(id), planned: ratedOrNot }),
  ),
  /** The levels that may supervise this work. */
  supervisors: z.array(z.string()),
  /** Where no place is named: the places in which the work is stopped on a day asked; they do not count here. */
  placesNotCounted: z.exactOptional(ids),
  answers: z.array(answer),
  company: z.exactOptional(z.array(companyDays)),
  /** The whole chain behind the answer about one person; only `explain` gives it. */
  explanation: z.exactOptional(z.array(explainedDays)),
  cautions: z.array(
    z.strictObject({ id, version: z.int(), name: z.string(), text: z.string(), source: z.string() }),
  ),
})

/** An answer as `--json` prints it. */
export type AnswerJson = z.infer<typeof answerSchema>

/** The JSON Schema of the format, as published. */
export function answerJsonSchema(): object {
  return {
    $id: 'kerfbook-answer-1.schema.json',
    title: 'An answer of Kerfbook',
    description:
      'Who may do a piece of work, on which days and why. Authority is not safety: this says who may, not that anything should be cut.',
    ...z.toJSONSchema(answerSchema),
  }
}
