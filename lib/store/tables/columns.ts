import type { CalendarDate } from '../../core/calendar/dates.ts'
import type { Version } from '../../core/kernel/versions.schema.ts'
import type { StoredFacts, StoredName } from './stored-facts.ts'

/**
 * What kind of column holds a value:
 *
 * - `text`, `whole` (`integer`), `truth` (`boolean`) and `day` (`date`) under the name of the field
 * - `json` (`jsonb`): lists and nested values
 * - `inches`: an `integer` named `<field>_sixteenths`, inches times 16, exact
 * - `feet`: a `double precision` named `<field>_feet`
 * - `record`: a `uuid` named `<field>_id`, the anchor of another record
 */
export type ColumnKind = 'text' | 'whole' | 'truth' | 'day' | 'json' | 'inches' | 'feet' | 'record'

/** What the column of a field is. `to` says of a reference where it leads. */
export type Column<
  Kind extends ColumnKind = ColumnKind,
  Optional extends boolean = boolean,
> = Kind extends 'record'
  ? { readonly kind: Kind; readonly isOptional: Optional; readonly to: StoredName }
  : { readonly kind: Kind; readonly isOptional: Optional }

/** The kinds of column that may hold a value: an object never stands in a text, a day never in one either. */
type KindFor<Value> = [Value] extends [CalendarDate]
  ? 'day'
  : [Value] extends [boolean]
    ? 'truth'
    : [Value] extends [string]
      ? 'text' | 'record'
      : [Value] extends [number]
        ? 'whole' | 'inches' | 'feet'
        : 'json'

type IsOptional<Fact, Field extends keyof Fact> = undefined extends Fact[Field] ? true : false

type ColumnOf<Kind, Optional extends boolean> = Kind extends ColumnKind ? Column<Kind, Optional> : never

/** A column for each field of a fact but those of its version: a field without a column does not compile. */
export type ColumnsOf<Fact> = {
  readonly [Field in Exclude<keyof Fact, keyof Version>]-?: ColumnOf<
    KindFor<Exclude<Fact[Field], undefined>>,
    IsOptional<Fact, Field>
  >
}

/** The two tables of a section: which records there are, and what is known of them. */
export type Table<Fact> = {
  /** The anchor's table; the facts stand in `<anchor>_fact` and name it in `<anchor>_id`. */
  readonly anchor: string
  readonly columns: ColumnsOf<Fact>
}

/** The tables of some sections. */
export type Tables<Name extends StoredName> = { readonly [Each in Name]: Table<StoredFacts[Each]> }

const column = <Kind extends Exclude<ColumnKind, 'record'>, Optional extends boolean>(
  kind: Kind,
  isOptional: Optional,
) => ({ kind, isOptional })

export const text = column('text', false)
export const maybeText = column('text', true)
export const whole = column('whole', false)
export const truth = column('truth', false)
export const maybeTruth = column('truth', true)
export const day = column('day', false)
export const maybeDay = column('day', true)
export const inches = column('inches', false)
export const maybeFeet = column('feet', true)
export const json = column('json', false)
export const maybeJson = column('json', true)

/** A reference to a record of a section. */
export function record(to: StoredName): Column<'record', false> {
  return { kind: 'record', isOptional: false, to }
}

/** A reference that may be left out. */
export function maybeRecord(to: StoredName): Column<'record', true> {
  return { kind: 'record', isOptional: true, to }
}
