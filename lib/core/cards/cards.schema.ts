import { z } from 'zod'
import { dateField, instantField } from '../calendar/dates.schema.ts'
import { cardNumberField, idField, inchesField, nameField, textField } from '../kernel/fields.schema.ts'
import { versionFields } from '../kernel/versions.schema.ts'
import {
  complexityField,
  levelField,
  sawKindField,
  sawKindsField,
  workKindField,
  workKindsField,
} from '../rulebooks/kinds/common.schema.ts'

/** Where a restriction names work kinds it binds those alone; otherwise all work of its card. */
const scope = { id: idField, workKinds: z.exactOptional(workKindsField) }

const typedRestrictions = [
  z.strictObject({ ...scope, kind: z.literal('greatest-diameter'), inches: inchesField }),
  z.strictObject({ ...scope, kind: z.literal('places'), places: z.array(idField).max(200) }),
  z.strictObject({ ...scope, kind: z.literal('species'), species: z.array(nameField).max(200) }),
  z.strictObject({ ...scope, kind: z.literal('greatest-complexity'), complexity: complexityField }),
  z.strictObject({ ...scope, kind: z.literal('double-bucking-only') }),
  z.strictObject({ ...scope, kind: z.literal('supervisor-only') }),
  z.strictObject({ ...scope, kind: z.literal('no-felling') }),
] as const

/** A restriction that a rule can read. */
const typedRestrictionSchema = z.discriminatedUnion('kind', typedRestrictions)
/** A restriction that a rule can read, told apart by `kind`; a diameter in inches, in whole sixteenths. */
export type TypedRestriction = z.infer<typeof typedRestrictionSchema>

/** A restriction on a card; `words` is free text that only a certifying official resolves. */
export const restrictionSchema = z.discriminatedUnion('kind', [
  ...typedRestrictions,
  z.strictObject({ ...scope, kind: z.literal('words'), text: textField }),
])
/** A restriction as it stands on a card, in words or such that a rule can read it. */
export type Restriction = z.infer<typeof restrictionSchema>

/** One line of a card's number: the card to the engine. */
export const cardSchema = z.strictObject({
  ...versionFields,
  number: cardNumberField,
  line: z.int().min(1).max(99),
  person: idField,
  book: idField,
  workKinds: z.union([workKindsField, z.literal('not-stated')]),
  sawKinds: sawKindsField,
  level: levelField,
  evaluationDay: z.exactOptional(dateField),
  issuedDay: z.exactOptional(dateField),
  effectiveDay: dateField,
  lastDay: z.exactOptional(dateField),
  restrictions: z.array(restrictionSchema).max(40),
  decision: z.exactOptional(textField),
  carriedIn: z.exactOptional(
    z.strictObject({
      issuer: nameField,
      number: z.exactOptional(cardNumberField),
      seenBy: z.exactOptional(nameField),
      lastReconciled: z.exactOptional(dateField),
    }),
  ),
})
/**
 * One line of a card's number, as known between two entries. Its days are the paper's own; extensions and endings
 * stand apart.
 */
export type Card = z.infer<typeof cardSchema>

/** A decision that a card no longer counts from a day on; the days before stay. */
export const endingSchema = z.strictObject({
  ...versionFields,
  card: idField,
  kind: z.enum(['withdrawn', 'reduced', 'replaced', 'surrendered']),
  firstDay: dateField,
  decision: textField,
  by: nameField,
})
/** A decision by which a card counts no more from `firstDay` on, that day included. */
export type Ending = z.infer<typeof endingSchema>

/** What a certifying official found free text to mean; an empty list: it restricts nothing here. */
export const resolutionSchema = z.strictObject({
  ...versionFields,
  card: idField,
  restriction: idField,
  into: z.array(typedRestrictionSchema).max(40),
  by: nameField,
  reason: textField,
})
/** What an official found words on a card to mean: the typed restrictions that take their place. */
export type Resolution = z.infer<typeof resolutionSchema>

const extensionShape = {
  book: idField,
  runsTo: dateField,
  effectiveDay: dateField,
  order: textField,
  source: textField,
  of: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('card'), card: idField }),
    z.strictObject({ kind: z.literal('window'), firstDay: dateField, lastDay: dateField }),
  ]),
}

/** A dated order that lets cards run longer: one card, or every card of the book that ends in a window. */
export const extensionSchema = z.strictObject({ ...versionFields, ...extensionShape })
/** A dated order: from `effectiveDay` on it lets cards run through `runsTo`. */
export type Extension = z.infer<typeof extensionSchema>
/** An order that extends cards as a shipped book holds it, before a program adopts it. */
export const shippedExtensionSchema = z.strictObject({ id: idField, ...extensionShape })

/** Whom or what a suspension stops. */
const suspensionSubject = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('person'), person: idField }),
  z.strictObject({ kind: z.literal('organisation'), organisation: idField }),
  z.strictObject({ kind: z.literal('unit'), unit: idField }),
  z.strictObject({ kind: z.literal('place'), place: idField }),
  z.strictObject({ kind: z.literal('work-kind'), workKind: workKindField }),
  z.strictObject({ kind: z.literal('saw-kind'), sawKind: sawKindField }),
  z.strictObject({ kind: z.literal('everybody') }),
  z.strictObject({ kind: z.literal('card'), number: cardNumberField }),
])

/** A suspension or stand-down; it covers its whole first day. Only an administrative one may carry a last day. */
export const suspensionSchema = z
  .strictObject({
    ...versionFields,
    form: z.enum(['suspension', 'stand-down']),
    kind: z.enum(['unsafe-act', 'incident', 'competence', 'administrative']),
    subject: suspensionSubject,
    workKinds: z.exactOptional(workKindsField),
    sawKinds: z.exactOptional(sawKindsField),
    firstDay: dateField,
    lastDay: z.exactOptional(dateField),
    /** When the notice was given and when it reached whom. */
    notices: z.exactOptional(z.array(z.strictObject({ person: idField, at: instantField })).max(500)),
    by: nameField,
    reason: textField,
  })
  .refine((value) => value.kind === 'administrative' || value.lastDay === undefined, {
    path: ['lastDay'],
    message: 'only an administrative suspension carries a last day; this one ends by a decision to lift it',
  })
/** A suspension or stand-down from its whole first day on, until a lift or, where administrative, its last day. */
export type Suspension = z.infer<typeof suspensionSchema>

/** A decision to lift a suspension: the day before `day` is its last. */
export const liftSchema = z.strictObject({
  ...versionFields,
  suspension: idField,
  day: dateField,
  decision: textField,
  by: nameField,
})
/** A decision by which a suspension covers `day` and later days no more. */
export type Lift = z.infer<typeof liftSchema>
