import { z } from 'zod'
import type { Change, FindingKind, NoteKind } from './answer.ts'
import { STANDINGS } from '../rulebooks/standing.ts'
import { CAPACITIES, COMPLEXITIES, MARKS, SAW_KINDS, WORK_KINDS } from '../rulebooks/words.ts'

/** A day as text. */
export const day = z.string().regex(/^\d{4}-\d{2}-\d{2}$/)
/** The last day of a run, or that no end lies within ten years. */
export const through = z.union([day, z.literal('open')])
/** The id of a record. */
export const id = z.string()
/** Ids of records, in the order of the answer. */
export const ids = z.array(id)
/** Bucking or felling. */
export const workKind = z.enum(WORK_KINDS)
/** The kind of saw. */
export const sawKind = z.enum(SAW_KINDS)
const complexity = z.enum(COMPLEXITIES)
/** How complex the work is, or that nobody rated it. */
export const ratedOrNot = z.enum([...COMPLEXITIES, 'not-rated'])
/** A run of days, both ends in. */
export const days = z.strictObject({ first: day, last: day })
/** A standing of the engine, with the two kinds of supervised apart. */
const fullStanding = z.enum(STANDINGS)

/** A standing as an answer states it; the kind of supervision stands beside `supervised`. */
export const standingFields = {
  standing: z.enum(['independent', 'supervised', 'none', 'unknown']),
  supervision: z.exactOptional(z.enum(['own-level', 'training'])),
}

const inches = z.number()
const none = z.strictObject({})
const subject = z.strictObject({ subject: id })

const findingFigures = {
  'no-card': z.strictObject({ workKind, sawKind }),
  'book-does-not-recognise': z.strictObject({ book: id, level: z.string() }),
  'level-too-low': z.strictObject({ level: z.string(), complexity: ratedOrNot }),
  'training-only': z.strictObject({
    level: z.exactOptional(z.string()),
    supervisor: z.exactOptional(z.string()),
    trainers: z.exactOptional(z.array(id)),
  }),
  'needs-supervisor': z.strictObject({ supervisor: z.exactOptional(z.string()) }),
  'complexity-unrated': none,
  'card-not-yet-valid': z.strictObject({ firstDay: day }),
  'card-no-longer-valid': z.strictObject({
    lastDay: day,
    ended: z.exactOptional(z.enum(['withdrawn', 'reduced', 'replaced', 'surrendered'])),
  }),
  'over-diameter': z.strictObject({ limit: inches, diameter: inches }),
  'outside-places': z.strictObject({ places: ids }),
  'outside-species': z.strictObject({ allowed: z.array(z.string()) }),
  'above-greatest-complexity': z.strictObject({ limit: complexity, complexity }),
  'double-bucking-only': none,
  'no-felling': none,
  'words-unresolved': z.strictObject({ text: z.string() }),
  'certificate-not-on-record': subject,
  'certificate-lapsed': z.strictObject({ subject: id, lastDay: day }),
  'certificate-not-seen': subject,
  'certificate-delivery': subject,
  suspended: z.strictObject({
    form: z.enum(['suspension', 'stand-down']),
    because: z.enum(['unsafe-act', 'incident', 'competence', 'administrative']),
    notice: z.enum(['before', 'after', 'not-recorded']),
  }),
  'under-age': z.strictObject({ years: z.int(), capacity: z.exactOptional(z.enum(CAPACITIES)) }),
  'guardian-permission-missing': z.strictObject({
    says: z.enum(['not-on-record', 'ended', 'refused', 'withdrawn']),
    day: z.exactOptional(day),
  }),
  'no-agreement': z.strictObject({
    says: z.enum(['not-on-record', 'no-last-day', 'ended', 'not-begun']),
    day: z.exactOptional(day),
  }),
  'outside-book': z.strictObject({ capacity: z.enum(CAPACITIES) }),
  'not-on-record': z.strictObject({
    what: z.enum(['age', 'capacity', 'last-day', 'work-kinds', 'hands', 'species', 'place']),
  }),
} satisfies { [Kind in Exclude<FindingKind, 'rule-failed' | 'no-edition'>]: z.ZodType }

const noteFigures = {
  'rule-not-confirmed': none,
  'sources-disagree': z.strictObject({ other: z.string() }),
  'valid-only-by-a-later-order': z.strictObject({ effectiveDay: day, runsTo: day }),
  'successor-not-held': z.strictObject({ name: z.string(), day }),
  'delivery-not-stated': subject,
  'longer-than-term': z.strictObject({ lastDay: day, termLastDay: day }),
  'rating-provisional': z.strictObject({
    because: z.array(z.enum(['photo', 'told', 'rater-not-independent', 'old'])),
    rated: complexity,
    planned: complexity,
  }),
} satisfies { [Kind in NoteKind]: z.ZodType }

const changes = {
  'renewal-evaluation': z.strictObject({ kind: z.literal('renewal-evaluation'), card: id, by: day }),
  'renew-certificate': z.strictObject({ kind: z.literal('renew-certificate'), subject: id, by: day }),
  'record-missing-fact': z.strictObject({
    kind: z.literal('record-missing-fact'),
    what: z.string(),
    subject: z.exactOptional(id),
    records: ids,
  }),
  'have-seen': z.strictObject({ kind: z.literal('have-seen'), subject: id, records: ids }),
  'add-supervisor': z.strictObject({
    kind: z.literal('add-supervisor'),
    level: z.string(),
    trainer: z.boolean(),
    trainers: z.exactOptional(z.array(id)),
    days: z.array(days),
  }),
} satisfies { [Kind in Change['kind']]: z.ZodType }

/** The rule behind a finding or a note, and the edition it stands in. */
export const ruleFields = { rule: z.string(), source: z.string(), mark: z.enum(MARKS), edition: z.string() }

const maybeRuleFields = {
  rule: z.exactOptional(ruleFields.rule),
  source: z.exactOptional(ruleFields.source),
  mark: z.exactOptional(ruleFields.mark),
  edition: z.exactOptional(ruleFields.edition),
}

/**
 * A requirement for `independent` that is not shown to be met. `allows` is what it still allows by itself. A rule that
 * failed is named where the book has it, and where no edition is in force no rule stands behind that.
 */
export const finding = z
  .union([
    ...findingsOf(findingFigures, ruleFields),
    ...findingsOf({ 'rule-failed': z.strictObject({ says: z.string() }) }, maybeRuleFields),
    ...findingsOf({ 'no-edition': z.strictObject({ book: id }) }, {}),
  ])
  .meta({ id: 'finding' })

function findingsOf<Fields extends z.ZodRawShape>(figures: Record<string, z.ZodType>, fields: Fields) {
  return Object.entries(figures).map(([kind, ofKind]) =>
    z.strictObject({ kind: z.literal(kind), ...fields, records: ids, allows: fullStanding, figures: ofKind }),
  )
}

/** Something to know that changes no answer, with its days. */
export const note = z
  .union(
    Object.entries(noteFigures).map(([kind, figures]) =>
      z.strictObject({
        kind: z.literal(kind),
        ...maybeRuleFields,
        records: ids,
        days: z.array(days),
        figures: figures as z.ZodType,
      }),
    ),
  )
  .meta({ id: 'note' })

/** One change of a set that would let the work be done. */
export const change = z.union(Object.values(changes)).meta({ id: 'change' })
