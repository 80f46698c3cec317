import { z } from 'zod'
import { dateField, instantField } from '../calendar/dates.schema.ts'
import { idField, nameField, textField } from '../kernel/fields.schema.ts'
import { levelField, sawKindField, workKindField, complexityField } from '../rulebooks/kinds/common.schema.ts'
import { felledCutSchema } from './cut-record.schema.ts'
import { buckedCutSchema } from './log-record.schema.ts'

const evaluatorsField = z.array(idField).min(1).max(6)
const attemptField = z.int().min(1, 'attempts are counted from 1').max(9)
const scoreField = z.int().min(0, 'a score is 0 or more').max(99)

/** What is done to a sheet, one thing at a time. Of judgement, marks and cuts the evaluator is named beside who typed. */
const actSchema = z.discriminatedUnion('act', [
  z.strictObject({
    act: z.literal('begin'),
    candidate: idField,
    workKind: workKindField,
    sawKind: sawKindField,
    level: levelField,
    edition: idField,
    place: nameField,
    day: dateField,
    evaluators: evaluatorsField,
  }),
  z.strictObject({ act: z.literal('size-up'), words: textField }),
  z.strictObject({ act: z.literal('plan'), words: textField }),
  z.strictObject({
    act: z.literal('attempt'),
    attempt: attemptField,
    cut: idField,
    item: nameField,
    complexity: complexityField,
    saw: z.exactOptional(textField),
    partner: z.exactOptional(nameField),
  }),
  z.strictObject({
    act: z.literal('mark'),
    evaluator: idField,
    item: idField,
    attempt: attemptField,
    score: scoreField,
    words: z.exactOptional(textField),
  }),
  z.strictObject({ act: z.literal('confirm'), evaluator: idField }),
  z.strictObject({ act: z.literal('sign'), evaluator: idField }),
  z.strictObject({
    act: z.literal('stop'),
    attempt: attemptField,
    stop: idField,
    words: z.exactOptional(textField),
  }),
  z.strictObject({ act: z.literal('walked-away'), attempt: attemptField, words: textField }),
  z.strictObject({ act: z.literal('stand-down'), standDown: z.boolean(), words: textField }),
  z.strictObject({ act: z.literal('stump'), cut: idField, stump: felledCutSchema }),
  z.strictObject({ act: z.literal('log'), cut: idField, log: buckedCutSchema }),
  z.strictObject({
    act: z.literal('judge'),
    evaluator: idField,
    judgement: z.enum(['yes', 'not-yet', 'no']),
    words: textField,
  }),
  z.strictObject({
    act: z.literal('recommend'),
    evaluator: idField,
    /** None where no card is recommended. */
    level: z.exactOptional(levelField),
    restrictions: z.array(textField).max(20),
    words: z.exactOptional(textField),
  }),
  z.strictObject({ act: z.literal('lock'), statement: textField }),
  z.strictObject({
    act: z.literal('candidate-words'),
    says: z.enum(['comment', 'acknowledged', 'disputed']),
    words: z.exactOptional(textField),
  }),
])

/**
 * A command to the sheet of one evaluation: `n` counts them from 1 without a gap, `by` is who gave it, `at` the clock of
 * the device, which is told and never decides an order.
 */
export const evaluationCommandSchema = z.strictObject({
  sheet: idField,
  n: z.int().min(1).max(5000),
  by: idField,
  at: instantField,
  does: actSchema,
})
export type EvaluationCommand = z.infer<typeof evaluationCommandSchema>
export type Act = EvaluationCommand['does']
/** An act of one kind. */
export type ActOf<Kind extends Act['act']> = Extract<Act, { act: Kind }>
