import { z } from 'zod'
import type { Suspension } from '../../core/cards/cards.schema.ts'
import { dateField } from '../../core/calendar/dates.schema.ts'
import { momentOf } from '../../core/calendar/instants.ts'
import { idField, textField } from '../../core/kernel/fields.schema.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { entryNumber } from '../../core/kernel/versions.schema.ts'
import { invalidField, refusedBecause, type NotDone } from '../door/outcome.ts'
import { command, nothingToPrepare, type About, type World } from '../door/use-case.ts'
import { currentRecord } from './correct.ts'
import { handOf, remarkOf } from './hand-of.ts'
import { aboutRecord } from './record-kinds.ts'
import { checkChanges, factToRecord, newRecordId, readTyped, type HandMade } from './typed-record.ts'

/** Why somebody is stood down at once; administrative grounds are no haste, and are a suspension. */
export const AT_ONCE = ['unsafe-act', 'incident', 'competence'] as const

const standDownInput = z.strictObject({
  subject: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('person'), person: idField }),
    z.strictObject({ kind: z.literal('unit'), unit: idField }),
  ]),
  kind: z.enum(AT_ONCE),
  reason: textField,
  /** The person has been told. Of a unit each is told by name, and recorded so. */
  told: z.boolean(),
})

type Stopping = { fact: Suspension; about: About }
type Stopped = { fact: Suspension; changes: HandMade }

/**
 * Stands a person or everybody of a unit down, from today on and until it is lifted. It waits for a certifying official,
 * who confirms or lifts it; meanwhile it stops all that it stops.
 */
export const standDown = command({
  name: 'records/stand-down',
  permission: 'stand-down',
  input: standDownInput,
  prepare: nothingToPrepare,
  load: (world, _prepared, { subject, kind, reason, told }, actor): Result<Stopping, NotDone> => {
    const { snapshot, today, now } = world
    const { name } = handOf(snapshot, actor)
    const read = readTyped('suspensions', newRecordId('suspensions'), {
      form: 'stand-down',
      kind,
      subject,
      firstDay: today,
      reason,
      by: name,
      ...(told && subject.kind === 'person' ? { notices: [{ person: subject.person, at: now }] } : {}),
    })
    if (!read.ok) return read
    const about = aboutRecord(
      snapshot.program,
      snapshot.n,
      { section: 'suspensions', fact: read.value },
      true,
    )
    return about === undefined ? refusal({ kind: 'not-found' }) : success({ fact: read.value, about })
  },
  about: ({ about }) => about,
  decide: ({ fact }, _input, { snapshot, now }): Result<Stopped, NotDone> => {
    const changes: HandMade = { record: [factToRecord('suspensions', fact)], withdraw: [] }
    const checked = checkChanges(snapshot, changes, now)
    return checked.ok ? success({ fact, changes }) : checked
  },
  save: ({ changes }) => [{ changes }],
  journal: ({ fact: { id, subject } }) => ({
    event: 'stood-down',
    said: {
      section: 'suspensions',
      record: id,
      ...(subject.kind === 'person' ? { person: subject.person } : {}),
      ...(subject.kind === 'unit' ? { unit: subject.unit } : {}),
    },
  }),
  value: ({ fact }) => ({ id: fact.id }),
})

const versionInput = z.strictObject({ id: idField, version: entryNumber })

type Current = { current: Suspension; about: About }
type Changed = { id: string; person?: string; changes: HandMade }

function currentSuspension({ snapshot }: World, id: string): Result<Suspension, NotDone> {
  const current = currentRecord(snapshot, 'suspensions', id)
  return current === undefined ? refusal({ kind: 'not-found' }) : success(current)
}

/** A new version of a suspension with the rest as it stands, and the reason that stands beside it. */
function superseded(
  { snapshot, now }: World,
  current: Suspension,
  fact: Suspension,
  remarks: HandMade['record'],
): Result<HandMade, NotDone> {
  const changes: HandMade = { record: [factToRecord('suspensions', fact, current.recordedIn)], withdraw: [] }
  const checked = checkChanges(snapshot, changes, now)
  return checked.ok ? success({ ...changes, record: [...changes.record, ...remarks] }) : checked
}

