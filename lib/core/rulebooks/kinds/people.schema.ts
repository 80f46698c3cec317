import { z } from 'zod'
import {
  capacityField,
  idField,
  levelField,
  ruleBase,
  sawKindField,
  workKindsField,
  yearsField,
} from './common.schema.ts'

/** The least age for any work with this kind of saw, whatever the capacity. */
const leastAgeRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('age.least'),
  sawKind: sawKindField,
  years: yearsField,
})

/**
 * What age limits in a capacity: from `from` (if named) until `under` years old, the work kinds give at most `gives`.
 * With `guardian`, a guardian's permission must be on record.
 */
const capacityAgeRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('age.capacity'),
  sawKind: sawKindField,
  capacities: z.array(capacityField).min(1),
  workKinds: workKindsField,
  from: z.exactOptional(yearsField),
  under: yearsField,
  gives: z.enum(['none', 'unknown', 'supervised']),
  guardian: z.exactOptional(z.boolean()),
})

/** Capacities to which the book does not apply at all. */
const outsideRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('capacity.outside'),
  capacities: z.array(capacityField).min(1),
})

/** Capacities that need an agreement covering each day. */
const agreementRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('agreement'),
  capacities: z.array(capacityField).min(1),
})

/** A certificate that must hold on every day; a record of a subject in `servedBy` serves for it too. */
const certificateRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('certificate'),
  subject: idField,
  servedBy: z.exactOptional(z.array(idField)),
})

/** Online only counts after one in-person or blended certificate of the subject. */
const deliveryRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('certificate.delivery'),
  subjects: z.array(idField).min(1),
})

/** A self-stated certificate of these subjects is `unknown` until another person has seen it. */
const seenRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('certificate.seen'),
  subjects: z.array(idField).min(1),
})

/** Training of somebody without a card in force, under a dated assignment, up to a complexity. */
const assignmentRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('assignment'),
  workKinds: workKindsField,
  upTo: z.enum(['least', 'moderate', 'high']),
})

/** Who may evaluate whom: a designated evaluator who holds `holds` may recommend the levels in `recommends`. */
const evaluatorRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('evaluator'),
  holds: levelField,
  workKinds: workKindsField,
  recommends: z.array(levelField),
})

/** Who may decide: nobody who examined the application or taught the candidate within so many months. */
const deciderRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('decider'),
  taughtWithinMonths: z.int().min(0).max(600),
})

/** The kinds of rule of the room `people`. */
export const peopleRules = [
  leastAgeRule,
  capacityAgeRule,
  outsideRule,
  agreementRule,
  certificateRule,
  deliveryRule,
  seenRule,
  assignmentRule,
  evaluatorRule,
  deciderRule,
] as const
