import type { Records } from '../authority/records.ts'
import { foldedName, foldedNumber } from '../kernel/folded.ts'
import { scriptsAlikeIn } from '../kernel/look-alikes.ts'
import { sortedTexts } from '../kernel/order.ts'
import { moreThan, MOST_LISTED, type TellDoubt } from './tell-doubt.ts'

/** People whose names a reader cannot tell apart: they are easily taken for one another. */
export function doubtSameNames(records: Records, doubt: TellDoubt): void {
  const byName = grouped(
    records.people,
    ({ name }) => foldedName(name),
    ({ id }) => id,
  )
  for (const person of records.people) {
    const alike = byName.get(foldedName(person.name))
    if (alike === undefined || alike.count === 1) continue
    const { count, listed: people } = alike
    doubt(person, { kind: 'same-name', name: person.name, people, ...moreThan(people.length, count) })
  }
}

/**
 * Card numbers that are one to a reader and two to the record: a suspension of the one leaves the other alone, and both
 * may be of one person or of two.
 */
export function doubtNumbersAlike(records: Records, doubt: TellDoubt): void {
  const byNumber = grouped(
    records.cards,
    ({ number }) => foldedNumber(number),
    ({ number }) => number,
  )
  for (const card of records.cards) {
    const alike = byNumber.get(foldedNumber(card.number))
    if (alike === undefined || alike.count === 1) continue
    const others = alike.listed.filter((number) => number !== card.number)
    const more = moreThan(others.length + 1, alike.count)
    doubt(card, { kind: 'numbers-alike', number: card.number, others, ...more })
  }
}

/** Card numbers with letters of several scripts that look alike: what is read off the card may be another number. */
export function doubtNumbersMixed(records: Records, doubt: TellDoubt): void {
  for (const card of records.cards) {
    const scripts = scriptsAlikeIn(card.number)
    if (scripts.length > 1) doubt(card, { kind: 'number-mixes-scripts', number: card.number, scripts })
  }
}

/** What facts that fold alike are called, the first of them, sorted once for all: a hundred thousand may share a name. */
type Alike = { count: number; listed: readonly string[] }

function grouped<Kind>(
  facts: readonly Kind[],
  keyOf: (fact: Kind) => string,
  nameOf: (fact: Kind) => string,
): ReadonlyMap<string, Alike> {
  const groups = new Map<string, Set<string>>()
  for (const fact of facts) {
    const key = keyOf(fact)
    const group = groups.get(key)
    if (group === undefined) groups.set(key, new Set([nameOf(fact)]))
    else group.add(nameOf(fact))
  }
  return new Map(
    [...groups].map(([key, names]) => [
      key,
      { count: names.size, listed: sortedTexts(names).slice(0, MOST_LISTED) },
    ]),
  )
}
