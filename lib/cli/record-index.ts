import type { Records, Sections } from '../core/authority/records.ts'
import { SECTION_NAMES, type FactsBySection, type SectionName } from '../core/program/sections.ts'
import type { Program } from '../core/program/program.schema.ts'
import type { Instant } from '../core/calendar/instants.ts'
import type { Names } from '../wording/names.ts'
import { recordPhrase } from '../wording/records.ts'

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

/** Looks up the records that an answer names by id. */
export type RecordIndex = (id: string) => readonly ShownRecord[]

/**
 * Makes the records of a program ready to be looked up. Sections may share an id: then the record that belongs to the
 * person asked about is shown, and all of them where none does.
 */
export function indexRecords(program: Program, known: Records, names: Names, person: string): RecordIndex {
  const facts: FactsBySection = known
  const byId = new Map<string, { shown: ShownRecord; isOwn: boolean }[]>()
  const add = <Name extends SectionName>(section: Name): void => {
    for (const fact of facts[section]) {
      const entry = program.entries[fact.recordedIn - 1]
      const shown: ShownRecord = {
        section,
        id: fact.id,
        entry: fact.recordedIn,
        actor: entry?.actor ?? 'not on record',
        ...(entry === undefined ? {} : { statedAt: entry.statedAt }),
        ...(fact.supersedes === undefined ? {} : { corrects: fact.supersedes }),
        says: recordPhrase(section, fact, names),
      }
      const found = { shown, isOwn: isOf(fact, person) }
      const known = byId.get(fact.id)
      if (known === undefined) byId.set(fact.id, [found])
      else known.push(found)
    }
  }
  for (const section of SECTION_NAMES) add(section)
  return (id) => {
    const found = byId.get(id) ?? []
    const own = found.filter(({ isOwn }) => isOwn)
    return (own.length > 0 ? own : found).map(({ shown }) => shown)
  }
}

function isOf(fact: Sections[SectionName], person: string): boolean {
  return fact.id === person || ('person' in fact && fact.person === person)
}
