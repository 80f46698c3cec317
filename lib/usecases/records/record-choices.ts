import { z } from 'zod'
import { isInReach } from '../../access/reach.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import type { Version } from '../../core/kernel/versions.schema.ts'
import { success } from '../../core/kernel/result.ts'
import type { Rule } from '../../core/rulebooks/rules.schema.ts'
import { namesOf, subjectText } from '../../wording/names.ts'
import { recordsAt } from '../../core/program/known.ts'
import { query } from '../door/use-case.ts'
import { readableBy } from './readable.ts'

/** Something that a form may name: its id, and what people call it. */
export type Named = { id: string; name: string }

const byName = new Intl.Collator('en', { numeric: true })

/** What the forms of records may name: people within reach, places, books with their levels, work, cards. */
export const recordChoices = query({
  name: 'records/choices',
  permission: 'read-record',
  input: z.strictObject({}),
  load: (world, _input, actor) => {
    const { program, n } = world.snapshot
    const reach = readableBy(actor, world)
    const now = <Fact extends Version>(facts: readonly Fact[]) => facts.filter((fact) => isKnownAt(fact, n))
    const people = now(program.people).filter(({ id }) => isInReach(reach, id))
    const names = namesOf(recordsAt(program, n))
    const places = now(program.places)
    const editions = now(program.editions)
    const cards = now(program.cards).filter(({ person }) => isInReach(reach, person))
    const understood = new Set(
      now(program.resolutions).map(({ card, restriction }) => `${card} ${restriction}`),
    )
    return success({
      today: world.today,
      people: named(people, ({ id }) => names.person(id)),
      places: named(places, ({ name }) => name),
      units: named(
        places.filter(({ kind }) => kind === 'unit'),
        ({ name }) => name,
      ),
      organisations: named(now(program.organisations), ({ name }) => name),
      books: named(now(program.books), ({ name }) => name),
      levels: [...new Set(editions.flatMap(({ levels }) => levels.map(({ level }) => level)))].map(
        (level) => ({ id: level, name: level }),
      ),
      subjects: subjectsOf(
        editions.flatMap(({ rules }) => rules),
        now(program.certificates),
      ),
      items: named([...now(program.items), ...now(program.expectedWork)], ({ name }) => name),
      hitches: named(now(program.hitches), ({ number, name }) => `${number}, ${name}`),
      cards: named(cards, ({ id, person }) => `${names.card(id)}, ${names.person(person)}`),
      cardNumbers: [...new Set(cards.map(({ number }) => number))].map((number) => ({
        id: number,
        name: number,
      })),
      words: cards.flatMap(({ id, person, restrictions }) =>
        restrictions.flatMap((restriction) =>
          restriction.kind === 'words'
            ? [
                {
                  id: `${id} ${restriction.id}`,
                  name: `${names.card(id)}, ${names.person(person)}: “${restriction.text}”${understood.has(`${id} ${restriction.id}`) ? ' (understood already)' : ''}`,
                },
              ]
            : [],
        ),
      ),
    })
  },
  about: () => ({ kind: 'nothing' }),
  answer: (choices) => choices,
})

/** What the forms of records may name. */
export type RecordChoices = {
  today: string
} & Readonly<
  Record<
    | 'people'
    | 'places'
    | 'units'
    | 'organisations'
    | 'books'
    | 'levels'
    | 'subjects'
    | 'items'
    | 'hitches'
    | 'cards'
    | 'cardNumbers'
    | 'words',
    readonly Named[]
  >
>

function named<Fact extends { id: string }>(
  facts: readonly Fact[],
  nameOf: (fact: Fact) => string,
): readonly Named[] {
  return facts
    .map((fact) => ({ id: fact.id, name: nameOf(fact) }))
    .sort((left, right) => byName.compare(left.name, right.name))
}

/** What certificates may be of: what a rule asks for, and what is on record. */
function subjectsOf(rules: readonly Rule[], certificates: readonly { subject: string }[]): readonly Named[] {
  const ids = new Set([
    ...rules.flatMap((rule) => ('subject' in rule ? [rule.subject] : [])),
    ...rules.flatMap((rule) => ('subjects' in rule ? rule.subjects : [])),
    ...certificates.map(({ subject }) => subject),
  ])
  return named(
    [...ids].map((id) => ({ id })),
    ({ id }) => subjectText(id),
  )
}
