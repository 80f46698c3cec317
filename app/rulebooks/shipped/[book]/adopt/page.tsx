import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { callQuery } from '../../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../../lib/usecases/door/runtime.ts'
import { readShippedBook } from '../../../../../lib/usecases/rulebooks/shipped.ts'
import { unconfirmedSentence } from '../../../../../lib/wording/book-pages.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../../../../../lib/wording/notice.ts'
import { freshForm } from '../../../../_door/form-outcome.ts'
import { requirePermission } from '../../../../_door/require-permission.ts'
import { valueForPage } from '../../../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../../../_door/visitor.ts'
import { DeskPage } from '../../../../_parts/desk-page.tsx'
import { SubmitButton } from '../../../../_parts/fields.client.tsx'
import { Form } from '../../../../_parts/form.client.tsx'
import { Notice } from '../../../../_parts/notice.tsx'
import { PageHeading } from '../../../../_parts/page-heading.tsx'
import { Section } from '../../../../_parts/section.tsx'
import { adoptAction } from './adopt-action.ts'

export const metadata: Metadata = { title: 'Adopt a rule book' }

/** The page to check before a book that ships is adopted: what comes on record, and what does not change. */
export default async function AdoptPage({ params }: { params: Promise<{ book: string }> }) {
  const { book: id } = await params
  const back = `/rulebooks/shipped/${id}`
  const path = `${back}/adopt`
  const visitor = await visitorOf(path)
  requirePermission(visitor, 'adopt-books')
  const { book, isAdopted, editions } = valueForPage(
    await callQuery(runtime(), readShippedBook, { input: { book: id } }, await caller()),
    path,
  )
  if (isAdopted) redirect('/rulebooks')
  const name = visitor.name ?? visitor.signInName
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: back, words: book.name }}
        title={`Adopt the ${book.name}`}
        lead="Adopt it when you have read it. The program keeps a copy, whatever later versions bring."
      />
      <Section id="what" title="What is adopted">
        <p className="entry">{book.says}</p>
        <ul>
          {editions.map(({ edition, rules, marks, unconfirmed }) => (
            <li key={edition.id}>
              {edition.name}: {rules} rules.{' '}
              {unconfirmedSentence({ fromMemory: marks['from-memory'], unconfirmed })}
            </li>
          ))}
        </ul>
        <p>
          <strong>{AUTHORITY_IS_NOT_SAFETY}</strong>
        </p>
      </Section>
      <Section id="adopt" title="Your decision">
        <Notice>
          <p>
            The journal will say under your name, <bdi>{name}</bdi>, that one person alone adopted it. What is
            adopted is not taken back. <strong>No place is governed by it through this</strong>, and no answer
            changes.
          </p>
        </Notice>
        <Form action={adoptAction.bind(null, id)} first={freshForm()}>
          <SubmitButton>Adopt the book</SubmitButton>
        </Form>
        <p>
          <a href={back}>Back without adopting</a>
        </p>
      </Section>
    </DeskPage>
  )
}
