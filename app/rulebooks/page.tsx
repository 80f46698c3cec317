import type { Metadata } from 'next'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import { listRuleBooks, type ListedBook, type ListedEdition } from '../../lib/usecases/rulebooks/list.ts'
import { listShippedBooks } from '../../lib/usecases/rulebooks/shipped.ts'
import { EDITION_STANDINGS, governsSentences, unconfirmedSentence } from '../../lib/wording/book-pages.ts'
import { dayText, spanText } from '../../lib/wording/days.ts'
import { valueForPage } from '../_door/value-for-page.ts'
import { caller, visitorOf } from '../_door/visitor.ts'
import { addressWord, type AddressWords } from '../_parts/address.ts'
import { DeskPage } from '../_parts/desk-page.tsx'
import { Notice } from '../_parts/notice.tsx'
import { PageHeading } from '../_parts/page-heading.tsx'
import { Said } from '../_parts/said.tsx'
import { Section } from '../_parts/section.tsx'
import { Table, type Column } from '../_parts/table.tsx'
import { ShippedBooks } from './shipped-books.tsx'

export const metadata: Metadata = { title: 'Rule books' }

const PATH = '/rulebooks'

/** The rule books of the program: their editions, which is in force, and where. */
export default async function RuleBooksPage({ searchParams }: { searchParams: Promise<AddressWords> }) {
  const visitor = await visitorOf(PATH)
  const who = await caller()
  const books = valueForPage(await callQuery(runtime(), listRuleBooks, { input: {} }, who), PATH)
  const shipped = visitor.programWide.includes('adopt-books')
    ? valueForPage(await callQuery(runtime(), listShippedBooks, { input: {} }, who), PATH)
    : undefined
  const adopted = addressWord(await searchParams, 'adopted')
  const justAdopted = books.find(({ id }) => id === adopted)
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        title="Rule books"
        lead={`All that is policy stands in these books: levels, terms, ages, certificates. This page says which edition is in force on ${dayText(visitor.today)}, and where.`}
      />
      {justAdopted === undefined ? null : (
        <Notice kind="kept">
          <p>
            Adopted: <a href={`#book-${justAdopted.id}`}>{justAdopted.name}</a>. It stands in the journal, and
            no place is governed by it.
          </p>
        </Notice>
      )}
      {books.length === 0 ? (
        <p>No rule book is on record yet. The first one is adopted when the program is founded.</p>
      ) : (
        books.map((book) => <Book key={book.id} book={book} />)
      )}
      {shipped === undefined ? null : <ShippedBooks {...shipped} />}
    </DeskPage>
  )
}

function Book({ book: { id, name, says, isOwn, editions, places } }: { book: ListedBook }) {
  return (
    <Section id={`book-${id}`} title={name}>
      <p className="entry">{says}</p>
      {governsSentences(isOwn, places).map((sentence) => (
        <p key={sentence} className="small">
          <Said>{sentence}</Said>
        </p>
      ))}
      <Table
        caption={`Editions of the ${name}, the first first`}
        columns={COLUMNS}
        rows={editions}
        rowKey={({ id: edition }) => edition}
        empty={<p>No edition of this book is on record.</p>}
      />
    </Section>
  )
}

const COLUMNS: readonly Column<ListedEdition>[] = [
  {
    key: 'name',
    head: 'Edition',
    cell: ({ id, name }) => <a href={`${PATH}/${id}`}>{name}</a>,
  },
  { key: 'standing', head: 'Today', cell: ({ standing }) => EDITION_STANDINGS[standing] },
  {
    key: 'days',
    head: 'Days',
    cell: ({ firstDay, lastDay }) =>
      lastDay === undefined
        ? `from ${dayText(firstDay)} until another is adopted`
        : spanText({ first: firstDay, last: lastDay }),
  },
  { key: 'rules', head: 'Rules', cell: ({ rules }) => rules },
  {
    key: 'unconfirmed',
    head: 'From memory',
    cell: unconfirmedSentence,
  },
]
