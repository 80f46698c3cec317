import { z } from 'zod'
import { plusDays } from '../../core/calendar/dates.ts'
import { idField, textField } from '../../core/kernel/fields.schema.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { entryNumber } from '../../core/kernel/versions.schema.ts'
import { DISPUTE_OUTCOMES, type Dispute } from '../../core/people/disputes.schema.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import { joinedAt } from '../people/joined.ts'
import { factOwners } from '../people/fact-owners.ts'
import { invalidField, refusedBecause, type NotDone } from '../door/outcome.ts'
import { command, nothingToPrepare } from '../door/use-case.ts'
import { currentRecord } from './correct.ts'
import { handOf } from './hand-of.ts'
import { RECORD_SECTIONS, type RecordFact } from './record-kinds.ts'
import { checkChanges, newId, type HandMade } from './typed-record.ts'

/** Within how many days somebody is answered: a program default, without a source. */
export const DAYS_TO_ANSWER = 14

type Disputing = { person: string; fact: RecordFact }
type Disputed = { dispute: Dispute; changes: HandMade }

/** Somebody says that a record of theirs is wrong. It changes nothing by itself; somebody else answers by a day. */
export const disputeRecord = command({
  name: 'records/dispute',
  permission: 'dispute',
  input: z.strictObject({ section: z.enum(RECORD_SECTIONS), id: idField, says: textField }),
  prepare: nothingToPrepare,
  load: ({ snapshot }, _prepared, { section, id }): Result<Disputing, NotDone> => {
    const fact = currentRecord(snapshot, section, id)
    const person = fact === undefined ? undefined : factOwners(snapshot.program)(section, fact)
    return fact === undefined || person === undefined
      ? refusal({ kind: 'not-found' })
      : success({ person, fact })
  },
  about: ({ person }) => ({ kind: 'people', people: [person] }),
  decide: ({ person }, { section, id, says }, { snapshot, today, now }): Result<Disputed, NotDone> => {
    const open = disputesOf(snapshot, section, id).some(({ answered }) => answered === undefined)
    if (open) return refusal(refusedBecause({ kind: 'disputed-already' }))
    const dispute: Dispute = {
      id: newId('dispute'),
      recordedIn: snapshot.n + 1,
      person,
      section,
      record: id,
      says,
      day: today,
      answerBy: plusDays(today, DAYS_TO_ANSWER),
    }
    const changes = changesOf(dispute)
    const checked = checkChanges(snapshot, changes, now)
    return checked.ok ? success({ dispute, changes }) : checked
  },
  save: ({ changes }) => [{ changes }],
  journal: ({ dispute: { section, record } }) => ({ event: 'record-disputed', said: { section, record } }),
  value: ({ dispute }) => ({ id: dispute.id }),
})

/** Somebody who neither recorded it nor is the person answers. A record is corrected or withdrawn where its own page does that. */
export const answerDispute = command({
  name: 'records/answer-dispute',
  permission: 'answer-disputes',
  input: z.strictObject({
    id: idField,
    version: entryNumber,
    outcome: z.enum(DISPUTE_OUTCOMES),
    says: textField,
  }),
  prepare: nothingToPrepare,
  load: ({ snapshot: { program, n } }, _prepared, { id }): Result<Dispute, NotDone> => {
    const dispute = program.disputes.find((one) => one.id === id && isKnownAt(one, n))
    return dispute === undefined ? refusal({ kind: 'not-found' }) : success(dispute)
  },
  about: ({ person }) => ({ kind: 'people', people: [person] }),
  seen: (current, { version }) => ({ version, current }),
  decide: (dispute, { outcome, says }, { snapshot, today, now }, actor): Result<Disputed, NotDone> => {
    if (dispute.answered !== undefined) return refusal(refusedBecause({ kind: 'nothing-to-correct' }))
    if (actor?.person === joinedAt(snapshot.program, snapshot.n).of(dispute.person))
      return refusal(refusedBecause({ kind: 'not-by-yourself', because: 'it is your own record' }))
    if (recordedBy(snapshot, dispute) === actor?.account)
      return refusal(
        refusedBecause({ kind: 'not-by-yourself', because: 'you recorded what is said to be wrong' }),
      )
    // Nobody is told that a record was corrected or withdrawn which still stands as it was.
    if (outcome !== 'stands' && outcome !== sinceDone(snapshot, dispute))
      return refusal(invalidField('outcome', `The record is not ${outcome} yet. Do that first.`))
    const { name } = handOf(snapshot, actor)
    const answered: Dispute = { ...dispute, answered: { day: today, by: name, outcome, says } }
    const changes = changesOf(answered, dispute.recordedIn)
    const checked = checkChanges(snapshot, changes, now)
    return checked.ok ? success({ dispute: answered, changes }) : checked
  },
  save: ({ changes }) => [{ changes }],
  journal: ({ dispute: { section, record } }) => ({ event: 'dispute-answered', said: { section, record } }),
  value: ({ dispute }) => ({ id: dispute.id }),
})

/** What was said to be wrong about a record, as now known. */
export function disputesOf({ program, n }: Snapshot, section: string, record: string): readonly Dispute[] {
  return program.disputes.filter(
    (one) => one.section === section && one.record === record && isKnownAt(one, n),
  )
}

/** The account that recorded the version that stood when it was said to be wrong. */
function recordedBy({ program, commands }: Snapshot, { id, section, record }: Dispute): string | undefined {
  const name = RECORD_SECTIONS.find((one) => one === section)
  const said = Math.min(...program.disputes.filter((one) => one.id === id).map((one) => one.recordedIn))
  const versions: readonly RecordFact[] = name === undefined ? [] : program[name]
  const disputed = versions.find((one) => one.id === record && isKnownAt(one, said))
  return disputed === undefined ? undefined : commands.get(disputed.recordedIn)?.actor
}

/** What became of a record since it was said to be wrong. */
function sinceDone(
  snapshot: Snapshot,
  { section, record, recordedIn }: Dispute,
): 'corrected' | 'withdrawn' | undefined {
  const name = RECORD_SECTIONS.find((one) => one === section)
  const current = name === undefined ? undefined : currentRecord(snapshot, name, record)
  if (current === undefined) return 'withdrawn'
  return current.recordedIn > recordedIn ? 'corrected' : undefined
}

function changesOf(dispute: Dispute, supersedes?: number): HandMade {
  const { recordedIn: _recordedIn, supersedes: _supersedes, ...fact } = dispute
  return {
    record: [{ section: 'disputes', fact: supersedes === undefined ? fact : { ...fact, supersedes } }],
    withdraw: [],
  }
}
