import { addressWith, addressWord, type AddressWords } from './address.ts'
import { fieldId } from './form-state.ts'

/** One thing to filter by: a text, or one of a list. Its name stands in the address. */
export type FilterField = {
  name: string
  label: string
  /** For a list: what may be chosen; the empty choice, which filters nothing, comes first by itself. */
  options?: readonly { value: string; label: string }[]
  /** What the empty choice of the list says. */
  any?: string
  hint?: string
  /** What is wrong with what was typed; it stays in the field. */
  problem?: string
}

/**
 * What a table is filtered by: a plain form that goes to the address of the same table, so that what is shown can be
 * sent and kept. The order of the table stays; its page begins anew.
 */
export function TableFilter({
  path,
  words,
  fields,
  keep,
}: {
  path: string
  words: AddressWords
  fields: readonly FilterField[]
  /** Names of the address that stay as they are beside the filter: `sort`, `order`. */
  keep: readonly string[]
}) {
  const isFiltered = fields.some(({ name }) => addressWord(words, name) !== undefined)
  const all = addressWith(path, words, {
    ...Object.fromEntries(fields.map(({ name }) => [name, undefined])),
    page: undefined,
  })
  return (
    <search>
      <form method="get" action={path} className="filter">
        {keep.map((name) => {
          const value = addressWord(words, name)
          return value === undefined ? null : <input key={name} type="hidden" name={name} value={value} />
        })}
        {fields.map((field) => (
          <FilterInput key={field.name} field={field} value={addressWord(words, field.name) ?? ''} />
        ))}
        <button type="submit" className="button">
          Show these
        </button>
        {isFiltered ? (
          <a className="button quiet" href={all}>
            Show all
          </a>
        ) : null}
      </form>
    </search>
  )
}

/** One thing to filter by, with its label, its hint and what is wrong with it. */
export function FilterInput({
  field: { name, label, options, any, hint, problem },
  value,
}: {
  field: FilterField
  value: string
}) {
  const id = fieldId(name)
  const told = [
    ...(hint === undefined ? [] : [`${id}-hint`]),
    ...(problem === undefined ? [] : [`${id}-problem`]),
  ]
  const input = {
    id,
    name,
    className: 'input',
    defaultValue: value,
    ...(problem === undefined ? {} : { 'aria-invalid': true as const }),
    ...(told.length === 0 ? {} : { 'aria-describedby': told.join(' ') }),
  }
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {hint === undefined ? null : (
        <p id={`${id}-hint`} className="hint">
          {hint}
        </p>
      )}
      {options === undefined ? (
        <input {...input} type="search" autoComplete="off" />
      ) : (
        <select {...input}>
          <option value="">{any ?? 'any'}</option>
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
      {problem === undefined ? null : (
        <p id={`${id}-problem`} className="problem">
          {problem}
        </p>
      )}
    </div>
  )
}
