import type { Metadata } from 'next'
import { freshForm } from '../../_door/form-outcome.ts'
import { visitorOf } from '../../_door/visitor.ts'
import { DeskPage } from '../../_parts/desk-page.tsx'
import { SubmitButton } from '../../_parts/fields.client.tsx'
import { Form } from '../../_parts/form.client.tsx'
import { PageHeading } from '../../_parts/page-heading.tsx'
import { withOptions } from '../../records/form/parts.ts'
import { MEMBERSHIP_PARTS, PERSON_FORM } from '../../records/form/people-forms.ts'
import { RecordFields } from '../../records/form/record-fields.client.tsx'
import { PaperFields } from '../../records/form/record-form.client.tsx'
import { FIELDS } from '../../records/form/typed-record.ts'
import { choicesFor, requireWriting } from '../../records/record-at.ts'
import { enterPersonAction } from './enter-person-action.ts'
import { MEMBERSHIP } from './membership.ts'

export const metadata: Metadata = { title: 'Enter a person' }

const PATH = '/people/new'

/** The page to enter somebody new, with where they belong. */
export default async function NewPersonPage() {
  const visitor = await visitorOf(PATH)
  requireWriting(visitor, 'people')
  const choices = await choicesFor(PATH)
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: '/people', words: 'People' }}
        title="Enter a person"
        lead="Somebody new, with where they belong: without a membership nobody but the program manager could see them."
      />
      <Form action={enterPersonAction} first={freshForm()}>
        <fieldset className="group">
          <legend>The person</legend>
          <RecordFields parts={PERSON_FORM} prefix={FIELDS} names={{}} suggested={{}} />
        </fieldset>
        <fieldset className="group">
          <legend>Where they belong</legend>
          <RecordFields
            parts={withOptions(MEMBERSHIP_PARTS, choices)}
            prefix={MEMBERSHIP}
            names={{}}
            suggested={{}}
          />
        </fieldset>
        <PaperFields />
        <SubmitButton>Record the person</SubmitButton>
      </Form>
      <p className="back">
        <a href="/people">Back without entering anybody</a>
      </p>
    </DeskPage>
  )
}
