import type { Records, Sections } from '../core/authority/records.ts'
import type { Instant } from '../core/calendar/instants.ts'
import type { Program } from '../core/program/program.schema.ts'
import { SECTION_NAMES, type FactsBySection, type SectionName } from '../core/program/sections.ts'
import type { Names } from './names.ts'
import { recordPhrase } from './records.ts'

/** A record as an explanation shows it: what it says, and who recorded it when. */
export type ShownRecord = {
  section: SectionName
  id: string
  entry: number
  actor: string
  statedAt?: Instant
  /** The entry of the version that this one corrects. */
  corrects?: number
  says: string
}

/** Looks up the records that an answer about a person names by id. */
export type RecordIndex = (id: string, person: string) => readonly ShownRecord[]

/**
 * Makes the records of a program ready to be looked up. Sections may share an id: then the record that belongs to the
 * person asked about is shown, and all of them where none does.
 */
export function indexRecords(program: Pick<Program, 'entries'>, known: Records, names: Names): RecordIndex {
  const facts: FactsBySection = known
  const byId = new Map<string, { isOf: (person: string) => boolean; shown: () => ShownRecord }[]>()
  const add = <Name extends SectionName>(section: Name): void => {
    for (const fact of facts[section]) {
      const found = {
        isOf: (person: string) => isOf(fact, person),
        shown: () => shownRecord(section, fact, program, names),
      }
      const sharing = byId.get(fact.id)
      if (sharing === undefined) byId.set(fact.id, [found])
      else sharing.push(found)
    }
  }
  for (const section of SECTION_NAMES) add(section)
  return (id, person) => {
    const found = byId.get(id) ?? []
    const own = found.filter((record) => record.isOf(person))
    return (own.length > 0 ? own : found).map(({ shown }) => shown())
  }
}

function shownRecord<Name extends SectionName>(
  section: Name,
  fact: Sections[Name],
  { entries }: Pick<Program, 'entries'>,
  names: Names,
): ShownRecord {
  const entry = entries[fact.recordedIn - 1]
  return {
    section,
    id: fact.id,
    entry: fact.recordedIn,
    actor: entry?.actor ?? 'not on record',
    ...(entry === undefined ? {} : { statedAt: entry.statedAt }),
    ...(fact.supersedes === undefined ? {} : { corrects: fact.supersedes }),
    says: recordPhrase(section, fact, names),
  }
}

function isOf(fact: Sections[SectionName], person: string): boolean {
  return fact.id === person || ('person' in fact && fact.person === person)
}
