import type { MatrixItem } from '../../lib/core/authority/matrix.ts'
import { workOfItem } from '../../lib/core/authority/ask.ts'
import type { Authority } from '../../lib/core/authority/authority-index.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import { emptyRecords, withParts } from '../builders/records.ts'
import { shippedBooks } from '../builders/shipped-books.ts'
import { Draw } from '../properties/draw.ts'
import { addCards, addSharedSuspensions, type BigCards } from './big-cards.ts'
import { addPerson, type BigPeople } from './big-people.ts'
import { addAssignment, drawWork } from './big-work.ts'
import { AGENCY, PARTNER } from './season.ts'

/** Of so many people one belongs to the staff: a C who rates items and teaches. */
const PEOPLE_FOR_EACH_OF_THE_STAFF = 40
const PERCENT_WITHOUT_CARD_WHO_LEARN = 25

/**
 * A program of so many people and so many logs and trees over one season, under the shipped books; the same sizes and
 * seed make the same program.
 */
export function bigProgram(peopleCount: number, itemCount: number, seed = 1): Records {
  const draw = new Draw(seed)
  const ids = Array.from({ length: peopleCount }, (_, index) => `person-${index + 1}`)
  const staff = ids.filter((_, index) => index % PEOPLE_FOR_EACH_OF_THE_STAFF === 0)
  const isStaff = new Set(staff)
  const people: BigPeople = {
    people: [],
    memberships: [],
    permissions: [],
    certificates: [],
    designations: [],
  }
  const cards: BigCards = { cards: [], endings: [], resolutions: [], suspensions: [], lifts: [] }
  const work = drawWork(draw, itemCount, staff)
  for (const id of ids) {
    const before = cards.cards.length
    addPerson(draw, people, id, isStaff.has(id))
    addCards(draw, cards, id, isStaff.has(id))
    const hasNoCard = cards.cards.length === before
    if (hasNoCard && work.items.length > 0 && draw.chance(PERCENT_WITHOUT_CARD_WHO_LEARN))
      addAssignment(draw, work, id, staff)
  }
  addSharedSuspensions(draw, cards)
  const organisations = [AGENCY, PARTNER].map((id) => ({ id, recordedIn: 1, name: `Invented ${id}` }))
  return withParts(emptyRecords(), shippedBooks(), { organisations, ...people, ...cards, ...work })
}

/** Every log, tree and expected work of a program, each on its own days. */
export function itemsOf(authority: Authority): MatrixItem[] {
  const { items, expectedWork } = authority.records
  return [...items, ...expectedWork].map(({ id }) => {
    const found = workOfItem(authority, id, 'crosscut')
    if (found?.first === undefined || found.last === undefined)
      throw new RangeError(`the item ${id} has no days`)
    return { work: found.work, first: found.first, last: found.last }
  })
}
