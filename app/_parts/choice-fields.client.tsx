'use client'

import { Field, Problems, useField, type FieldProps } from './fields.client.tsx'
import { useFormStanding } from './form.client.tsx'

type Option = { value: string; label: string }

/** Any of a few, each a box of its own to tick. */
export function SomeField({ name, label, hint, options }: FieldProps & { options: readonly Option[] }) {
  const { state } = useFormStanding()
  const { input, problems } = useField({ name, ...(hint === undefined ? {} : { hint }) })
  return (
    <fieldset className="choices some" aria-describedby={input['aria-describedby']}>
      <legend>{label}</legend>
      {hint === undefined ? null : (
        <p id={`${input.id}-hint`} className="hint">
          {hint}
        </p>
      )}
      <Problems of={input.id} told={problems} />
      <div className="row">
        {options.map((option, at) => (
          <label key={option.value} className="tick">
            {/* The summary leads to the first of them. */}
            <input
              type="checkbox"
              id={at === 0 ? input.id : `${input.id}-${at + 1}`}
              name={`${name}.${option.value}`}
              defaultChecked={state.values[`${name}.${option.value}`] !== undefined}
            />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}

/** Longer lists of names are not sent with a page: they are written out. */
const MOST_OFFERED = 400

/** Something on record, written by its name or id; the names that there are are offered while it is written. */
export function NamedField({
  options,
  suggested,
  ...field
}: FieldProps & { options: readonly Option[]; suggested?: string }) {
  const { input, problems, value } = useField(field)
  const list = `${input.id}-names`
  const isOffered = options.length <= MOST_OFFERED
  return (
    <Field {...field} problems={problems}>
      <input
        {...input}
        type="text"
        dir="auto"
        defaultValue={value ?? suggested}
        autoComplete="off"
        spellCheck={false}
        {...(isOffered ? { list } : {})}
      />
      {isOffered ? (
        <datalist id={list}>
          {options.map(({ value: id, label }) => (
            <option key={id} value={label} />
          ))}
        </datalist>
      ) : null}
    </Field>
  )
}
