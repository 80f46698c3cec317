'use client'

import { Field, useField, type FieldProps } from './fields.client.tsx'

/** Several lines of text, in somebody's own words. */
export function LongTextField({
  suggested,
  rows = 5,
  ...field
}: FieldProps & { suggested?: string; rows?: number }) {
  const { input, problems, value } = useField(field)
  return (
    <Field {...field} problems={problems}>
      <textarea {...input} className="input long" rows={rows} defaultValue={value ?? suggested} />
    </Field>
  )
}
