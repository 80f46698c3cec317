import { z } from 'zod'
import { dateField } from '../calendar/dates.schema.ts'
import { idField, nameField, textField } from '../kernel/fields.schema.ts'
import { versionFields } from '../kernel/versions.schema.ts'
import { capacityField, levelField, sawKindField, workKindsField } from '../rulebooks/kinds/common.schema.ts'
import { DELIVERIES } from '../rulebooks/words.ts'

/** A person. `ofAgeFrom` is the 18th birthday, attested, for a program that may not keep birth dates. */
export const personSchema = z.strictObject({
  ...versionFields,
  name: nameField,
  birthDate: z.exactOptional(dateField),
  ofAgeFrom: z.exactOptional(dateField),
  attestedBy: z.exactOptional(nameField),
})
export type Person = z.infer<typeof personSchema>

/** An organisation: the agency, a partner. */
export const organisationSchema = z.strictObject({ ...versionFields, name: nameField })
export type Organisation = z.infer<typeof organisationSchema>

/** A person's organisation, unit and capacity; the days are those of the agreement (of the employment, if stated). */
export const membershipSchema = z.strictObject({
  ...versionFields,
  person: idField,
  organisation: idField,
  unit: z.exactOptional(idField),
  capacity: capacityField,
  firstDay: z.exactOptional(dateField),
  lastDay: z.exactOptional(dateField),
  attestedBy: z.exactOptional(nameField),
})
export type Membership = z.infer<typeof membershipSchema>

/** What a minor's guardian said, from a day on (through a day, where stated). */
export const permissionSchema = z.strictObject({
  ...versionFields,
  person: idField,
  says: z.enum(['given', 'refused', 'withdrawn']),
  firstDay: dateField,
  lastDay: z.exactOptional(dateField),
  attestedBy: z.exactOptional(nameField),
})
export type Permission = z.infer<typeof permissionSchema>

/** Proof from outside that a rule asks for: its days, issuer, delivery and who saw it. Never medical detail. */
export const certificateSchema = z.strictObject({
  ...versionFields,
  person: idField,
  subject: idField,
  issuedBy: z.exactOptional(nameField),
  delivery: z.enum(DELIVERIES),
  firstDay: z.exactOptional(dateField),
  lastDay: z.exactOptional(dateField),
  seen: z.boolean(),
  by: z.exactOptional(nameField),
})
export type Certificate = z.infer<typeof certificateSchema>

/** A dated appointment as instructor or evaluator for a level of a book and work kinds. */
export const designationSchema = z.strictObject({
  ...versionFields,
  person: idField,
  role: z.enum(['instructor', 'evaluator']),
  book: idField,
  level: levelField,
  workKinds: workKindsField,
  sawKind: sawKindField,
  firstDay: dateField,
  lastDay: z.exactOptional(dateField),
  by: nameField,
})
export type Designation = z.infer<typeof designationSchema>

/** A dated assignment to learn on stated items under named trainers. */
export const assignmentSchema = z.strictObject({
  ...versionFields,
  person: idField,
  items: z.array(idField).min(1).max(200),
  firstDay: dateField,
  lastDay: dateField,
  trainers: z.array(idField).min(1).max(20),
  purpose: z.exactOptional(textField),
})
export type Assignment = z.infer<typeof assignmentSchema>
