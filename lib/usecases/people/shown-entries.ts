import { isInReach, type PeopleInReach } from '../../access/reach.ts'
import type { Instant } from '../../core/calendar/instants.ts'
import { SECTION_NAMES, type FactsBySection } from '../../core/program/sections.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import { entryWords } from '../journal/entry-words.ts'
import { factOwners } from './fact-owners.ts'

/** An entry of the journal beside a record: who, when and, for who may know it, what was done. */
export type ShownEntry = { n: number; at: Instant; by: string; said?: string }

/**
 * The entries behind records. What an entry says was done is shown where everybody whom its facts are about is within
 * reach: an entry about many may name others.
 */
export function entriesShown(
  snapshot: Snapshot,
  reach: PeopleInReach,
): (n: number) => ShownEntry | undefined {
  const about = reach === 'everybody' ? undefined : peopleByEntry(snapshot)
  return (n) => {
    const entry = snapshot.program.entries[n - 1]
    if (entry === undefined) return undefined
    const { by, sentence } = entryWords(snapshot, n, undefined)
    const isTold =
      about === undefined || [...(about.get(n) ?? [])].every((person) => isInReach(reach, person))
    return { n, at: entry.statedAt, by, ...(isTold ? { said: sentence } : {}) }
  }
}

const opened = new WeakMap<Snapshot, Map<number, Set<string>>>()

/** The people whom the facts of each entry are about, those recorded in it and those it closed. */
function peopleByEntry(snapshot: Snapshot): ReadonlyMap<number, ReadonlySet<string>> {
  const known = opened.get(snapshot)
  if (known !== undefined) return known
  const people = new Map<number, Set<string>>()
  const facts: FactsBySection = snapshot.program
  const ownerOf = factOwners(snapshot.program)
  for (const section of SECTION_NAMES) {
    for (const fact of facts[section]) {
      const person = ownerOf(section, fact)
      if (person === undefined) continue
      for (const n of [fact.recordedIn, fact.supersededIn]) {
        if (n === undefined) continue
        const named = people.get(n) ?? new Set<string>()
        people.set(n, named.add(person))
      }
    }
  }
  opened.set(snapshot, people)
  return people
}