const timeField = z
  .string()
  .trim()
  .regex(/^([01]?\d|2[0-3]):[0-5]\d$/, 'a time of day is written like 14:30')
  .transform((time) => time.padStart(5, '0'))

/** Records when the notice of a suspension or stand-down reached somebody; now, where no moment is given. */
export const noticeReached = command({
  name: 'records/notice-reached',
  permission: 'stand-down',
  input: versionInput.extend({
    person: idField,
    /** A day, and the time of day on the clocks of the program. */
    at: z.exactOptional(z.strictObject({ day: dateField, time: timeField })),
  }),
  prepare: nothingToPrepare,
  load: (world, _prepared, { id, person }): Result<Current, NotDone> => {
    const found = currentSuspension(world, id)
    if (!found.ok) return found
    const { program, n } = world.snapshot
    const about = aboutRecord(program, n, { section: 'suspensions', fact: found.value }, false)
    // Whoever was told must be within reach, whomever else it stops.
    const reached = program.people.some((one) => one.id === person)
    if (about === undefined || !reached) return refusal({ kind: 'not-found' })
    return success({ current: found.value, about: { kind: 'records', people: [person] } })
  },
  about: ({ about }) => about,
  seen: ({ current }, { version }) => ({ version, current }),
  decide: ({ current }, { id, person, at }, world): Result<Changed, NotDone> => {
    const { timeZone } = world.snapshot.program.program
    const moment = at === undefined ? world.now : momentOf(at.day, at.time, timeZone)
    if (moment > world.now) return refusal(invalidField('at.time', 'This is still to come.'))
    const { notices = [] } = current
    if (notices.some((one) => one.person === person && one.at === moment))
      return refusal(refusedBecause({ kind: 'nothing-to-correct' }))
    const fact: Suspension = { ...current, notices: [...notices, { person, at: moment }] }
    const changes = superseded(world, current, fact, [])
    return changes.ok ? success({ id, person, changes: changes.value }) : changes
  },
  save: ({ changes }) => [{ changes }],
  journal: ({ id, person = '' }) => ({
    event: 'notice-reached',
    said: { section: 'suspensions', record: id, person },
  }),
  value: ({ id }) => ({ id }),
})

/** A certifying official confirms a stand-down: from then on it is a suspension, for the same reason and from the same day. */
export const confirmStandDown = command({
  name: 'records/confirm-stand-down',
  permission: 'write-suspensions',
  input: versionInput.extend({ why: textField }),
  prepare: nothingToPrepare,
  load: (world, _prepared, { id }): Result<Current, NotDone> => {
    const found = currentSuspension(world, id)
    if (!found.ok) return found
    const { program, n } = world.snapshot
    const about = aboutRecord(program, n, { section: 'suspensions', fact: found.value }, false)
    return about === undefined ? refusal({ kind: 'not-found' }) : success({ current: found.value, about })
  },
  about: ({ about }) => about,
  seen: ({ current }, { version }) => ({ version, current }),
  decide: ({ current }, { id, why }, world, actor): Result<Changed, NotDone> => {
    if (current.form === 'suspension') return refusal(refusedBecause({ kind: 'nothing-to-correct' }))
    const { snapshot } = world
    const remarks = remarkOf(snapshot.n + 1, { why }, handOf(snapshot, actor))
    const changes = superseded(world, current, { ...current, form: 'suspension' }, remarks)
    return changes.ok ? success({ id, changes: changes.value }) : changes
  },
  save: ({ changes }) => [{ changes }],
  journal: ({ id }) => ({ event: 'stand-down-confirmed', said: { section: 'suspensions', record: id } }),
  value: ({ id }) => ({ id }),
})
