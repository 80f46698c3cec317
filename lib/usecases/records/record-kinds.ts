import type { Permission } from '../../access/table.ts'
import type { Sections } from '../../core/authority/records.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import type { Program } from '../../core/program/program.schema.ts'
import type { SectionName } from '../../core/program/sections.ts'
import { factOwners } from '../people/fact-owners.ts'
import type { About } from '../door/use-case.ts'

/** The sections whose records are entered and corrected by hand, with the permission that each wants. */
export const RECORD_KINDS = {
  people: { permission: 'write-people', one: 'person' },
  joins: { permission: 'write-people', one: 'join' },
  memberships: { permission: 'write-people', one: 'membership' },
  permissions: { permission: 'write-people', one: 'permission' },
  certificates: { permission: 'write-people', one: 'certificate' },
  cards: { permission: 'write-cards', one: 'card' },
  extensions: { permission: 'write-places', one: 'extension' },
  suspensions: { permission: 'write-suspensions', one: 'suspension' },
  resolutions: { permission: 'resolve-words', one: 'resolution' },
  designations: { permission: 'write-designations', one: 'designation' },
  assignments: { permission: 'assign-training', one: 'assignment' },
  organisations: { permission: 'write-places', one: 'organisation' },
  places: { permission: 'write-places', one: 'place' },
  items: { permission: 'write-work', one: 'item' },
  expectedWork: { permission: 'write-work', one: 'expected' },
  ratings: { permission: 'write-work', one: 'rating' },
  raises: { permission: 'write-work', one: 'raise' },
  hitches: { permission: 'write-hitches', one: 'hitch' },
  placements: { permission: 'write-hitches', one: 'placement' },
} as const satisfies Partial<Record<SectionName, { permission: Permission; one: string }>>

/** A section whose records are kept by hand. */
export type RecordSection = keyof typeof RECORD_KINDS

/** The names of these sections. */
export const RECORD_SECTIONS = Object.keys(RECORD_KINDS) as RecordSection[]

/** A record of such a section. */
export type RecordFact = Sections[RecordSection]

/** A record on its way in, before or after which versions of it are known. */
export type RecordOf<Name extends RecordSection = RecordSection> = { section: Name; fact: Sections[Name] }

/**
 * Whom and what a record is about, so that access is checked on it; nothing where whoever it names is not on record.
 * `isNew` says that the record itself is not on record yet.
 */
export function aboutRecord(
  program: Program,
  n: number,
  { section, fact }: RecordOf,
  isNew: boolean,
): About | undefined {
  if (section === 'people')
    return { kind: 'records', people: isNew ? [] : [fact.id], ...(isNew ? { added: [fact.id] } : {}) }
  if (section === 'organisations' || section === 'places') return { kind: 'program' }
  if ('stays' in fact) {
    const person = aboutPerson(program, n, fact.person)
    const stays = aboutPerson(program, n, fact.stays)
    if (person === undefined || stays === undefined) return undefined
    return { kind: 'records', people: [...person.people, ...stays.people] }
  }
  if ('subject' in fact && typeof fact.subject !== 'string') return aboutSubject(program, n, fact.subject)
  if ('item' in fact) {
    const item = [...program.items, ...program.expectedWork].find(
      (one) => one.id === fact.item && isKnownAt(one, n),
    )
    return item === undefined ? undefined : aboutPlace(item.place)
  }
  if ('diameter' in fact || 'lead' in fact || section === 'hitches')
    return aboutPlace('place' in fact ? fact.place : undefined)
  if ('hitch' in fact) {
    const hitch = program.hitches.find((one) => one.id === fact.hitch && isKnownAt(one, n))
    const person = aboutPerson(program, n, fact.person)
    return hitch === undefined || person === undefined ? undefined : { ...person, places: [hitch.place] }
  }
  const owner = factOwners(program)(section, fact)
  if (owner === undefined && 'of' in fact && fact.of.kind === 'window') return { kind: 'program' }
  const about = aboutPerson(program, n, owner)
  return about === undefined || !('capacity' in fact) ? about : { ...about, memberships: [fact] }
}

type AboutRecords = Extract<About, { kind: 'records' }>

function aboutPerson({ people }: Program, n: number, id: string | undefined): AboutRecords | undefined {
  const isOnRecord = people.some((person) => person.id === id && isKnownAt(person, n))
  return id === undefined || !isOnRecord ? undefined : { kind: 'records', people: [id] }
}

/** Work in no place belongs to the program. */
function aboutPlace(place: string | undefined): About {
  return place === undefined ? { kind: 'program' } : { kind: 'records', people: [], places: [place] }
}

function aboutSubject(
  program: Program,
  n: number,
  subject: Sections['suspensions']['subject'],
): About | undefined {
  switch (subject.kind) {
    case 'person':
      return aboutPerson(program, n, subject.person)
    case 'card': {
      const owner = program.cards.find(({ number }) => number === subject.number)?.person
      return aboutPerson(program, n, owner)
    }
    case 'organisation':
      return { kind: 'records', people: [], memberships: [{ organisation: subject.organisation }] }
    case 'unit':
      return { kind: 'records', people: [], places: [subject.unit] }
    case 'place':
      return { kind: 'records', people: [], places: [subject.place] }
    case 'work-kind':
    case 'saw-kind':
    case 'everybody':
      return { kind: 'program' }
  }
}
