import fc from 'fast-check'
import type { Question } from '../../lib/core/authority/question.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import { emptyRecords, withParts } from '../builders/records.ts'
import { Calendar, Draw } from './draw.ts'
import { generateBooks } from './generated-books.ts'
import { generateCards } from './generated-cards.ts'
import { generatePeople } from './generated-people.ts'
import { generateQuestion } from './generated-questions.ts'
import { generateWork } from './generated-work.ts'

/** A small program and a question about it. */
export type Case = { records: Records; question: Question }

const LARGEST_SEED = 2 ** 31 - 1

/**
 * The seeds of cases. A failing case is made short by leaving out its facts, not by another seed; so seeds do not
 * shrink.
 */
export function seeds(): fc.Arbitrary<number> {
  return fc.noShrink(fc.noBias(fc.nat({ max: LARGEST_SEED })))
}

/** A whole small program, of which everything may be amiss, with a question near its days. */
export function caseOfSeed(seed: number): Case {
  return generateCase(new Draw(seed))
}

/** One program with its question, by the choices that are drawn. */
export function generateCase(draw: Draw): Case {
  const calendar = new Calendar(draw)
  const people = generatePeople(draw, calendar)
  const ids = people.people.map(({ id }) => id)
  const books = generateBooks(draw, calendar)
  const cards = generateCards(draw, calendar, ids)
  const records = withParts(emptyRecords(), books, people, cards, generateWork(draw, calendar, ids))
  return { records, question: generateQuestion(draw, calendar, records) }
}
