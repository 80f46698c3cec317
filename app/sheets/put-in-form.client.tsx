'use client'

import { Field, SelectField, SubmitButton, TextField, useField } from '../_parts/fields.client.tsx'
import { Form } from '../_parts/form.client.tsx'
import type { FormAction, FormState } from '../_parts/form-state.ts'
import { LongTextField } from '../_parts/long-text-field.client.tsx'

/** A sheet as a file or pasted, and what stands in it. */
export function PutInForm({
  action,
  first,
  kinds,
}: {
  action: FormAction
  first: FormState
  kinds: readonly { value: string; label: string }[]
}) {
  return (
    <Form action={action} first={first}>
      <SelectField name="as" label="What stands in it" options={kinds} />
      <FileField />
      <LongTextField
        name="pasted"
        label="Or paste the rows here"
        hint="With their headings, as they come out of a spreadsheet."
        rows={6}
      />
      <TextField
        name="sheet"
        label="Which sheet of the workbook"
        hint="By its name. Leave it empty for the first one, and for a CSV file."
        autoComplete="off"
      />
      <SubmitButton>See what it would do</SubmitButton>
    </Form>
  )
}

function FileField() {
  const field = {
    name: 'file',
    label: 'A file',
    hint: 'CSV (commas, semicolons or tabs; UTF-8 or Windows) or XLSX. At most 20,000 rows, 100 columns, 8 MB.',
  }
  const { input, problems } = useField(field)
  return (
    <Field {...field} problems={problems}>
      <input {...input} type="file" accept=".csv,.tsv,.txt,.xlsx,text/csv" />
    </Field>
  )
}
