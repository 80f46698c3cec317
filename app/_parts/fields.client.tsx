'use client'

import type { ReactNode } from 'react'
import { fieldId } from './form-state.ts'
import { useFormStanding } from './form.client.tsx'

/** What every field has: its name, its label, and a hint where one helps. */
export type FieldProps = { name: string; label: string; hint?: string }

/** What an input says of its hint and its problem to those who do not see them. */
export function useField({ name, hint }: Pick<FieldProps, 'name' | 'hint'>) {
  const { state } = useFormStanding()
  const id = fieldId(name)
  const problems = state.problems.filter(({ field }) => field === name).map(({ message }) => message)
  const describedBy = [hint === undefined ? '' : `${id}-hint`, problems.length === 0 ? '' : `${id}-problem`]
    .filter((each) => each !== '')
    .join(' ')
  return {
    problems,
    value: state.values[name],
    input: {
      id,
      name,
      className: 'input',
      ...(problems.length === 0 ? {} : { 'aria-invalid': true as const }),
      ...(describedBy === '' ? {} : { 'aria-describedby': describedBy }),
    },
  }
}

/** A field round its input: label, hint, input, what is wrong. */
export function Field({
  name,
  label,
  hint,
  problems,
  children,
}: FieldProps & { problems: readonly string[]; children: ReactNode }) {
  const id = fieldId(name)
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {hint === undefined ? null : (
        <p id={`${id}-hint`} className="hint">
          {hint}
        </p>
      )}
      {children}
      <Problems of={id} told={problems} />
    </div>
  )
}

/** What is wrong with a field, in the words of the summary. */
export function Problems({ of, told }: { of: string; told: readonly string[] }) {
  if (told.length === 0) return null
  return (
    <div id={`${of}-problem`} className="problem">
      {told.map((message) => (
        <p key={message}>{message}</p>
      ))}
    </div>
  )
}

/** One line of text. */
export function TextField({
  autoComplete,
  suggested,
  ...field
}: FieldProps & { autoComplete: string; suggested?: string }) {
  const { input, problems, value } = useField(field)
  return (
    <Field {...field} problems={problems}>
      <input
        {...input}
        type="text"
        defaultValue={value ?? suggested}
        autoComplete={autoComplete}
        autoCapitalize={autoComplete === 'username' ? 'none' : 'words'}
        spellCheck={false}
      />
    </Field>
  )
}

/** A password; it may be pasted, and it never comes back to the page. */
export function PasswordField({
  autoComplete,
  ...field
}: FieldProps & { autoComplete: 'current-password' | 'new-password' }) {
  const { input, problems } = useField(field)
  return (
    <Field {...field} problems={problems}>
      <input {...input} type="password" autoComplete={autoComplete} />
    </Field>
  )
}

/** One of many, in a list that opens. */
export function SelectField({
  options,
  suggested,
  ...field
}: FieldProps & { options: readonly { value: string; label: string }[]; suggested?: string }) {
  const { input, problems, value } = useField(field)
  return (
    <Field {...field} problems={problems}>
      <select {...input} defaultValue={value ?? suggested}>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </Field>
  )
}

/** One of a few, all of them in sight, each with what it says. */
export function ChoiceField({
  name,
  label,
  hint,
  choices,
}: FieldProps & { choices: readonly { value: string; label: string; says?: string }[] }) {
  const { input, problems, value } = useField({ name, ...(hint === undefined ? {} : { hint }) })
  const chosen = value ?? (choices.length === 1 ? choices[0]?.value : undefined)
  return (
    <fieldset className="choices" aria-describedby={input['aria-describedby']}>
      <legend>{label}</legend>
      {hint === undefined ? null : (
        <p id={`${input.id}-hint`} className="hint">
          {hint}
        </p>
      )}
      <Problems of={input.id} told={problems} />
      {choices.map((choice, at) => (
        <label key={choice.value} className="choice">
          {/* The summary leads to the first of them. */}
          <input
            type="radio"
            id={at === 0 ? input.id : `${input.id}-${at + 1}`}
            name={name}
            value={choice.value}
            defaultChecked={choice.value === chosen}
          />
          <span>
            <span className="name">{choice.label}</span>
            {choice.says === undefined ? null : <span className="says">{choice.says}</span>}
          </span>
        </label>
      ))}
    </fieldset>
  )
}

/** The act of the form. While it is being sent a second press does nothing. */
export function SubmitButton({ children }: { children: ReactNode }) {
  const { isSending } = useFormStanding()
  return (
    <div>
      <button
        type="submit"
        className="button main"
        aria-disabled={isSending}
        onClick={(event) => {
          if (isSending) event.preventDefault()
        }}
      >
        {children}
      </button>
    </div>
  )
}
