import type { Sections } from '../../core/authority/records.ts'
import { foldedName, foldedNumber } from '../../core/kernel/folded.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import type { Version } from '../../core/kernel/versions.schema.ts'
import type { Program } from '../../core/program/program.schema.ts'
import { recordsAt } from '../../core/program/known.ts'
import type { NamedList } from '../../core/sheets/sheet-kinds.ts'
import { namesOf, subjectText, type Names } from '../../wording/names.ts'

/** What is on record now, by the ways in which rows of sheets name it. */
export type OnRecord = {
  names: Names
  list: (of: NamedList, text: string) => readonly string[]
  person: (id: string) => Sections['people'] | undefined
  peopleCalled: (name: string) => readonly string[]
  peopleWithCard: (number: string) => readonly string[]
  /** By a day, `YYYY-MM-DD`. */
  peopleBorn: (day: string) => readonly string[]
  cards: ReadonlyMap<string, Sections['cards']>
  cardNumbersOf: (person: string) => readonly string[]
  /** Whose a card number is. */
  ownerOf: (number: string) => string | undefined
  memberships: (person: string) => readonly Sections['memberships'][]
  certificates: (person: string) => readonly Sections['certificates'][]
  items: ReadonlyMap<string, Sections['items']>
  itemsCalled: (name: string) => readonly Sections['items'][]
  hitches: ReadonlyMap<string, Sections['hitches']>
}

/** A card by what is printed on it: its number and the line. */
export function cardKey(number: string, line: number): string {
  return `${foldedNumber(number)} ${line}`
}

/** Looks everything up once, so that twenty thousand rows need no search each. */
export function onRecordAt(program: Program, n: number): OnRecord {
  const now = <Fact extends Version>(facts: readonly Fact[]) => facts.filter((fact) => isKnownAt(fact, n))
  const people = now(program.people)
  const cards = now(program.cards)
  const items = now(program.items)
  const editions = now(program.editions)
  const levels = [...new Set(editions.flatMap((edition) => edition.levels.map(({ level }) => level)))]
  const subjects = new Set([
    ...editions.flatMap(({ rules }) => rules.flatMap((rule) => ('subject' in rule ? [rule.subject] : []))),
    ...editions.flatMap(({ rules }) => rules.flatMap((rule) => ('subjects' in rule ? rule.subjects : []))),
    ...now(program.certificates).map(({ subject }) => subject),
  ])
  const places = now(program.places)
  const lists: Record<NamedList, (text: string) => readonly string[]> = {
    organisations: finder(now(program.organisations), ({ name }) => [name]),
    units: finder(
      places.filter(({ kind }) => kind === 'unit'),
      ({ name }) => [name],
    ),
    places: finder(places, ({ name }) => [name]),
    books: finder(now(program.books), ({ name }) => [name]),
    levels: finder(
      levels.map((level) => ({ id: level })),
      ({ id }) => [`level ${id}`],
    ),
    subjects: finder(
      [...subjects].map((id) => ({ id })),
      ({ id }) => [subjectText(id)],
    ),
    hitches: finder(now(program.hitches), ({ number, name }) => [number, name, `${number}, ${name}`]),
  }
  const byId = new Map(people.map((person) => [person.id, person]))
  const owners = new Map(cards.map(({ number, person }) => [foldedNumber(number), person]))
  const called = grouped(people, ({ name }) => foldedName(name))
  const born = grouped(people, ({ birthDate }) => birthDate ?? '')
  const cardsOf = grouped(cards, ({ person }) => person)
  const memberships = grouped(now(program.memberships), ({ person }) => person)
  const certificates = grouped(now(program.certificates), ({ person }) => person)
  const itemsCalled = grouped(items, ({ name }) => foldedName(name))
  return {
    names: namesOf(recordsAt(program, n)),
    list: (of, text) => lists[of](text),
    person: (id) => byId.get(id),
    peopleCalled: (name) => (called.get(foldedName(name)) ?? []).map(({ id }) => id),
    peopleWithCard: (number) => {
      const owner = owners.get(foldedNumber(number))
      return owner === undefined ? [] : [owner]
    },
    peopleBorn: (day) => (born.get(day) ?? []).map(({ id }) => id),
    cards: new Map(cards.map((card) => [cardKey(card.number, card.line), card])),
    cardNumbersOf: (person) => [...new Set((cardsOf.get(person) ?? []).map(({ number }) => number))],
    ownerOf: (number) => owners.get(foldedNumber(number)),
    memberships: (person) => memberships.get(person) ?? [],
    certificates: (person) => certificates.get(person) ?? [],
    items: new Map(items.map((item) => [item.id, item])),
    itemsCalled: (name) => itemsCalled.get(foldedName(name)) ?? [],
    hitches: new Map(now(program.hitches).map((hitch) => [foldedName(hitch.number), hitch])),
  }
}

function finder<Fact extends { id: string }>(
  facts: readonly Fact[],
  called: (fact: Fact) => readonly string[],
): (text: string) => readonly string[] {
  const ids = new Map<string, Set<string>>()
  for (const fact of facts) {
    for (const name of [fact.id, ...called(fact)]) {
      const folded = foldedName(name)
      const known = ids.get(folded)
      if (known === undefined) ids.set(folded, new Set([fact.id]))
      else known.add(fact.id)
    }
  }
  return (text) => [...(ids.get(foldedName(text)) ?? [])]
}

function grouped<Fact>(facts: readonly Fact[], keyOf: (fact: Fact) => string): ReadonlyMap<string, Fact[]> {
  const groups = new Map<string, Fact[]>()
  for (const fact of facts) {
    const key = keyOf(fact)
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [fact])
    else group.push(fact)
  }
  return groups
}
