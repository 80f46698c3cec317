'use client'

import { Field, useField, type FieldProps } from './fields.client.tsx'

/** Several lines of text, in somebody's own words. */
export function LongTextField({ suggested, ...field }: FieldProps & { suggested?: string }) {
  const { input, problems, value } = useField(field)
  return (
    <Field {...field} problems={problems}>
      <textarea {...input} className="input long" rows={5} defaultValue={value ?? suggested} />
    </Field>
  )
}
