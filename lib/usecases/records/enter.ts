import type { Permission } from '../../access/table.ts'
import type { Sections } from '../../core/authority/records.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import type { NotDone } from '../door/outcome.ts'
import { command, nothingToPrepare, type About } from '../door/use-case.ts'
import { refusedByHand, withHand } from './by-hand.ts'
import { enterInput } from './hand-made.schema.ts'
import { handOf, remarkOf } from './hand-of.ts'
import { aboutRecord, RECORD_KINDS, type RecordSection } from './record-kinds.ts'
import { checkChanges, factToRecord, newRecordId, readTyped, type HandMade } from './typed-record.ts'

/**
 * Enters a new record of a section by hand. It is read by the schema of its section and checked together with
 * everything on record, by the same checks as a program file.
 */
export function enterRecord<Name extends RecordSection>(section: Name) {
  const permission: Permission = RECORD_KINDS[section].permission
  return command({
    name: `records/enter-${RECORD_KINDS[section].one}`,
    permission,
    input: enterInput,
    prepare: nothingToPrepare,
    load: ({ snapshot }, _prepared, { fields }, actor): Result<Loaded<Name>, NotDone> => {
      const hand = handOf(snapshot, actor)
      const read = readTyped(section, newRecordId(section), withHand(section, fields, hand))
      if (!read.ok) return read
      const about = aboutRecord(snapshot.program, snapshot.n, { section, fact: read.value }, true)
      return about === undefined ? refusal({ kind: 'not-found' }) : success({ fact: read.value, about })
    },
    about: ({ about }) => about,
    decide: ({ fact }, { paper }, { snapshot, now }, actor): Result<Entered, NotDone> => {
      const hand = handOf(snapshot, actor)
      const refused = refusedByHand({ section, fact }, hand)
      if (!refused.ok) return refused
      const changes: HandMade = { record: [factToRecord(section, fact)], withdraw: [] }
      const checked = checkChanges(snapshot, changes, now)
      if (!checked.ok) return checked
      const remarks = remarkOf(snapshot.n + 1, { ...(paper === undefined ? {} : { paper }) }, hand)
      return success({ id: fact.id, changes: { ...changes, record: [...changes.record, ...remarks] } })
    },
    save: ({ changes }) => [{ changes }],
    journal: ({ id }) => ({ event: 'record-entered', said: { section, record: id } }),
    value: ({ id }) => ({ id }),
  })
}

type Loaded<Name extends RecordSection> = { fact: Sections[Name]; about: About }
type Entered = { id: string; changes: HandMade }
