import { expect } from 'vitest'
import type { RuleRef } from '../../lib/core/rulebooks/rule-ref.ts'
import { namesOf, type Names } from '../../lib/wording/names.ts'
import { card, suspension } from '../builders/cards.ts'
import { person } from '../builders/people.ts'
import { records } from '../builders/records.ts'
import { item, place } from '../builders/work.ts'

/** A rule of the shipped federal edition. */
export const RULE: RuleRef = {
  edition: 'federal-crosscut-2016',
  rule: 'grant.bucking.A',
  source: 'FSM 2358.05',
  mark: 'published',
}

/** Names of a small program: two people share one. */
export function someNames(): Names {
  return namesOf(
    records({
      people: [
        person('p-1', { name: 'Ada Brandt' }),
        person('p-2', { name: 'Bo Marsh' }),
        person('p-3', { name: 'Bo Marsh' }),
        person('p-4', { name: 'Cy Orrin' }),
      ],
      places: [place('north-end', { name: 'North End' }), place('south-end', { name: 'South End' })],
      items: [item('log-1', { name: 'Log at the ford' })],
      cards: [
        card('p-1', 'B', { number: 'K-1' }),
        card('p-2', 'A', { number: 'K-2' }),
        card('p-4', 'A', { id: 'card-p-2b', number: 'K-2', line: 2 }),
      ],
      organisations: [{ id: 'org-1', recordedIn: 1, name: 'Invented Volunteers' }],
      suspensions: [suspension('s-1')],
    }),
  )
}

/** Words of blame, and the word that is never used of a last day. */
const NEVER =
  /undefined|null|NaN|\[object|expir|fail(?:ed|ure)|fault of (?:the|their) (?:person|sawyer)|must not have|should have|illegal|violat/i

/** Holds for every sentence: plain, whole, and without a hole. */
export function expectSentence(sentence: string): void {
  expect(sentence).not.toMatch(NEVER)
  expect(sentence).not.toMatch(/ {2}|\s$|^\s|\.\.|,\.| ,| \.$/)
  expect(sentence).toMatch(/^[\p{Lu}“\d]/u)
  expect(sentence).toMatch(/[.?]$/)
}

/** The sentence is whole and contains each of the words. */
export function expectSays(sentence: string, ...words: readonly string[]): void {
  expectSentence(sentence)
  for (const word of words) expect(sentence).toContain(word)
}
