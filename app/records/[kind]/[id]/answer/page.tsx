import type { Metadata } from 'next'
import { forbidden, notFound } from 'next/navigation'
import { capitalised } from '../../../../../lib/wording/lists.ts'
import { freshForm } from '../../../../_door/form-outcome.ts'
import { addressWord, type AddressWords } from '../../../../_parts/address.ts'
import { DeskPage } from '../../../../_parts/desk-page.tsx'
import { SelectField, SubmitButton } from '../../../../_parts/fields.client.tsx'
import { Form } from '../../../../_parts/form.client.tsx'
import { LongTextField } from '../../../../_parts/long-text-field.client.tsx'
import { PageHeading } from '../../../../_parts/page-heading.tsx'
import { Said } from '../../../../_parts/said.tsx'
import { VersionField } from '../../../form/record-form.client.tsx'
import { recordForPage } from '../../../record-at.ts'
import { answerAction } from '../dispute-actions.ts'

export const metadata: Metadata = { title: 'Answer what is said to be wrong' }

const OUTCOMES = [
  { value: '', label: 'Choose one' },
  { value: 'corrected', label: 'The record was corrected' },
  { value: 'withdrawn', label: 'The record was withdrawn' },
  { value: 'stands', label: 'The record stands' },
]

type Address = { params: Promise<{ kind: string; id: string }>; searchParams: Promise<AddressWords> }

/** The page on which somebody answers who says that a record of theirs is wrong. */
export default async function AnswerPage({ params, searchParams }: Address) {
  const { kind, id } = await params
  const { section, own, visitor, record } = await recordForPage(kind, id, '/answer')
  if (!visitor.permissions.includes('answer-disputes')) forbidden()
  const asked = addressWord(await searchParams, 'dispute')
  const dispute = record.disputes.find((one) => one.id === asked && one.answered === undefined)
  const [latest] = record.versions
  if (dispute === undefined || latest === undefined) notFound()
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: own, words: 'The record' }}
        title="Answer what is said to be wrong"
        lead={<Said>{`${capitalised(latest.says)}.`}</Said>}
      />
      <p>
        <strong>What is said:</strong> <Said>{dispute.says}</Said>
      </p>
      <p>Where the record is wrong, correct or withdraw it first; then say here what was done.</p>
      <Form action={answerAction.bind(null, { section, id, dispute: dispute.id })} first={freshForm()}>
        <VersionField version={dispute.recordedIn} />
        <SelectField name="outcome" label="What was done" options={OUTCOMES} />
        <LongTextField name="says" label="Answer" hint="What you found, and why. They read it." />
        <SubmitButton>Answer</SubmitButton>
      </Form>
      <p className="back">
        <a href={own}>Back without answering</a>
      </p>
    </DeskPage>
  )
}
