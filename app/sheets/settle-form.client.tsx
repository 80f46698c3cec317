'use client'

import { SomeField } from '../_parts/choice-fields.client.tsx'
import { ChoiceField, SelectField, SubmitButton, TextField } from '../_parts/fields.client.tsx'
import { Form } from '../_parts/form.client.tsx'
import type { FormAction, FormState } from '../_parts/form-state.ts'
import { ATTESTED } from './attested.ts'

/** A field that a column may be of. */
export type AskedField = { key: string; label: string; isNeeded: boolean; mayBeSame: boolean }
/** A name in the sheet, and whom on record it may mean. */
export type AskedMatch = {
  row: number
  rows: string
  typed: string
  candidates: readonly { id: string; name: string; says: string }[]
}

/** Everything that is asked about a sheet: its columns, its days, who is meant, what somebody attests. */
export function SettleForm({
  action,
  first,
  fields,
  headings,
  days,
  matches,
  mayBeNew,
  matchBy,
  attests,
}: {
  action: FormAction
  first: FormState
  fields: readonly AskedField[]
  headings: readonly string[]
  /** A day of the sheet that can be two days, where there is one. */
  days: string | undefined
  matches: readonly AskedMatch[]
  mayBeNew: boolean
  matchBy: readonly { value: string; label: string }[]
  attests: readonly (keyof typeof ATTESTED)[]
}) {
  const columns = [
    { value: '', label: 'no column' },
    ...headings.map((heading) => ({ value: heading, label: heading })),
  ]
  return (
    <Form action={action} first={first}>
      {days === undefined ? null : (
        <ChoiceField
          name="days"
          label={`How days in figures are meant: “${days}” can be two days`}
          choices={[
            { value: 'day-first', label: 'The day first', says: '2/3/27 is 2 March 2027' },
            { value: 'month-first', label: 'The month first', says: '2/3/27 is 3 February 2027' },
          ]}
        />
      )}
      <Matches matches={matches} mayBeNew={mayBeNew} />
      {matchBy.length < 2 ? null : (
        <SomeField
          name="matchBy"
          label="A person without a number here is found by"
          hint="All that are ticked must agree."
          options={matchBy}
        />
      )}
      <details className="group" open={fields.some(({ isNeeded }) => isNeeded)}>
        <summary>Which column is what</summary>
        <div className="sheet-columns">
          {fields.map(({ key, label, isNeeded, mayBeSame }) => (
            <div key={key} className="sheet-column">
              <SelectField
                name={`column.${key}`}
                label={label}
                {...(isNeeded ? { hint: 'A new record needs it.' } : {})}
                options={columns}
              />
              {mayBeSame ? (
                <TextField
                  name={`every.${key}`}
                  label={`${label}, the same in every row`}
                  autoComplete="off"
                />
              ) : null}
            </div>
          ))}
        </div>
      </details>
      {attests.length === 0 ? null : (
        <details className="group">
          <summary>What somebody attests by name</summary>
          <TextField name="attest.by" label="Who attests it" autoComplete="off" />
          {attests.map((name) => (
            <TextField
              key={name}
              name={name}
              label={ATTESTED[name]}
              hint="Numbers of rows, like 2-14, 20."
              autoComplete="off"
            />
          ))}
          {attests.includes('attest.agreement') ? (
            <TextField
              name="attest.through"
              label="In force through"
              hint="For example 31 December 2027."
              autoComplete="off"
            />
          ) : null}
        </details>
      )}
      <SubmitButton>Try it with this</SubmitButton>
    </Form>
  )
}

function Matches({ matches, mayBeNew }: { matches: readonly AskedMatch[]; mayBeNew: boolean }) {
  if (matches.length === 0) return null
  const certain = matches.filter(({ candidates }) => candidates.length === 1)
  return (
    <fieldset className="group">
      <legend>Who is meant</legend>
      {certain.map(({ row, candidates }) => (
        <input key={row} type="hidden" name={`only.${row}`} value={candidates[0]?.id ?? ''} />
      ))}
      {certain.length < 2 ? null : (
        <label className="tick">
          <input type="checkbox" name="meant.all" />
          <span>
            I have looked through these: wherever one person alone has the name, that person is meant
          </span>
        </label>
      )}
      <div className="sheet-columns">
        {matches.map(({ row, rows, typed, candidates }) => (
          <SelectField
            key={row}
            name={`meant.${row}`}
            label={`${typed}, row ${rows}`}
            options={[
              { value: '', label: 'Not said yet' },
              ...candidates.map(({ id, name, says }) => ({
                value: id,
                label: says === '' ? name : `${name}: ${says}`,
              })),
              ...(mayBeNew ? [{ value: 'new', label: 'Somebody new' }] : []),
              { value: 'left-out', label: 'Leave the row out' },
            ]}
          />
        ))}
      </div>
    </fieldset>
  )
}
