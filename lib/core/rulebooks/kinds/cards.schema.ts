import { z } from 'zod'
import { GIVES } from '../words.ts'
import {
  complexityField,
  idField,
  levelField,
  ruleBase,
  sawKindField,
  sawKindsField,
  workKindField,
  workKindsField,
} from './common.schema.ts'

/** What a level gives for a work kind, by complexity. */
export const grantRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('grant'),
  level: levelField,
  workKind: workKindField,
  sawKind: sawKindField,
  cells: z.strictObject({ least: z.enum(GIVES), moderate: z.enum(GIVES), high: z.enum(GIVES) }),
})

/** A card of the level is needed at all: what "no card" rests on. */
export const cardNeededRule = z.strictObject({ ...ruleBase, kind: z.literal('card.needed') })

/** A card counts from its effective day through its last day. */
export const cardDaysRule = z.strictObject({ ...ruleBase, kind: z.literal('card.days') })

/** The holder works only inside the restrictions on the card. */
export const restrictionRule = z.strictObject({ ...ruleBase, kind: z.literal('restriction') })

/** A restriction in words that nobody has resolved makes `unknown`. */
export const wordsRule = z.strictObject({ ...ruleBase, kind: z.literal('restriction.words') })

/** A suspension or stand-down stops authority on the days it covers. */
export const suspensionRule = z.strictObject({ ...ruleBase, kind: z.literal('suspension') })

/** How long a card of a level is issued for, and how its last day is counted. */
export const termRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('term'),
  levels: z.array(levelField).min(1),
  term: z.union([
    z.strictObject({ years: z.int().min(1).max(20) }),
    z.strictObject({ months: z.int().min(1).max(240) }),
  ]),
  end: z.enum(['day-before-anniversary', 'on-anniversary']),
})

/** Which cards of other books count here, as which level; an empty list recognises none. */
export const recognitionRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('recognition'),
  books: z.array(
    z.strictObject({
      book: idField,
      workKinds: workKindsField,
      sawKinds: sawKindsField,
      levels: z.array(z.strictObject({ theirs: levelField, ours: levelField })).min(1),
    }),
  ),
})

/** Supervision: cuts at one time for each supervisor, the supervisor's least age. */
export const supervisionRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('supervision'),
  cutsAtOnce: z.int().min(1).max(20),
  ofAge: z.int().min(0).max(120),
})

/** Where the partner on the other handle may be the supervisor. */
export const partnerRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('supervision.partner'),
  workKinds: workKindsField,
  complexities: z.array(complexityField).min(1),
})

/** A trainer at the next level is designated, in one of these roles. */
export const trainerRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('supervision.trainer'),
  roles: z.array(z.enum(['instructor', 'evaluator'])).min(1),
})

export const cardRules = [
  grantRule,
  cardNeededRule,
  cardDaysRule,
  restrictionRule,
  wordsRule,
  suspensionRule,
  termRule,
  recognitionRule,
  supervisionRule,
  partnerRule,
  trainerRule,
] as const
