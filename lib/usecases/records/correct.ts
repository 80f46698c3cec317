import type { Permission } from '../../access/table.ts'
import type { Sections } from '../../core/authority/records.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import type { FactsBySection } from '../../core/program/sections.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import { refusedBecause, type NotDone } from '../door/outcome.ts'
import { command, nothingToPrepare, type About } from '../door/use-case.ts'
import { seesBirthDate } from '../people/told-age.ts'
import { contentOf } from '../program/program-facts.ts'
import { refusedByHand, withKept } from './by-hand.ts'
import { correctInput, withdrawInput } from './hand-made.schema.ts'
import { handOf, remarkOf } from './hand-of.ts'
import { countNamedBy } from './named-by.ts'
import { aboutRecord, RECORD_KINDS, type RecordSection } from './record-kinds.ts'
import { checkChanges, factToRecord, readTyped, type HandMade } from './typed-record.ts'

/**
 * Corrects a record by superseding it: what stood stays on record as it was known, and why it was corrected is kept.
 * Whom the record was about and whom it is to be about must both be within reach.
 */
export function correctRecord<Name extends RecordSection>(section: Name) {
  const permission: Permission = RECORD_KINDS[section].permission
  return command({
    name: `records/correct-${RECORD_KINDS[section].one}`,
    permission,
    input: correctInput,
    prepare: nothingToPrepare,
    load: ({ snapshot }, _prepared, { id, fields }, actor): Result<Loaded<Name>, NotDone> => {
      const current = currentRecord(snapshot, section, id)
      if (current === undefined) return refusal({ kind: 'not-found' })
      const unread = section === 'people' && !seesBirthDate(actor, id) ? ['birthDate'] : []
      const read = readTyped(section, id, withKept(fields, current, unread))
      if (!read.ok) return read
      const { program, n } = snapshot
      const before = aboutRecord(program, n, { section, fact: current }, false)
      const after = aboutRecord(program, n, { section, fact: read.value }, false)
      if (before === undefined || after === undefined) return refusal({ kind: 'not-found' })
      return success({ current, fact: read.value, about: bothAbout(before, after) })
    },
    about: ({ about }) => about,
    seen: ({ current }, { version }) => ({ version, current }),
    decide: ({ current, fact }, { why, paper }, { snapshot, now }, actor): Result<HandMade, NotDone> => {
      const hand = handOf(snapshot, actor)
      const refused = refusedByHand({ section, fact }, hand)
      if (!refused.ok) return refused
      if (contentOf(current) === contentOf(fact))
        return refusal(refusedBecause({ kind: 'nothing-to-correct' }))
      const changes: HandMade = {
        record: [factToRecord(section, fact, current.recordedIn)],
        withdraw: [],
      }
      const checked = checkChanges(snapshot, changes, now)
      if (!checked.ok) return checked
      const remarks = remarkOf(snapshot.n + 1, { why, ...(paper === undefined ? {} : { paper }) }, hand)
      return success({ ...changes, record: [...changes.record, ...remarks] })
    },
    save: (changes) => [{ changes }],
    journal: ({ record }) => ({
      event: 'record-corrected',
      said: { section, record: record[0]?.fact.id ?? '' },
    }),
    value: ({ record }) => ({ id: record[0]?.fact.id ?? '' }),
  })
}

/** Withdraws a record that never should have stood, without another in its place; it stays known as it was. */
export function withdrawRecord<Name extends RecordSection>(section: Name) {
  const permission: Permission = RECORD_KINDS[section].permission
  return command({
    name: `records/withdraw-${RECORD_KINDS[section].one}`,
    permission,
    input: withdrawInput,
    prepare: nothingToPrepare,
    load: ({ snapshot }, _prepared, { id }): Result<ToWithdraw<Name>, NotDone> => {
      const current = currentRecord(snapshot, section, id)
      if (current === undefined) return refusal({ kind: 'not-found' })
      const about = aboutRecord(snapshot.program, snapshot.n, { section, fact: current }, false)
      return about === undefined ? refusal({ kind: 'not-found' }) : success({ current, about })
    },
    about: ({ about }) => about,
    seen: ({ current }, { version }) => ({ version, current }),
    decide: ({ current }, { id, why }, { snapshot, now }, actor): Result<Withdrawn, NotDone> => {
      const count = countNamedBy(snapshot, section, current)
      if (count > 0) return refusal(refusedBecause({ kind: 'named-by-others', count }))
      const withdraw = [{ section, id, recordedIn: current.recordedIn }]
      const checked = checkChanges(snapshot, { record: [], withdraw }, now)
      if (!checked.ok) return checked
      const record = remarkOf(snapshot.n + 1, { why }, handOf(snapshot, actor))
      return success({ id, changes: { record, withdraw } })
    },
    save: ({ changes }) => [{ changes }],
    journal: ({ id }) => ({ event: 'record-withdrawn', said: { section, record: id } }),
    value: ({ id }) => ({ id }),
  })
}

type Loaded<Name extends RecordSection> = { current: Sections[Name]; fact: Sections[Name]; about: About }
type ToWithdraw<Name extends RecordSection> = { current: Sections[Name]; about: About }
type Withdrawn = { id: string; changes: HandMade }

/** The version of a record that is current. */
export function currentRecord<Name extends RecordSection>(
  { program, n }: Snapshot,
  section: Name,
  id: string,
): Sections[Name] | undefined {
  const facts: FactsBySection = program
  return facts[section].find((fact) => fact.id === id && isKnownAt(fact, n))
}

/** Access is checked on what a record was about and on what it is to be about. */
function bothAbout(before: About, after: About): About {
  if (before.kind !== 'records' || after.kind !== 'records') return { kind: 'program' }
  return {
    kind: 'records',
    people: [...new Set([...before.people, ...after.people])],
    memberships: [...(before.memberships ?? []), ...(after.memberships ?? [])],
    places: [...(before.places ?? []), ...(after.places ?? [])],
  }
}
