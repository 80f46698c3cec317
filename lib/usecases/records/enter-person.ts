import { z } from 'zod'
import type { Membership, Person } from '../../core/people/people.schema.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import type { FieldProblem, NotDone } from '../door/outcome.ts'
import { command, nothingToPrepare } from '../door/use-case.ts'
import { enterInput } from './hand-made.schema.ts'
import { handOf, remarkOf } from './hand-of.ts'
import { checkChanges, factToRecord, newRecordId, readTyped, type HandMade } from './typed-record.ts'

const input = enterInput.extend({ membership: z.record(z.string().max(40), z.unknown()) })

type Both = { person: Person; membership: Membership }

/**
 * Enters somebody new with their first membership, in one entry: without one nobody but the program manager could reach
 * them, and who enters people for a unit enters them into that unit.
 */
export const enterPerson = command({
  name: 'records/enter-person',
  permission: 'write-people',
  input,
  prepare: nothingToPrepare,
  load: (_world, _prepared, { fields, membership }): Result<Both, NotDone> => {
    const person = readTyped('people', newRecordId('people'), fields)
    const id = person.ok ? person.value.id : newRecordId('people')
    const member = readTyped('memberships', newRecordId('memberships'), { ...membership, person: id })
    if (person.ok && member.ok) return success({ person: person.value, membership: member.value })
    return refusal({
      kind: 'invalid',
      fields: [...problemsOf(person), ...problemsOf(member).map(ofMembership)],
    })
  },
  about: ({ person, membership }) => ({
    kind: 'records',
    people: [],
    added: [person.id],
    memberships: [membership],
  }),
  decide: ({ person, membership }, { paper }, { snapshot, now }, actor): Result<Entered, NotDone> => {
    const record = [factToRecord('people', person), factToRecord('memberships', membership)]
    const checked = checkChanges(snapshot, { record, withdraw: [] }, now)
    if (!checked.ok) return checked
    const said = paper === undefined ? {} : { paper }
    const remarks = remarkOf(snapshot.n + 1, said, handOf(snapshot, actor))
    return success({ id: person.id, changes: { record: [...record, ...remarks], withdraw: [] } })
  },
  save: ({ changes }) => [{ changes }],
  journal: ({ id }) => ({ event: 'person-entered', said: { person: id } }),
  value: ({ id }) => ({ id }),
})

type Entered = { id: string; changes: HandMade }

function problemsOf(read: Result<unknown, NotDone>): readonly FieldProblem[] {
  return read.ok || read.problem.kind !== 'invalid' ? [] : read.problem.fields
}

function ofMembership({ path, message }: FieldProblem): FieldProblem {
  return { path: path.replace(/^fields/, 'membership'), message }
}
