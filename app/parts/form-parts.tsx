import { freshForm } from '../_door/form-outcome.ts'
import { ChoiceField, PasswordField, SelectField, SubmitButton, TextField } from '../_parts/fields.client.tsx'
import { Form } from '../_parts/form.client.tsx'
import type { FormState } from '../_parts/form-state.ts'
import { Section } from '../_parts/section.tsx'
import { stayAction } from './stay-action.ts'

const FAULTY: FormState = {
  ...freshForm(),
  tries: 1,
  problems: [
    { field: 'lastDay', message: 'CPR, last day: Write a day that exists: June 2027 has 30 days.' },
    { field: 'issuer', message: 'Certificate, issued by: Say who issued it.' },
  ],
  values: { lastDay: '31 June 27' },
}

/** Forms with and without problems, and buttons. */
export function FormParts() {
  return (
    <>
      <Section
        id="forms"
        title="Form with problems"
        caption="Said once at the top and once at the field, in the same words; what was typed is kept"
      >
        <Form action={stayAction} first={FAULTY}>
          <TextField name="lastDay" label="CPR, last day" hint="3 May 27 will do" autoComplete="off" />
          <TextField name="issuer" label="Certificate, issued by" autoComplete="off" />
          <SelectField
            name="kind"
            label="How the class was given"
            options={[
              { value: 'in-person', label: 'in person' },
              { value: 'online', label: 'online only' },
            ]}
          />
          <ChoiceField
            name="seen"
            label="Who has seen it"
            choices={[
              { value: 'yes', label: 'Somebody else', says: 'Their name stands beside it.' },
              { value: 'no', label: 'Nobody else yet' },
            ]}
          />
          <PasswordField name="password" label="Your password" autoComplete="current-password" />
          <SubmitButton>The act of the form</SubmitButton>
        </Form>
      </Section>
      <Section id="buttons" title="Buttons" caption="One filled button a page">
        <p className="row">
          <button type="button" className="button main">
            Main
          </button>
          <button type="button" className="button">
            Other
          </button>
          <button type="button" className="button quiet">
            Quiet
          </button>
          <button type="button" className="button" aria-disabled="true">
            Waiting
          </button>
        </p>
      </Section>
    </>
  )
}
