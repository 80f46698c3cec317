import type { Question } from '../../lib/core/authority/question.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import { SECTION_NAMES } from '../../lib/core/program/sections.ts'
import type { Case } from './program-generator.ts'

/** What a shorter case may leave out; the people stay until the end, because the rest names them. */
const SECTIONS = SECTION_NAMES.filter((name) => name !== 'books' && name !== 'people')
const LEFT_OUT = ['persons', 'company'] as const
const UNSAID = ['item', 'place', 'species', 'hands'] as const

/** The case without everything that it takes away and still fails: what a reader has to look at. */
export function shortened(found: Case, stillFails: (one: Case) => boolean): Case {
  const fails = (one: Case): boolean => {
    try {
      return namesOnlyPeople(one) && stillFails(one)
    } catch {
      // Facts that name what was left out are no case.
      return false
    }
  }
  let shortest = found
  let before = ''
  while (before !== sizeOf(shortest)) {
    before = sizeOf(shortest)
    for (const shorter of [...shorterQuestions(shortest.question)]) {
      const one = { ...shortest, question: shorter }
      if (fails(one)) shortest = one
    }
    for (const name of SECTIONS) shortest = withoutFacts(shortest, name, fails)
    shortest = withoutRestrictions(shortest, fails)
    shortest = withoutFacts(shortest, 'people', fails)
  }
  return shortest
}

/** Who is asked about and who is in the company is on record; nobody else makes a case. */
function namesOnlyPeople({ records, question }: Case): boolean {
  const known = new Set(records.people.map(({ id }) => id))
  const named = [...(question.persons ?? []), ...(question.company ?? []).map(({ person }) => person)]
  return named.every((person) => known.has(person))
}

/** A case as a reader can look at it: rule books by the ids and days of their editions only. */
export function written({ records, question }: Case): string {
  const { books: _books, editions, ...facts } = records
  const kept = Object.entries(facts).filter(([, value]) => !Array.isArray(value) || value.length > 0)
  const days = editions.map(({ id, firstDay, lastDay }) => `${id} ${firstDay}..${lastDay ?? ''}`)
  return [
    `question ${JSON.stringify(question)}`,
    `editions ${days.join(', ')}`,
    ...kept.map(([name, value]) => `${name} ${JSON.stringify(value)}`),
  ].join('\n')
}

function sizeOf({ records, question }: Case): string {
  const facts = SECTION_NAMES.map((name) => records[name].length)
  const restrictions = records.cards.map((card) => card.restrictions.length)
  return JSON.stringify([facts, restrictions, question])
}

function* shorterQuestions(question: Question): Generator<Question> {
  yield { ...question, last: question.first }
  yield { ...question, first: question.last }
  for (const name of LEFT_OUT) {
    const { [name]: _gone, ...rest } = question
    yield rest
  }
  for (const name of UNSAID) {
    const { [name]: _gone, ...work } = question.work
    yield { ...question, work }
  }
}

function withoutFacts(
  found: Case,
  name: (typeof SECTIONS)[number] | 'people',
  fails: (one: Case) => boolean,
): Case {
  let shortest = found
  for (const fact of found.records[name]) {
    const records: Records = {
      ...shortest.records,
      [name]: shortest.records[name].filter((other) => other !== fact),
    }
    const one = { ...shortest, records }
    if (fails(one)) shortest = one
  }
  return shortest
}

function withoutRestrictions(found: Case, fails: (one: Case) => boolean): Case {
  let shortest = found
  for (const card of found.records.cards)
    for (const restriction of card.restrictions) {
      const cards = shortest.records.cards.map((other) =>
        other.id === card.id
          ? { ...other, restrictions: other.restrictions.filter((one) => one.id !== restriction.id) }
          : other,
      )
      const one = { ...shortest, records: { ...shortest.records, cards } }
      if (fails(one)) shortest = one
    }
  return shortest
}
