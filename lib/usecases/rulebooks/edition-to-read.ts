import type { CalendarDate } from '../../core/calendar/dates.ts'
import { bookPage, type BookSection, type EditionPage } from '../../core/rulebooks/book-text.ts'
import type { Confirmation, Edition, ShippedEdition } from '../../core/rulebooks/books.schema.ts'
import { unconfirmedRules } from '../../core/rulebooks/confirmations.ts'
import type { Rule, RuleOf } from '../../core/rulebooks/rules.schema.ts'
import type { Mark } from '../../core/rulebooks/words.ts'
import { InvariantBroken } from '../../core/kernel/result.ts'
import { ruleFigures, type FigureInWords, type FigureNames } from '../../wording/rule-figures.ts'
import { standingOn } from './list.ts'

/** A rule as a page shows it: what it says, its figures in words, where from, and who confirmed it. */
export type RuleToRead = {
  id: string
  says: string
  source: string
  mark: Mark
  disagrees?: string
  figures: readonly FigureInWords[]
  /** Of a rule from memory that somebody confirmed. */
  confirmed?: Pick<Confirmation, 'by' | 'day' | 'read' | 'recordedIn'>
}

/** What the levels give for one kind of work with one kind of saw, the lowest level first. */
export type GrantsToRead = Pick<RuleOf<'grant'>, 'workKind' | 'sawKind'> & {
  rows: readonly { level: string; name: string; cells: RuleOf<'grant'>['cells']; rule: string }[]
}

/** An edition that a program has adopted, or one as it ships. */
type EditionRead = Edition | ShippedEdition

/** An edition with what it is read with. */
export type EditionWithWords = {
  book: { id: string; name: string; says: string }
  edition: EditionRead
  confirmations: readonly Confirmation[]
  names: FigureNames
}

/** An edition as a page to read: what its levels give, every rule with source and mark, and who confirmed what. */
export function editionToRead(
  { book, edition, confirmations, names }: EditionWithWords,
  today: CalendarDate,
) {
  const { id, name, says, firstDay, lastDay, successor } = edition
  const [page] = bookPage(book, [edition], confirmations).editions
  // INVARIANT: an edition is read with the book that it names.
  if (page === undefined) throw new InvariantBroken(`the edition ${id} is not of the book ${book.id}`)
  return {
    book: { id: book.id, name: book.name },
    edition: {
      id,
      name,
      says,
      firstDay,
      ...(lastDay === undefined ? {} : { lastDay }),
      ...(successor === undefined ? {} : { successor }),
    },
    standing: standingOn(edition, today),
    rules: edition.rules.length,
    marks: page.marks,
    unconfirmed: unconfirmedRules(edition, confirmations).length,
    grants: grantsOf(edition),
    sections: sectionsOf(page, edition, confirmations, names),
    today,
  }
}

/** What a page of an edition shows. */
export type EditionToRead = ReturnType<typeof editionToRead>

function grantsOf({ levels, rules }: EditionRead): GrantsToRead[] {
  const tables = new Map<string, GrantsToRead & { rows: GrantsToRead['rows'][number][] }>()
  for (const { level, name } of [...levels].sort((left, right) => left.rank - right.rank)) {
    for (const rule of rules) {
      if (rule.kind !== 'grant' || rule.level !== level) continue
      const { workKind, sawKind, cells, id } = rule
      const key = `${sawKind} ${workKind}`
      const table = tables.get(key) ?? { workKind, sawKind, rows: [] }
      table.rows.push({ level, name, cells, rule: id })
      tables.set(key, table)
    }
  }
  return [...tables].sort(([left], [right]) => (left < right ? -1 : 1)).map(([, table]) => table)
}

function sectionsOf(
  { sections }: EditionPage,
  edition: EditionRead,
  confirmations: readonly Confirmation[],
  names: FigureNames,
): { section: BookSection; rules: readonly RuleToRead[] }[] {
  const byId = new Map(edition.rules.map((rule) => [rule.id, rule]))
  return sections.map(({ section, rules }) => ({
    section,
    rules: rules.flatMap(({ id }) => {
      const rule = byId.get(id)
      return rule === undefined ? [] : [toRead(rule, confirmations, names)]
    }),
  }))
}

function toRead(rule: Rule, confirmations: readonly Confirmation[], names: FigureNames): RuleToRead {
  const { id, says, source, mark, disagrees } = rule
  const confirmation = mark === 'from-memory' ? confirmations.find((one) => one.rule === id) : undefined
  return {
    id,
    says,
    source,
    mark,
    ...(disagrees === undefined ? {} : { disagrees }),
    figures: ruleFigures(rule, names),
    ...(confirmation === undefined ? {} : { confirmed: confirmation }),
  }
}
