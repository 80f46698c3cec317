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
const grantRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('grant'),
  level: levelField,
  workKind: workKindField,
  sawKind: sawKindField,
  cells: z.strictObject({ least: z.enum(GIVES), moderate: z.enum(GIVES), high: z.enum(GIVES) }),
})

/** A card of the level is needed at all: what "no card" rests on. */
const cardNeededRule = z.strictObject({ ...ruleBase, kind: z.literal('card.needed') })

/** A card counts from its effective day through its last day. */
const cardDaysRule = z.strictObject({ ...ruleBase, kind: z.literal('card.days') })

/** The holder works only inside the restrictions on the card. */
const restrictionRule = z.strictObject({ ...ruleBase, kind: z.literal('restriction') })

/** A restriction in words that nobody has resolved makes `unknown`. */
const wordsRule = z.strictObject({ ...ruleBase, kind: z.literal('restriction.words') })

/** A suspension or stand-down stops authority on the days it covers. */
const suspensionRule = z.strictObject({ ...ruleBase, kind: z.literal('suspension') })

/** How long a card of a level is issued for, in whole years or months, and how its last day is counted. */
const termRule = z.strictObject({
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
const recognitionRule = z.strictObject({
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

/** For how many days after it was compared with its issuer's record a card carried in raises no doubt. */
const reconciledRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('card.reconciled'),
  days: z.int().min(1).max(3660),
})

/** Supervision: cuts at one time for each supervisor, the supervisor's least age. */
const supervisionRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('supervision'),
  cutsAtOnce: z.int().min(1).max(20),
  ofAge: z.int().min(0).max(120),
})

/** Where the partner on the other handle may be the supervisor. */
const partnerRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('supervision.partner'),
  workKinds: workKindsField,
  complexities: z.array(complexityField).min(1),
})

/** A trainer at the next level is designated, in one of these roles. */
const trainerRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('supervision.trainer'),
  roles: z.array(z.enum(['instructor', 'evaluator'])).min(1),
})

/** The kinds of rule of the room `cards`, and what supervises whom. */
export const cardRules = [
  grantRule,
  cardNeededRule,
  cardDaysRule,
  restrictionRule,
  wordsRule,
  suspensionRule,
  termRule,
  recognitionRule,
  reconciledRule,
  supervisionRule,
  partnerRule,
  trainerRule,
] as const
