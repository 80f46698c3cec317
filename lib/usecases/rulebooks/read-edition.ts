import { z } from 'zod'
import { idField } from '../../core/kernel/fields.schema.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { refusal, success } from '../../core/kernel/result.ts'
import { bookPage, type BookSection, type EditionPage } from '../../core/rulebooks/book-text.ts'
import { unconfirmedRules } from '../../core/rulebooks/confirmations.ts'
import type { Confirmation, Edition } from '../../core/rulebooks/books.schema.ts'
import type { Rule, RuleOf } from '../../core/rulebooks/rules.schema.ts'
import type { Mark } from '../../core/rulebooks/words.ts'
import { recordsAt } from '../../core/program/known.ts'
import { namesOf } from '../../wording/names.ts'
import { ruleFigures, type FigureInWords, type FigureNames } from '../../wording/rule-figures.ts'
import { query } from '../door/use-case.ts'
import { knownBooks } from './known-books.ts'
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

/** One edition as a page to read: what its levels give, every rule with source and mark, and who confirmed what. */
export const readEdition = query({
  name: 'rulebooks/read',
  permission: 'read-books',
  input: z.strictObject({ edition: idField }),
  load: ({ snapshot }, { edition: id }) => {
    const known = knownBooks(snapshot)
    const edition = known.editions.find((one) => one.id === id)
    const book = known.books.find((one) => one.id === edition?.book)
    if (edition === undefined || book === undefined) return refusal({ kind: 'not-found' })
    const confirmations = known.confirmations.filter((one) => one.edition === id)
    const cautions = snapshot.program.cautions.filter((one) => isKnownAt(one, snapshot.n))
    const { book: bookName, subject } = namesOf(recordsAt(snapshot.program, snapshot.n))
    const names: FigureNames = {
      book: bookName,
      subject,
      caution: (caution) => cautions.find((one) => one.id === caution)?.name ?? caution,
    }
    const [page] = bookPage(book, [edition], confirmations).editions
    if (page === undefined) return refusal({ kind: 'not-found' })
    return success({ book, edition, page, confirmations, names })
  },
  about: () => ({ kind: 'nothing' }),
  answer: ({ book, edition, page, confirmations, names }, { today }) => {
    const { id, name, says, firstDay, lastDay, successor, recordedIn } = edition
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
      /** The entry that recorded this version of the edition: what is confirmed is confirmed of this one. */
      version: recordedIn,
      standing: standingOn(edition, today),
      rules: edition.rules.length,
      marks: page.marks,
      unconfirmed: unconfirmedRules(edition, confirmations).length,
      grants: grantsOf(edition),
      sections: sectionsOf(page, edition, confirmations, names),
      today,
    }
  },
})

function grantsOf({ levels, rules }: Edition): GrantsToRead[] {
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
  edition: Edition,
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
