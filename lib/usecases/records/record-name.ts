import { recordsAt } from '../../core/program/known.ts'
import type { Fact, SectionName } from '../../core/program/sections.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import { namesOf, type Names } from '../../wording/names.ts'
import { recordPhrase } from '../../wording/records.ts'

/** The names by which records of a snapshot are called. */
export function namesIn({ program, n }: Pick<Snapshot, 'program' | 'n'>): Names {
  return namesOf(recordsAt(program, n))
}

/** What a record is called in a sentence: what it says, and whose it is. */
export function recordName(names: Names, section: SectionName, fact: Fact): string {
  // The table of phrases pairs each section with its facts; TypeScript cannot follow that by the name.
  const phrase = recordPhrase(section, fact, names)
  return 'person' in fact && typeof fact.person === 'string'
    ? `${phrase}, of ${names.person(fact.person)}`
    : phrase
}
