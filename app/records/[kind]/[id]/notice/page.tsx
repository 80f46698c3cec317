import type { Metadata } from 'next'
import { forbidden, notFound } from 'next/navigation'
import { freshForm } from '../../../../_door/form-outcome.ts'
import { DeskPage } from '../../../../_parts/desk-page.tsx'
import { SubmitButton } from '../../../../_parts/fields.client.tsx'
import { Form } from '../../../../_parts/form.client.tsx'
import { PageHeading } from '../../../../_parts/page-heading.tsx'
import { noticeAction } from '../../../../stand-down/stand-down-actions.ts'
import { NOTICE_FORM, STOP } from '../../../../stand-down/stand-down-form.ts'
import { namesOffered } from '../../../form/form-page.ts'
import { withOptions } from '../../../form/parts.ts'
import { RecordFields } from '../../../form/record-fields.client.tsx'
import { VersionField } from '../../../form/record-form.client.tsx'
import { recordForPage } from '../../../record-at.ts'

export const metadata: Metadata = { title: 'Whom a notice reached' }

/** The page to record when the notice of a suspension or stand-down reached somebody. */
export default async function NoticePage({ params }: { params: Promise<{ kind: string; id: string }> }) {
  const { kind, id } = await params
  const { section, own, visitor, record, choices } = await recordForPage(kind, id, '/notice')
  if (section !== 'suspensions' || record.version === undefined) notFound()
  if (!visitor.permissions.includes('stand-down')) forbidden()
  const parts = withOptions(NOTICE_FORM, choices)
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: own, words: 'The record' }}
        title="Whom it reached"
        lead="Who was told of it, and when. What they did before they knew is told apart from what they did after."
      />
      <Form action={noticeAction.bind(null, id)} first={freshForm()}>
        <VersionField version={record.version} />
        <RecordFields
          parts={parts}
          prefix={STOP}
          names={namesOffered(parts, choices)}
          suggested={record.person === undefined ? {} : { [`${STOP}.person`]: record.person.name }}
        />
        <SubmitButton>Record it</SubmitButton>
      </Form>
      <p className="back">
        <a href={own}>Back without recording it</a>
      </p>
    </DeskPage>
  )
}
