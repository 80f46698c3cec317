import type { Metadata } from 'next'
import { forbidden, notFound } from 'next/navigation'
import { freshForm } from '../_door/form-outcome.ts'
import { visitorOf } from '../_door/visitor.ts'
import { addressWith, addressWord, type AddressWords } from '../_parts/address.ts'
import { SomeField } from '../_parts/choice-fields.client.tsx'
import { DeskPage } from '../_parts/desk-page.tsx'
import { SubmitButton } from '../_parts/fields.client.tsx'
import { Form } from '../_parts/form.client.tsx'
import { Notice } from '../_parts/notice.tsx'
import { PageHeading } from '../_parts/page-heading.tsx'
import { Said } from '../_parts/said.tsx'
import { namesOffered } from '../records/form/form-page.ts'
import { withOptions } from '../records/form/parts.ts'
import { RecordFields } from '../records/form/record-fields.client.tsx'
import { ToldActs } from '../records/form/record-form.client.tsx'
import { valueForPage } from '../_door/value-for-page.ts'
import { choicesFor } from '../records/record-at.ts'
import { lookAtWhom } from './whom.ts'
import { standDownAction } from './stand-down-actions.ts'
import { STAND_DOWN_ANY, STAND_DOWN_ONE, STOP } from './stand-down-form.ts'

export const metadata: Metadata = { title: 'Stand down' }

const PATH = '/stand-down'
const TOLD = [{ value: 'yes', label: 'They have been told, just now' }]

/** The page to stand somebody down at once: opened from their page it asks for a reason and no more. */
export default async function StandDownPage({ searchParams }: { searchParams: Promise<AddressWords> }) {
  const words = await searchParams
  const path = addressWith(PATH, words, {})
  const visitor = await visitorOf(path)
  if (!visitor.permissions.includes('stand-down')) forbidden()
  const choices = { ...(await choicesFor(path)), ...valueForPage(await lookAtWhom(), path) }
  const asked = addressWord(words, 'person')
  const person = choices.people.find(({ id }) => id === asked)
  if (asked !== undefined && person === undefined) notFound()
  const parts = withOptions(person === undefined ? STAND_DOWN_ANY : STAND_DOWN_ONE, choices)
  // A lead reads no record of their crew.
  const back = !visitor.readsOthers
    ? { href: '/', words: 'Who may' }
    : person === undefined
      ? { href: '/records/suspensions', words: 'Suspensions and stand-downs' }
      : { href: `/people/${person.id}`, words: 'The person' }
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={back}
        title={person === undefined ? 'Stand down at once' : <Said>{`Stand down ${person.name}`}</Said>}
        lead="All their work with a saw stops from today, whole, until a certifying official lifts it."
      />
      {addressWord(words, 'did') === 'stood-down' ? (
        <Notice kind="kept">
          <p>
            It stands from now on, and stops all that it stops. It waits for a certifying official. Tell them:
            this record does not reach them.
          </p>
        </Notice>
      ) : null}
      <Form action={standDownAction.bind(null, person?.id)} first={freshForm()}>
        <RecordFields
          parts={parts}
          prefix={STOP}
          names={namesOffered(parts, choices)}
          suggested={{ [`${STOP}.kind`]: 'unsafe-act' }}
        />
        <SomeField name="noticed" label="Notice" options={TOLD} />
        {person === undefined ? (
          <ToldActs tell="Stand down" act="Stand them down now" />
        ) : (
          <SubmitButton>Stand down now</SubmitButton>
        )}
      </Form>
      <p className="hint">
        Somebody must tell them: this record does not reach them. Leave the box empty until they have been
        told, and record it afterwards.
      </p>
      <p className="back">
        <a href={back.href}>Back without standing anybody down</a>
      </p>
    </DeskPage>
  )
}
