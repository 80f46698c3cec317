import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { capitalised } from '../../../../../lib/wording/lists.ts'
import { freshForm } from '../../../../_door/form-outcome.ts'
import { DeskPage } from '../../../../_parts/desk-page.tsx'
import { SubmitButton } from '../../../../_parts/fields.client.tsx'
import { Form } from '../../../../_parts/form.client.tsx'
import { PageHeading } from '../../../../_parts/page-heading.tsx'
import { Said } from '../../../../_parts/said.tsx'
import { confirmAction } from '../../../../stand-down/stand-down-actions.ts'
import { VersionField, WhyField } from '../../../form/record-form.client.tsx'
import { recordForPage, requireWriting } from '../../../record-at.ts'

export const metadata: Metadata = { title: 'Confirm a stand-down' }

/** The page on which a certifying official confirms a stand-down. */
export default async function ConfirmPage({ params }: { params: Promise<{ kind: string; id: string }> }) {
  const { kind, id } = await params
  const { section, own, visitor, record } = await recordForPage(kind, id, '/confirm')
  if (section !== 'suspensions') notFound()
  requireWriting(visitor, section)
  const [latest] = record.versions
  const isStandDown = latest !== undefined && 'form' in latest.fact && latest.fact.form === 'stand-down'
  if (record.version === undefined || !isStandDown) notFound()
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: own, words: 'The record' }}
        title="Confirm it"
        lead={
          <Said>{`${capitalised(latest.says)}. Once confirmed it is a suspension, from the same day.`}</Said>
        }
      />
      <Form action={confirmAction.bind(null, id)} first={freshForm()}>
        <VersionField version={record.version} />
        <WhyField hint="What you found. It stands in the history, with your name." />
        <SubmitButton>Confirm the stand-down</SubmitButton>
      </Form>
      <p className="back">
        <a href={own}>Back without confirming it</a>
      </p>
    </DeskPage>
  )
}
