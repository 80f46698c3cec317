import type { Metadata } from 'next'
import { cache } from 'react'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../lib/usecases/door/runtime.ts'
import { readPerson, type PersonPage } from '../../../lib/usecases/people/person.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../../../lib/wording/notice.ts'
import { asOfSentence } from '../../../lib/wording/openings.ts'
import { personSummary } from '../../../lib/wording/person-summaries.ts'
import { valueForPage } from '../../_door/value-for-page.ts'
import { caller, visitorOf, type Visitor } from '../../_door/visitor.ts'
import { DeskPage } from '../../_parts/desk-page.tsx'
import { PageHeading } from '../../_parts/page-heading.tsx'
import { Said } from '../../_parts/said.tsx'
import { Authority } from './authority.tsx'
import { Belonging } from './belonging.tsx'
import { Records } from './records.tsx'

type Address = { params: Promise<{ id: string }> }

/** One look at a person for each request, whoever of the page and its title asks first: the access log counts it once. */
const personAt = cache(async (id: string) =>
  callQuery(runtime(), readPerson, { input: { person: id } }, await caller()),
)

/** The page's title: the name, for who may read it. */
export async function generateMetadata({ params }: Address): Promise<Metadata> {
  const outcome = await personAt((await params).id)
  return { title: outcome.kind === 'done' ? outcome.value.name : 'People' }
}

/** Everything on record about one person: the authority it makes, what holds it up, and the history of each record. */
export default async function PersonPageAt({ params }: Address) {
  const { id } = await params
  const path = `/people/${encodeURIComponent(id)}`
  const visitor = await visitorOf(path)
  const person = valueForPage(await personAt(id), path)
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        {...(visitor.readsOthers ? { within: { href: '/people', words: 'People' } } : {})}
        title={<bdi>{person.name}</bdi>}
        lead="What is on record about this person: the authority it makes, and how each record came to be."
      />
      <div className="stack">
        <Summary person={person} />
        <p>
          <strong>{AUTHORITY_IS_NOT_SAFETY}</strong>
        </p>
        <p className="caption">{asOfSentence(person.n, person.statedAt, person.today)}</p>
      </div>
      <Authority person={person} />
      <Belonging person={person} />
      <Records person={person} readsJournal={readsJournal(visitor)} />
    </DeskPage>
  )
}

function Summary({ person }: { person: PersonPage }) {
  return (
    <ul className="lead">
      {personSummary(person.strata, person.today, person.names).map((sentence) => (
        <li key={sentence}>
          <Said>{sentence}</Said>
        </li>
      ))}
    </ul>
  )
}

function readsJournal({ permissions }: Visitor): boolean {
  return permissions.includes('read-journal')
}
