import { z } from 'zod'
import { idField, levelField, nameField, ruleBase, workKindsField, yearsField } from './common.schema.ts'

/** Who counts beside the candidates of a field day. */
const rolesField = z.array(z.enum(['instructor', 'evaluator'])).min(1)

/**
 * How many candidates a class takes in the field. `per-trainer`: for each person on its staff in one of the roles;
 * `on-roster`: in all; `while-cutting`: at the tree or log with each trainer while one of them cuts; `per-item`: in
 * turn at one log or tree.
 */
const sizeRule = z.discriminatedUnion('limit', [
  z.strictObject({
    ...ruleBase,
    kind: z.literal('course.size'),
    limit: z.enum(['per-trainer', 'while-cutting']),
    workKinds: workKindsField,
    count: z.int().min(1).max(500),
    roles: rolesField,
  }),
  z.strictObject({
    ...ruleBase,
    kind: z.literal('course.size'),
    limit: z.enum(['on-roster', 'per-item']),
    workKinds: workKindsField,
    count: z.int().min(1).max(500),
  }),
])

/** How many field days a candidate of a kind of work takes: the figure from which a season is reckoned. */
const fieldDaysRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('course.field-days'),
  workKinds: workKindsField,
  days: z.int().min(1).max(30),
})

/** Kinds of work that one field group does not mix on a day. */
const fieldGroupsRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('course.field-groups'),
  apart: z.array(workKindsField.element).min(2),
})

/** One subject that a course teaches, indoors or in the field; hours where a source suggests them. */
const moduleRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('course.module'),
  module: idField,
  name: nameField,
  workKinds: workKindsField,
  setting: z.enum(['classroom', 'field']),
  hours: z.exactOptional(z.number().min(0.25).max(400)),
})

/**
 * What somebody needs before a field day of the work kinds, in courses of the forms named (all, if unsaid).
 * `person-rules` is all that the edition asks of anybody who saws, card apart; `card` one in force of these levels, or
 * one that ended no more than so many months before the day; `modules` those attended on that day or before it.
 */
const prerequisiteRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('course.prerequisite'),
  workKinds: workKindsField,
  forms: z.exactOptional(z.array(z.enum(['class', 'refresher', 'evaluation'])).min(1)),
  needs: z.discriminatedUnion('need', [
    z.strictObject({ need: z.literal('person-rules') }),
    z.strictObject({ need: z.literal('age'), years: yearsField }),
    z.strictObject({ need: z.literal('certificate'), subject: idField }),
    z.strictObject({
      need: z.literal('card'),
      levels: z.array(levelField).min(1),
      endedWithinMonths: z.int().min(0).max(600),
    }),
    z.strictObject({ need: z.literal('modules'), modules: z.array(idField).min(1) }),
  ]),
})

/** How many logs or trees of each complexity a candidate of a level asked for gets on a course. */
const shareRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('course.share'),
  level: levelField,
  workKinds: workKindsField,
  mix: z.strictObject({
    least: z.int().min(0).max(100),
    moderate: z.int().min(0).max(100),
    high: z.int().min(0).max(100),
  }),
})

/** What the written certification of training holds, where it was given here and where earlier training is relied on. */
const trainingRecordRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('training-record'),
  basis: z.enum(['taught-here', 'prior-training']),
  holds: z.array(z.enum(['identity', 'training-dates', 'day-judged-adequate', 'signature'])).min(1),
  signedBy: z.array(z.enum(['trainer', 'employer'])).min(1),
})

/** Which certifications of training are kept at the least. */
const keptRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('training-record.kept'),
  keep: z.enum(['latest', 'all']),
})

/** The kinds of rule of the room `courses`. */
export const courseRules = [
  sizeRule,
  fieldDaysRule,
  fieldGroupsRule,
  moduleRule,
  prerequisiteRule,
  shareRule,
  trainingRecordRule,
  keptRule,
] as const
