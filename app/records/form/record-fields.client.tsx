'use client'

import { NamedField, SomeField } from '../../_parts/choice-fields.client.tsx'
import { SelectField, TextField } from '../../_parts/fields.client.tsx'
import { useFormStanding } from '../../_parts/form.client.tsx'
import { LongTextField } from '../../_parts/long-text-field.client.tsx'
import {
  isLeaf,
  rowCount,
  type ChoiceList,
  type FormParts,
  type Leaf,
  type OneOf,
  type Option,
  type Rows,
} from './parts.ts'

/** The names that may be written into fields by name. */
export type NamesOffered = Partial<Readonly<Record<ChoiceList, readonly Option[]>>>

type Around = { prefix: string; names: NamesOffered; suggested: Readonly<Record<string, string>> }

/** The fields of a record, as its form has them. */
export function RecordFields({ parts, ...around }: Around & { parts: FormParts }) {
  const { prefix } = around
  return parts.map((part) => {
    if (isLeaf(part)) return <LeafField key={part.path} leaf={part} at={prefix} {...around} />
    if (part.kind === 'rows') return <RowFields key={part.path} rows={part} {...around} />
    if (part.kind === 'one-of') return <WayFields key={part.path} part={part} {...around} />
    return (
      <fieldset key={part.path} className="group">
        <legend>{part.label}</legend>
        {part.hint === undefined ? null : <p className="hint">{part.hint}</p>}
        {part.leaves.map((leaf) => (
          <LeafField key={leaf.path} leaf={leaf} at={`${prefix}.${part.path}`} {...around} />
        ))}
      </fieldset>
    )
  })
}

const YES_NO = [
  { value: '', label: 'Not stated' },
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
]

function LeafField({
  leaf,
  at,
  names,
  suggested,
  label = leaf.label,
}: Around & { leaf: Leaf; at: string; label?: string }) {
  const name = `${at}.${leaf.path}`
  const offer = suggested[name]
  const field = {
    name,
    label,
    ...(leaf.hint === undefined ? {} : { hint: leaf.hint }),
    ...(offer === undefined ? {} : { suggested: offer }),
  }
  switch (leaf.kind) {
    case 'one': {
      const options = typeof leaf.of === 'string' ? [] : leaf.of
      return (
        <SelectField {...field} options={[{ value: '', label: leaf.none ?? 'Not stated' }, ...options]} />
      )
    }
    case 'yes-no':
      return <SelectField {...field} options={YES_NO} />
    case 'some':
      return (
        <SomeField {...field} options={leaf.instead === undefined ? leaf.of : [...leaf.of, leaf.instead]} />
      )
    case 'named':
      return <NamedField {...field} options={names[leaf.of] ?? []} />
    case 'long-text':
    case 'lines':
      return <LongTextField {...field} rows={leaf.rows ?? 5} />
    case 'text':
    case 'day':
    case 'inches':
    case 'number':
    case 'degrees':
      return <TextField {...field} autoComplete="off" />
  }
}

/** Several of one kind: those that have something in them, and some to fill in. */
function RowFields({ rows, ...around }: Around & { rows: Rows }) {
  const { state } = useFormStanding()
  const { prefix } = around
  const count = rowCount(state.values, prefix, rows)
  return (
    <fieldset className="group">
      <legend>{rows.label}</legend>
      {rows.hint === undefined ? null : <p className="hint">{rows.hint}</p>}
      {Array.from({ length: count }, (_each, at) => {
        const base = `${prefix}.${rows.path}.${at}`
        return (
          <fieldset key={at} className="group one-row">
            <legend>{`${rows.label} ${at + 1}`}</legend>
            {rows.are === 'restrictions' ? (
              <input
                type="hidden"
                name={`${base}.id`}
                value={state.values[`${base}.id`] ?? `r-${state.command.slice(0, 8)}-${at + 1}`}
              />
            ) : null}
            {rows.leaves.map((leaf) => (
              <LeafField key={leaf.path} leaf={leaf} at={base} {...around} />
            ))}
          </fieldset>
        )
      })}
    </fieldset>
  )
}

/** One of several ways; the fields of each stand under it, and only those of the way chosen count. */
function WayFields({ part, ...around }: Around & { part: OneOf }) {
  const { prefix } = around
  const base = `${prefix}.${part.path}`
  const kind: Leaf = {
    path: 'kind',
    label: part.label,
    kind: 'one',
    of: part.ways.map(({ value, label }) => ({ value, label })),
    none: 'Choose one',
    hint: part.hint ?? 'Then fill in the field of that name below; the others do not count.',
  }
  return (
    <fieldset className="group">
      <legend>{part.label}</legend>
      <LeafField leaf={kind} at={base} {...around} />
      {part.ways.flatMap((way) =>
        way.leaves.map((leaf) => (
          <LeafField
            key={`${way.value} ${leaf.path}`}
            leaf={leaf}
            label={way.leaves.length === 1 ? way.label : `${way.label}: ${leaf.label.toLowerCase()}`}
            at={`${base}.${way.value}`}
            {...around}
          />
        )),
      )}
    </fieldset>
  )
}
