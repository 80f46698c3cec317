import type { ReactNode } from 'react'
import { fieldId, type FormProblem } from '../_parts/form-state.ts'
import type { BlankName } from './typed-question.ts'

type BlankProps = {
  name: BlankName
  /** What stands under the blank, and names it. */
  label: string
  value: string
  problems: readonly FormProblem[]
}

/** A word to choose. What was typed into the address and is none of them stands among them, so that it is kept. */
export function ChoiceBlank({
  options,
  ...blank
}: BlankProps & { options: readonly { value: string; label: string }[] }) {
  const isKnown = options.some(({ value }) => value === blank.value)
  return (
    <Blank {...blank}>
      <select {...inputOf(blank)} defaultValue={blank.value}>
        {isKnown ? null : <option value={blank.value}>{blank.value}</option>}
        {options.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </Blank>
  )
}

/** A word to write. */
export function TextBlank({ letters, list, ...blank }: BlankProps & { letters: number; list?: string }) {
  return (
    <Blank {...blank}>
      <input
        {...inputOf(blank)}
        type="text"
        size={letters}
        defaultValue={blank.value}
        autoComplete="off"
        spellCheck={false}
        {...(list === undefined ? {} : { list })}
      />
    </Blank>
  )
}

function Blank({ name, label, problems, children }: BlankProps & { children: ReactNode }) {
  const own = problemsAt(name, problems)
  return (
    <span className="blank">
      {children}
      <label htmlFor={fieldId(name)}>{label}</label>
      {own.length === 0 ? null : (
        <span id={`${fieldId(name)}-problem`} className="problem">
          {own.map(({ message }) => (
            <span key={message}>{message}</span>
          ))}
        </span>
      )}
    </span>
  )
}

function inputOf({ name, problems }: BlankProps) {
  return {
    id: fieldId(name),
    name,
    ...(problemsAt(name, problems).length === 0
      ? {}
      : { 'aria-invalid': true as const, 'aria-describedby': `${fieldId(name)}-problem` }),
  }
}

function problemsAt(name: BlankName, problems: readonly FormProblem[]): readonly FormProblem[] {
  return problems.filter(({ field }) => field === name)
}
