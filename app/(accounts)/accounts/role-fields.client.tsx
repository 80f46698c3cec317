'use client'

import { SelectField, TextField } from '../../_parts/fields.client.tsx'
import { useFormStanding } from '../../_parts/form.client.tsx'

type Choice = { value: string; label: string }

/** What a role may be given for, and the day on which it begins where nothing else is said. */
export type RoleChoices = {
  roles: readonly Choice[]
  units: readonly Choice[]
  organisations: readonly Choice[]
  firstDay: string
}

/** The fields of a role: which one, for which part of the program, on which days. */
export function RoleFields({
  prefix,
  labels,
  choices: { roles, units, organisations, firstDay },
}: {
  prefix: string
  labels: Readonly<Record<string, string>>
  choices: RoleChoices
}) {
  const label = (name: string) => labels[`${prefix}${name}`] ?? name
  return (
    <>
      <SelectField
        name={`${prefix}role`}
        label={label('role')}
        options={[{ value: '', label: 'Choose one' }, ...roles]}
      />
      <SelectField
        name={`${prefix}unit`}
        label={label('unit')}
        hint="It then reaches people of this unit only. A program manager has none."
        options={[{ value: '', label: 'the whole program' }, ...units]}
      />
      <SelectField
        name={`${prefix}organisation`}
        label={label('organisation')}
        options={[{ value: '', label: 'every organisation' }, ...organisations]}
      />
      <TextField
        name={`${prefix}firstDay`}
        label={label('firstDay')}
        hint="Today at the earliest. Like 8 July 2027 or 8 Jul 27."
        autoComplete="off"
        suggested={firstDay}
      />
      <TextField
        name={`${prefix}lastDay`}
        label={label('lastDay')}
        hint="The day itself still counts. Leave it empty where there is no end."
        autoComplete="off"
      />
    </>
  )
}

/** One more role in the same form, shut until somebody wants it; open where something of it was typed. */
export function MoreRole({
  words,
  ...role
}: {
  words: string
  prefix: string
  labels: Readonly<Record<string, string>>
  choices: RoleChoices
}) {
  const { state } = useFormStanding()
  const isTyped =
    state.problems.some(({ field }) => field.startsWith(role.prefix)) ||
    ['role', 'unit', 'organisation'].some((name) => (state.values[`${role.prefix}${name}`] ?? '') !== '')
  return (
    <details className="more" open={isTyped}>
      <summary>{words}</summary>
      <div className="group">
        <RoleFields {...role} />
      </div>
    </details>
  )
}
