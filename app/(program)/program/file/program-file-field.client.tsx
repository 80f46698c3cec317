'use client'

import { Field, useField } from '../../../_parts/fields.client.tsx'

const FIELD = {
  name: 'text',
  label: 'Program file',
  hint: 'JSON, at most 9 MB. Larger ones come in by the command line.',
}

/** The file to bring in. */
export function ProgramFileField() {
  const { input, problems } = useField(FIELD)
  return (
    <Field {...FIELD} problems={problems}>
      <input {...input} type="file" accept=".json,application/json" />
    </Field>
  )
}
