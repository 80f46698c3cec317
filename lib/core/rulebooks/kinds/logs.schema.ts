import { z } from 'zod'
import { BINDS, LOG_SIDES, WEDGES } from '../words.ts'
import { ruleBase } from './common.schema.ts'

/** Where a rule speaks only of logs with room beneath them for a saw, or only of those without. */
const roomField = z.exactOptional(z.boolean())

/** From which side the cuts of a log begin, and from which the last is made, under a bind. */
const orderRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('log.order'),
  bind: z.enum(BINDS),
  roomBelow: roomField,
  first: z.enum(LOG_SIDES),
  last: z.exactOptional(z.enum(LOG_SIDES)),
})

/** Cuts from two sides of a log do not lie in one line. */
const offsetRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('log.offset'),
  above: z.literal(true),
})

/** How many wedges of a kind are set under a bind, at the least. */
const wedgesRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('log.wedges'),
  bind: z.enum(BINDS),
  roomBelow: roomField,
  wedge: z.enum(WEDGES),
  least: z.int().min(1).max(20),
})

/** The kinds of rule about how a log is bucked. */
export const logRules = [orderRule, offsetRule, wedgesRule] as const
/** A rule about how a log is bucked. */
export type LogRule = z.infer<(typeof logRules)[number]>
