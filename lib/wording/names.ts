import type { Records } from '../core/authority/records.ts'
import { foldedName } from '../core/kernel/folded.ts'
import { JoinedPeople } from '../core/people/joined-people.ts'
import { aLevel } from './levels.ts'

/**
 * What the sentences call things. Every function takes an id and gives the name people know; an id that is not known
 * is given back as it is, so that a sentence never has a hole.
 */
export type Names = {
  /** A person; two who share a name are told apart by their ids. */
  person: (id: string) => string
  place: (id: string) => string
  organisation: (id: string) => string
  book: (id: string) => string
  edition: (id: string) => string
  item: (id: string) => string
  /** A hitch by its number and name. */
  hitch: (id: string) => string
  /** A card by its number, and by its line where the number has several. */
  card: (id: string) => string
  /** What a certificate is about, in words. */
  subject: (id: string) => string
  /** The levels of an edition at or above a level, lowest first; the level alone where the edition is not known. */
  levelsFrom: (edition: string, level: string) => readonly string[]
}

const SUBJECTS: ReadonlyMap<string, string> = new Map([
  ['cpr', 'CPR'],
  ['first-aid', 'first aid'],
  ['first-aid-cpr', 'first aid with CPR'],
  ['bloodborne-pathogens', 'bloodborne pathogens'],
  ['instructors-workshop', 'instructors’ workshop'],
])

/** What a certificate is about: its known words, or its id read as words. */
export function subjectText(id: string): string {
  return SUBJECTS.get(id) ?? id.replaceAll('-', ' ')
}

/** The names that a program's records give. */
export function namesOf(records: Records): Names {
  const people = nameById(records.people)
  const joined = new JoinedPeople(records.joins)
  const sharedNames = repeated(records.people.map((person) => foldedName(person.name)))
  const places = nameById(records.places)
  const organisations = nameById(records.organisations)
  const books = nameById(records.books)
  const editions = nameById(records.editions)
  const items = nameById([...records.items, ...records.expectedWork])
  const hitches = new Map(records.hitches.map(({ id, number, name }) => [id, `hitch ${number}, ${name}`]))
  const cards = new Map(records.cards.map((card) => [card.id, card]))
  const manyLined = repeated(records.cards.map((card) => card.number))
  const levels = new Map(records.editions.map((edition) => [edition.id, edition.levels]))
  return {
    person: (id) => {
      const name = people.get(id) ?? people.get(joined.of(id))
      if (name === undefined) return id
      return sharedNames.has(foldedName(name)) ? `${name} (${id})` : name
    },
    place: (id) => places.get(id) ?? id,
    organisation: (id) => organisations.get(id) ?? id,
    book: (id) => books.get(id) ?? id,
    edition: (id) => editions.get(id) ?? id,
    item: (id) => items.get(id) ?? id,
    hitch: (id) => hitches.get(id) ?? id,
    card: (id) => {
      const card = cards.get(id)
      if (card === undefined) return `card ${id}`
      return manyLined.has(card.number) ? `card ${card.number}, line ${card.line}` : `card ${card.number}`
    },
    subject: subjectText,
    levelsFrom: (edition, level) => {
      const known = levels.get(edition) ?? []
      const rank = known.find((entry) => entry.level === level)?.rank
      if (rank === undefined) return [level]
      return known
        .filter((entry) => entry.rank >= rank)
        .sort((left, right) => left.rank - right.rank)
        .map((entry) => entry.level)
    },
  }
}

/** A supervisor's levels with the article: `a B or C`; without a level, `somebody on their own`. */
export function supervisorText(names: Names, edition: string, level: string | undefined): string {
  return level === undefined ? 'somebody on their own' : aLevel(names.levelsFrom(edition, level))
}

function nameById(facts: readonly { id: string; name: string }[]): ReadonlyMap<string, string> {
  return new Map(facts.map((fact) => [fact.id, fact.name]))
}

function repeated(texts: readonly string[]): ReadonlySet<string> {
  const once = new Set<string>()
  const again = new Set<string>()
  for (const text of texts) {
    if (once.has(text)) again.add(text)
    once.add(text)
  }
  return again
}
