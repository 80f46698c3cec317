import type { Records } from '../authority/records.ts'
import { byText } from '../kernel/order.ts'
import type { BookFile } from './book-file.schema.ts'
import type { ShippedPart } from './problems.ts'
import type { Fact } from './sections.ts'
import { moreThan, MOST_LISTED, type TellDoubt } from './tell-doubt.ts'

/** A record as a book file holds it, or a fact that was adopted from one. */
type Content = { id: string }

/** Keys that adopting adds. */
const OF_ADOPTING: ReadonlySet<string> = new Set(['recordedIn', 'supersededIn', 'supersedes'])

/**
 * Parts of rule books that carry the ids of what ships and say something else, editions that do not ship with a book
 * that does, and what is missing of it. `shipped` are the books as they ship; a program may have changed its copy, and
 * whoever trusts the name of the book should know.
 */
export function doubtShipped(records: Records, shipped: readonly BookFile[], doubt: TellDoubt): void {
  const cautions = new Set<string>()
  for (const file of shipped) {
    const book = records.books.find(({ id }) => id === file.book.id)
    if (book === undefined) continue
    const editions = records.editions.filter((edition) => edition.book === book.id)
    const compare = (
      what: ShippedPart,
      held: readonly (Fact & Content)[],
      parts: readonly Content[],
    ): void => {
      const byId = new Map(held.map((fact) => [fact.id, fact]))
      const missing: string[] = []
      for (const part of parts) {
        const fact = byId.get(part.id)
        if (fact === undefined) missing.push(part.id)
        // Books share cautions; one that differs is told once.
        else if (what !== 'caution' || !cautions.has(part.id))
          tellDifference(what, book.id, fact, part, doubt)
        if (what === 'caution') cautions.add(part.id)
      }
      if (missing.length > 0)
        doubt(book, { kind: 'shipped-part-missing', what, book: book.id, parts: missing.sort(byText) })
    }
    compare('book', [book], [file.book])
    compare('edition', editions, file.editions)
    compare('order', records.extensions, file.extensions)
    compare('caution', records.cautions, file.cautions)
    const known = new Set(file.editions.map(({ id }) => id))
    for (const edition of editions)
      if (!known.has(edition.id)) doubt(edition, { kind: 'edition-not-shipped', book: book.id })
  }
}

function tellDifference(what: ShippedPart, book: string, fact: Fact, part: Content, doubt: TellDoubt): void {
  const held = partsOf(fact)
  const ships = partsOf(part)
  const names = [...new Set([...held.keys(), ...ships.keys()])].filter(
    (name) => held.get(name) !== ships.get(name),
  )
  if (names.length === 0) return
  const parts = names.slice(0, MOST_LISTED)
  doubt(fact, { kind: 'differs-from-shipped', what, book, parts, ...moreThan(parts.length, names.length) })
}

/** What a record says, by its keys; each rule of an edition by its id. */
function partsOf(record: Content): ReadonlyMap<string, string> {
  const parts = new Map<string, string>()
  for (const [key, value] of Object.entries(record)) {
    if (OF_ADOPTING.has(key)) continue
    if (key === 'rules' && Array.isArray(value))
      for (const rule of value as readonly Content[]) parts.set(rule.id, canonicalText(rule))
    else parts.set(key, canonicalText(value))
  }
  return parts
}

/** The same text for the same value, in whatever order its keys stand. */
function canonicalText(value: unknown): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  if (Array.isArray(value)) return `[${value.map(canonicalText).join(',')}]`
  const entries = Object.entries(value).sort(([left], [right]) => byText(left, right))
  return `{${entries.map(([key, item]) => `${JSON.stringify(key)}:${canonicalText(item)}`).join(',')}}`
}
