import { z } from 'zod'
import { cardRules } from './kinds/cards.schema.ts'
import { cautionRules } from './kinds/cautions.schema.ts'
import { cutRules } from './kinds/evaluations.schema.ts'
import { courseRules } from './kinds/courses.schema.ts'
import { logRules } from './kinds/logs.schema.ts'
import { peopleRules } from './kinds/people.schema.ts'
import { workRules } from './kinds/work.schema.ts'

/** Any rule of any room, told apart by its kind. */
export const ruleSchema = z.discriminatedUnion('kind', [
  ...peopleRules,
  ...cardRules,
  ...workRules,
  ...cautionRules,
  ...cutRules,
  ...logRules,
  ...courseRules,
])

/** One rule of an edition. */
export type Rule = z.infer<typeof ruleSchema>

/** The kinds a rule may have. */
export type RuleKind = Rule['kind']

/** The rules of one kind. */
export type RuleOf<Kind extends RuleKind> = Extract<Rule, { kind: Kind }>

/** What an edition must say, once, before it can govern anything; the rest is asked for only where it stands. */
export const REQUIRED_ONCE = [
  'card.needed',
  'card.days',
  'restriction',
  'restriction.words',
  'suspension',
  'recognition',
  'supervision',
  'supervision.trainer',
  'complexity.rated',
  'complexity.provisional',
] as const satisfies readonly RuleKind[]

/** A rule kind that every edition holds exactly once. */
export type RequiredKind = (typeof REQUIRED_ONCE)[number]

/** What an edition may say at most once. */
export const AT_MOST_ONCE = [
  'capacity.outside',
  'agreement',
  'assignment',
  'supervision.partner',
  'decider',
  'card.reconciled',
  'course.field-groups',
  'training-record.kept',
] as const satisfies readonly RuleKind[]
