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
/** A person as known between two entries; of their age a birth date, a day they are of age from, or neither. */
export type Person = z.infer<typeof personSchema>

/** An organisation: the agency, a partner. */
export const organisationSchema = z.strictObject({ ...versionFields, name: nameField })
/** An organisation by its name. */
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
/** In which capacity a person works for an organisation, and on the days of which agreement; days may be missing. */
export type Membership = z.infer<typeof membershipSchema>

/**
 * What a minor's guardian said, from a day on. Only a permission given carries a last day: a refusal or withdrawal that
 * ended by itself would let an older permission count again without the guardian's word.
 */
export const permissionSchema = z
  .strictObject({
    ...versionFields,
    person: idField,
    says: z.enum(['given', 'refused', 'withdrawn']),
    firstDay: dateField,
    lastDay: z.exactOptional(dateField),
    attestedBy: z.exactOptional(nameField),
  })
  .refine((value) => value.says === 'given' || value.lastDay === undefined, {
    path: ['lastDay'],
    message:
      'only a permission given carries a last day; a refusal or withdrawal holds until one is given anew',
    params: { kind: 'last-day-not-given' },
  })
/** What a guardian said of a minor, through `lastDay` where it is stated. */
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
/** A class or test of a subject that a person holds, good from its first through its last day. */
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
/** An appointment from its first day through its last, or without an end. */
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
/** Leave to learn on the items named, from its first through its last day, under one of the trainers named. */
export type Assignment = z.infer<typeof assignmentSchema>
