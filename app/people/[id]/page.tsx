import type { Metadata } from 'next'
import { cache } from 'react'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../lib/usecases/door/runtime.ts'
import { readPerson, type PersonPage } from '../../../lib/usecases/people/person.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../../../lib/wording/notice.ts'
import { asOfSentence } from '../../../lib/wording/openings.ts'
import { personSummary } from '../../../lib/wording/person-summaries.ts'
import { problemsOf } from '../../_door/form-outcome.ts'
import { valueForPage } from '../../_door/value-for-page.ts'
import { caller, visitorOf, type Visitor } from '../../_door/visitor.ts'
import { addressWith, addressWord, type AddressWords } from '../../_parts/address.ts'
import { DeskPage } from '../../_parts/desk-page.tsx'
import { ErrorSummary } from '../../_parts/error-summary.client.tsx'
import { PageHeading } from '../../_parts/page-heading.tsx'
import { Said } from '../../_parts/said.tsx'
import { ThenForm, ThenNotice } from '../then.tsx'
import {
  isThenName,
  readThen,
  THEN_LABELS,
  THEN_NAMES,
  thenFaults,
  withoutFaulty,
  type ThenName,
  type TypedThen,
} from '../typed-then.ts'
import { Authority } from './authority.tsx'
import { Belonging } from './belonging.tsx'
import { mayWrite } from '../../records/record-at.ts'
import { countedFrom } from '../counted-from.ts'
import { Records } from './records.tsx'

type Address = { params: Promise<{ id: string }>; searchParams: Promise<AddressWords> }

/** One look at a person for each request, whoever of the page and its title asks first: the access log counts it once. */
const personAt = cache(async (id: string, known: string | undefined, day: string | undefined) => {
  const then = readThen({ known, day })
  const look = async (input: TypedThen['input']) =>
    callQuery(runtime(), readPerson, { input: { person: id, ...input } }, await caller())
  const first = await look(then.input)
  const unfit = thenFaults(first)
  const isSettled = unfit.length === 0 || unfit.some(({ path }) => !isThenName(path))
  return {
    // What is wrong with then is told over the page without it; an address that is no person's leads nowhere.
    outcome: isSettled ? first : await look(withoutFaulty(then.input, unfit)),
    typed: then.typed,
    problems: problemsOf([...then.faults, ...unfit], THEN_LABELS),
  }
})

async function personOf({ params, searchParams }: Address) {
  const words = await searchParams
  return personAt((await params).id, addressWord(words, 'known'), addressWord(words, 'day'))
}

/** The page's title: the name, for who may read it. */
export async function generateMetadata(address: Address): Promise<Metadata> {
  const { outcome } = await personOf(address)
  return { title: outcome.kind === 'done' ? outcome.value.name : 'People' }
}

/**
 * Everything on record about one person: the authority it makes, what holds it up, and the history of each record; as
 * known now and as of today, or as the address says.
 */
export default async function PersonPageAt(address: Address) {
  const { id } = await address.params
  const path = `/people/${encodeURIComponent(id)}`
  const here = addressWith(path, await address.searchParams, {})
  const visitor = await visitorOf(here)
  const { outcome, typed, problems } = await personOf(address)
  const person = valueForPage(outcome, here)
  const isAsTyped = (name: ThenName) =>
    typed[name] !== undefined && !problems.some(({ field }) => field === name)
  const then = Object.fromEntries(
    THEN_NAMES.flatMap((name) => (isAsTyped(name) ? [[name, typed[name] ?? '']] : [])),
  )
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        {...(visitor.readsOthers
          ? { within: { href: addressWith('/people', then, {}), words: 'People' } }
          : {})}
        title={<bdi>{person.name}</bdi>}
        lead="What is on record about this person: the authority it makes, and how each record came to be."
      />
      <div className="stack">
        <ErrorSummary state={{ command: '', tries: 0, problems, values: {} }} />
        <ThenNotice told={{ ...person, knownThen: isAsTyped('known') }} path={path} words={then} />
        <Summary person={person} />
        {visitor.permissions.includes('stand-down') ? (
          <p>
            <a className="button" href={`/stand-down?person=${encodeURIComponent(person.id)}`}>
              Stand down
            </a>
          </p>
        ) : null}
        {visitor.programWide.includes('erase') ? (
          <p>
            <a href={`/people/${encodeURIComponent(person.id)}/erase`}>Erase the name and age</a>
          </p>
        ) : null}
        <p>
          <strong>{AUTHORITY_IS_NOT_SAFETY}</strong>
        </p>
        <p className="caption">{asOfSentence(person.n, person.statedAt, person.today)}</p>
        <ThenForm path={path} typed={typed} problems={problems} />
      </div>
      <Authority person={person} known={then['known']} />
      <Belonging person={person} />
      <Records
        person={person}
        readsJournal={readsJournal(visitor)}
        writes={(section) => mayWrite(visitor, section)}
      />
    </DeskPage>
  )
}

function Summary({ person }: { person: PersonPage }) {
  return (
    <ul className="lead">
      {personSummary(person.strata, countedFrom(person), person.names).map((sentence) => (
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
