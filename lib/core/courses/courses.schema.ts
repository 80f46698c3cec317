import { z } from 'zod'
import { dateField } from '../calendar/dates.schema.ts'
import { idField, nameField, textField } from '../kernel/fields.schema.ts'
import { versionFields } from '../kernel/versions.schema.ts'
import { levelField, sawKindField, workKindsField } from '../rulebooks/kinds/common.schema.ts'

const modulesField = z.array(idField).max(60)
const signedAsField = z.enum(['trainer', 'employer'])

/**
 * One sitting of a session: in the classroom for everybody, or in the field for one group. A day may have several. A
 * group that names both kinds of work is kept as planned and told as a conflict.
 */
const sittingSchema = z.discriminatedUnion('setting', [
  z.strictObject({ setting: z.literal('classroom'), day: dateField, modules: modulesField }),
  z.strictObject({
    setting: z.literal('field'),
    day: dateField,
    group: idField,
    workKinds: workKindsField,
    modules: modulesField,
  }),
])

/** A session of a course at a place. Its logs and trees are those whose list it is. */
export const sessionSchema = z.strictObject({
  ...versionFields,
  name: nameField,
  form: z.enum(['class', 'refresher', 'evaluation']),
  place: idField,
  unit: z.exactOptional(idField),
  firstDay: dateField,
  lastDay: dateField,
  workKinds: workKindsField,
  sawKind: sawKindField,
  /** Modules of the governing edition, by their ids there. */
  modules: modulesField,
  sittings: z.array(sittingSchema).max(120),
})
/** A session as known between two entries: where, from which day through which, what it teaches on which day. */
export type Session = z.infer<typeof sessionSchema>
/** One sitting of a session, in the classroom or in the field. */
export type Sitting = Session['sittings'][number]
/** A sitting in the field: one group on one day. */
export type FieldSitting = Extract<Sitting, { setting: 'field' }>

/**
 * Somebody asked for a place in a session. Whether they are on its roster or wait is worked out from all who asked.
 * `line` is that of the sign-up sheet, from 1: it tells those apart who asked on one day.
 */
export const seatSchema = z.strictObject({
  ...versionFields,
  session: idField,
  person: idField,
  askedOn: dateField,
  line: z.int().min(1).max(10_000),
  workKinds: workKindsField,
  level: levelField,
  group: z.exactOptional(idField),
  left: z.exactOptional(
    z.discriminatedUnion('how', [
      z.strictObject({ how: z.literal('withdrew'), day: dateField, says: z.exactOptional(textField) }),
      z.strictObject({ how: z.literal('carried-over'), day: dateField, to: idField, because: textField }),
    ]),
  ),
})
/** A place asked for: by whom, when, for which work and level, and how it was given up where it was. */
export type Seat = z.infer<typeof seatSchema>

/** Who teaches or evaluates in a session, on which of its days, for which field group (any, if unsaid). */
export const staffSchema = z.strictObject({
  ...versionFields,
  session: idField,
  person: idField,
  role: z.enum(['instructor', 'evaluator']),
  days: z.array(dateField).min(1).max(120),
  group: z.exactOptional(idField),
})
/** A person on the staff of a session. */
export type Staff = z.infer<typeof staffSchema>

/** Whether somebody was at a module on a day; being there for a part of it is said in words. */
export const attendanceSchema = z
  .strictObject({
    ...versionFields,
    session: idField,
    person: idField,
    module: idField,
    day: dateField,
    was: z.enum(['present', 'partly', 'absent']),
    says: z.exactOptional(textField),
  })
  .refine((value) => value.was !== 'partly' || value.says !== undefined, {
    path: ['says'],
    message: 'say in words for which part of the module they were there',
  })
/** What a sheet of attendance says of one person, module and day. */
export type Attendance = z.infer<typeof attendanceSchema>

/** A log or tree of a session set aside for a candidate on a day; one carried over says from which day and why. */
export const shareSchema = z.strictObject({
  ...versionFields,
  session: idField,
  item: idField,
  person: idField,
  day: dateField,
  carriedOver: z.exactOptional(z.strictObject({ from: dateField, because: textField })),
})
/** Which candidate works on which log or tree on which day. */
export type Share = z.infer<typeof shareSchema>

/** Training somebody had before, judged adequate on a day: by whom, and what it was. */
export const priorTrainingSchema = z.strictObject({
  ...versionFields,
  person: idField,
  day: dateField,
  says: textField,
  by: z.exactOptional(nameField),
  as: signedAsField,
})
/** A judgement that earlier training is adequate; without `by` nobody has signed it. */
export type PriorTraining = z.infer<typeof priorTrainingSchema>

/** A signature under what somebody was taught in a session. */
export const trainingSignatureSchema = z.strictObject({
  ...versionFields,
  session: idField,
  person: idField,
  day: dateField,
  by: nameField,
  as: signedAsField,
})
/** Who signed for somebody's training in a session, when, and as what. */
export type TrainingSignature = z.infer<typeof trainingSignatureSchema>
