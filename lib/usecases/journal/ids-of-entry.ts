import { SECTION_NAMES, type FactsBySection } from '../../core/program/sections.ts'
import type { Version } from '../../core/kernel/versions.schema.ts'
import { factUuid, recordUuid } from '../../store/record-ids.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import type { StoredName } from '../../store/tables/stored-facts.ts'

/**
 * The id that a fact has in files and pages, for the uuid under which an entry names it: of those that the entry
 * recorded or closed. A uuid that is none of them is given back as it is.
 */
export function factIds(snapshot: Snapshot, n: number): (uuid: string) => string {
  const facts: FactsBySection = snapshot.program
  const ids = new Map<string, string>()
  const take = (section: StoredName, { id, recordedIn, supersededIn }: Version) => {
    if (recordedIn === n || supersededIn === n) ids.set(factUuid(section, id, recordedIn), id)
  }
  for (const section of SECTION_NAMES) for (const fact of facts[section]) take(section, fact)
  // What a file says of its entry stands in no snapshot, and has the entry's own number.
  take('statements', { id: `entry-${n}`, recordedIn: n })
  for (const fact of snapshot.remarks) take('remarks', fact)
  for (const fact of snapshot.accounts) take('accounts', fact)
  for (const fact of snapshot.roles) take('accountRoles', fact)
  return (uuid) => ids.get(uuid) ?? uuid
}

/** The ids of people and accounts for the uuids under which an entry names whom it is about. */
export function aboutIds({ program, accounts }: Snapshot, uuids: readonly string[]): string[] {
  if (uuids.length === 0) return []
  const ids = new Map([
    ...program.people.map(({ id }) => [recordUuid('people', id), id] as const),
    ...accounts.map(({ id }) => [recordUuid('accounts', id), id] as const),
  ])
  return uuids.map((uuid) => ids.get(uuid) ?? uuid)
}
