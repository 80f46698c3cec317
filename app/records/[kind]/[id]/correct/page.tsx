import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { capitalised } from '../../../../../lib/wording/lists.ts'
import { freshForm } from '../../../../_door/form-outcome.ts'
import { DeskPage } from '../../../../_parts/desk-page.tsx'
import { Form } from '../../../../_parts/form.client.tsx'
import { PageHeading } from '../../../../_parts/page-heading.tsx'
import { Said } from '../../../../_parts/said.tsx'
import { correctAction } from '../../../form/change-actions.ts'
import { namesOffered } from '../../../form/form-page.ts'
import { FORMS } from '../../../form/forms.ts'
import { withOptions } from '../../../form/parts.ts'
import { RecordFields } from '../../../form/record-fields.client.tsx'
import {
  BesideTyped,
  PaperFields,
  ToldActs,
  VersionField,
  WhyField,
} from '../../../form/record-form.client.tsx'
import { valuesOf } from '../../../form/shown.ts'
import { FIELDS } from '../../../form/typed-record.ts'
import { recordForPage, requireWriting } from '../../../record-at.ts'

export const metadata: Metadata = { title: 'Correct a record' }

/** The page to correct a record: what it says now, to be put right, and why. */
export default async function CorrectPage({ params }: { params: Promise<{ kind: string; id: string }> }) {
  const { kind, id } = await params
  const { section, own, visitor, record, choices } = await recordForPage(kind, id, '/correct')
  requireWriting(visitor, section)
  const [latest] = record.versions
  if (record.version === undefined || latest === undefined) notFound()
  const parts = withOptions(FORMS[section], choices)
  const first = { ...freshForm(), values: valuesOf(parts, latest.fact, FIELDS, choices) }
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: own, words: 'The record' }}
        title="Correct it"
        lead={
          <Said>{`${capitalised(latest.says)}. What stands now stays in the history, as it was known.`}</Said>
        }
      />
      <Form action={correctAction.bind(null, { section, id })} first={first}>
        <BesideTyped />
        <VersionField version={record.version} />
        {record.hidesBirthDate ? (
          <p className="hint">
            A birth date that is on record and not shown to you stays as it is, unless you type one.
          </p>
        ) : null}
        <RecordFields parts={parts} prefix={FIELDS} names={namesOffered(parts, choices)} suggested={{}} />
        <WhyField hint="What was wrong, and how you know. It stands in the history, with your name." />
        <PaperFields />
        <ToldActs tell="See what this changes" act="Record the correction" />
      </Form>
      <p className="back">
        <a href={own}>Back without correcting it</a>
      </p>
    </DeskPage>
  )
}
