import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { DAYS_TO_ANSWER } from '../../../../../lib/usecases/records/disputes.ts'
import { capitalised } from '../../../../../lib/wording/lists.ts'
import { freshForm } from '../../../../_door/form-outcome.ts'
import { DeskPage } from '../../../../_parts/desk-page.tsx'
import { SubmitButton } from '../../../../_parts/fields.client.tsx'
import { Form } from '../../../../_parts/form.client.tsx'
import { LongTextField } from '../../../../_parts/long-text-field.client.tsx'
import { PageHeading } from '../../../../_parts/page-heading.tsx'
import { Said } from '../../../../_parts/said.tsx'
import { recordForPage } from '../../../record-at.ts'
import { wrongAction } from '../dispute-actions.ts'

export const metadata: Metadata = { title: 'Something here is wrong' }

/** The page on which somebody says that a record of theirs is wrong. */
export default async function WrongPage({ params }: { params: Promise<{ kind: string; id: string }> }) {
  const { kind, id } = await params
  const { section, own, visitor, record } = await recordForPage(kind, id, '/wrong')
  const [latest] = record.versions
  if (!record.isOwn || record.version === undefined || latest === undefined) notFound()
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: own, words: 'The record' }}
        title="Something here is wrong"
        lead={
          <Said>{`${capitalised(latest.says)}. Somebody who did not record it answers you within ${DAYS_TO_ANSWER} days.`}</Said>
        }
      />
      <Form action={wrongAction.bind(null, { section, id })} first={freshForm()}>
        <LongTextField
          name="says"
          label="What is wrong"
          hint="What it should say, and how you know. It is kept with the record, under your name."
        />
        <SubmitButton>Say it</SubmitButton>
      </Form>
      <p className="back">
        <a href={own}>Back without saying it</a>
      </p>
    </DeskPage>
  )
}
