import { z } from 'zod'
import type { Change, FindingKind, NoteKind } from '../core/authority/answer.ts'
import { STANDINGS } from '../core/rulebooks/standing.ts'
import { CAPACITIES, COMPLEXITIES, MARKS, SAW_KINDS, WORK_KINDS } from '../core/rulebooks/words.ts'

/** A day as text. */
export const day = z.string().regex(/^\d{4}-\d{2}-\d{2}$/)
/** The last day of a run, or that no end lies within ten years. */
export const through = z.union([day, z.literal('open')])
export const id = z.string()
export const ids = z.array(id)
export const workKind = z.enum(WORK_KINDS)
export const sawKind = z.enum(SAW_KINDS)
export const complexity = z.enum(COMPLEXITIES)
export const ratedOrNot = z.enum([...COMPLEXITIES, 'not-rated'])
export const days = z.strictObject({ first: day, last: day })
/** A standing of the engine, with the two kinds of supervised apart. */
export const fullStanding = z.enum(STANDINGS)

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
  'guardian-permission-missing': z.strictObject({ says: z.enum(['not-on-record', 'refused', 'withdrawn']) }),
  'no-agreement': z.strictObject({
    says: z.enum(['not-on-record', 'no-last-day', 'ended', 'not-begun']),
    day: z.exactOptional(day),
  }),
  'outside-book': z.strictObject({ capacity: z.enum(CAPACITIES) }),
  'not-on-record': z.strictObject({
    what: z.enum(['age', 'capacity', 'last-day', 'work-kinds', 'hands', 'species', 'place']),
  }),
  'no-edition': z.strictObject({ book: id }),
  'rule-failed': z.strictObject({ says: z.string() }),
} satisfies { [Kind in FindingKind]: z.ZodType }

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
    days: z.array(days),
  }),
} satisfies { [Kind in Change['kind']]: z.ZodType }

/** The rule behind a finding or a note. `edition` is empty where no edition governs the day. */
export const ruleFields = { rule: z.string(), source: z.string(), mark: z.enum(MARKS), edition: z.string() }

/** A requirement for `independent` that is not shown to be met. `allows` is what it still allows by itself. */
export const finding = z
  .union(
    Object.entries(findingFigures).map(([kind, figures]) =>
      z.strictObject({
        kind: z.literal(kind),
        ...ruleFields,
        records: ids,
        allows: fullStanding,
        figures: figures as z.ZodType,
      }),
    ),
  )
  .meta({ id: 'finding' })

/** Something to know that changes no answer, with its days. */
export const note = z
  .union(
    Object.entries(noteFigures).map(([kind, figures]) =>
      z.strictObject({
        kind: z.literal(kind),
        rule: z.exactOptional(ruleFields.rule),
        source: z.exactOptional(ruleFields.source),
        mark: z.exactOptional(ruleFields.mark),
        edition: z.exactOptional(ruleFields.edition),
        records: ids,
        days: z.array(days),
        figures: figures as z.ZodType,
      }),
    ),
  )
  .meta({ id: 'note' })

/** One change of a set that would let the work be done. */
export const change = z.union(Object.values(changes)).meta({ id: 'change' })
