import type { Metadata } from 'next'
import { callQuery } from '../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { readShippedBook } from '../../../../lib/usecases/rulebooks/shipped.ts'
import {
  inForceSentence,
  successorSentence,
  unconfirmedSentence,
} from '../../../../lib/wording/book-pages.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../../../../lib/wording/notice.ts'
import { valueForPage } from '../../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../../_door/visitor.ts'
import { DeskPage } from '../../../_parts/desk-page.tsx'
import { Notice } from '../../../_parts/notice.tsx'
import { PageHeading } from '../../../_parts/page-heading.tsx'
import { EditionRules } from '../../edition-rules.tsx'

export const metadata: Metadata = { title: 'A rule book that ships' }

/** A rule book as it ships, to read before it is adopted: its newest edition, rule by rule. */
export default async function ShippedBookPage({ params }: { params: Promise<{ book: string }> }) {
  const { book: id } = await params
  const path = `/rulebooks/shipped/${id}`
  const visitor = await visitorOf(path)
  const read = valueForPage(
    await callQuery(runtime(), readShippedBook, { input: { book: id } }, await caller()),
    path,
  )
  const { book, isAdopted, editions } = read
  const mayAdopt = visitor.programWide.includes('adopt-books') && !isAdopted
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: '/rulebooks', words: 'Rule books' }}
        title={book.name}
        lead="This book as it ships with this version: what each level gives, and every rule with its source and how well it is supported."
      />
      <div className="stack">
        <Notice>
          <p>
            {isAdopted ? (
              <>
                <strong>This program has adopted a copy of this book.</strong> The copy counts here, and this
                page is no part of it.
              </>
            ) : (
              <>
                <strong>Not adopted here.</strong> No answer of this program rests on anything on this page.
              </>
            )}
          </p>
        </Notice>
        <p className="entry">{book.says}</p>
        <p>
          <strong>{AUTHORITY_IS_NOT_SAFETY}</strong>
        </p>
        {mayAdopt ? (
          <p>
            <a className="button" href={`${path}/adopt`}>
              Adopt this book
            </a>
          </p>
        ) : null}
      </div>
      {editions.map((one) => (
        <div key={one.edition.id}>
          <h2>{one.edition.name}</h2>
          <p>
            {inForceSentence(one.edition)}{' '}
            {one.edition.successor === undefined ? null : successorSentence(one.edition.successor)}{' '}
            {unconfirmedSentence({ fromMemory: one.marks['from-memory'], unconfirmed: one.unconfirmed })}
          </p>
          <EditionRules read={one} />
        </div>
      ))}
    </DeskPage>
  )
}
