import type { FieldProblem } from '../../lib/usecases/door/outcome.ts'
import { PEOPLE_SORTS, type PeopleAsked } from '../../lib/usecases/people/list.schema.ts'
import { readDay } from '../../lib/wording/read-day.ts'
import { problemsOf } from '../_door/form-outcome.ts'
import { addressWord, type AddressWords } from '../_parts/address.ts'
import type { FormProblem } from '../_parts/form-state.ts'
import { readTableView, type TableView } from '../_parts/table-view.ts'
import { readThen, THEN_LABELS, withoutFaulty, type TypedThen } from './typed-then.ts'

/** What the list may be filtered by: its names in the address, and what they are called. */
export const FILTER_LABELS = {
  name: 'Name',
  unit: 'Unit',
  organisation: 'Organisation',
  status: 'Status',
  lapsesBy: 'Lapses by',
} as const
export type FilterName = keyof typeof FILTER_LABELS

export const FILTER_NAMES = Object.keys(FILTER_LABELS) as FilterName[]

type Sort = NonNullable<PeopleAsked['sort']>

/** What the address asks of the list: the filters as they were typed, as of when, and how the table stands. */
export type AskedPeople = {
  filters: Partial<Record<FilterName, string>>
  then: TypedThen
  view: TableView<Sort>
}

/** Reads what the address asks. */
export function askedPeople(words: AddressWords): AskedPeople {
  const filters = Object.fromEntries(
    FILTER_NAMES.flatMap((name) => {
      const typed = addressWord(words, name)
      return typed === undefined ? [] : [[name, typed]]
    }),
  )
  return { filters, then: readThen(words), view: readTableView(words, PEOPLE_SORTS, { sort: 'name' }) }
}

/**
 * The input of the list, with the day as it was meant, and what is wrong with it. Filters that were typed wrongly are
 * left out: what is right still filters.
 */
export function listInput({ filters, then, view }: AskedPeople, faulty: readonly FormProblem[] = []) {
  const { lapsesBy, ...others } = filters
  const day = lapsesBy === undefined ? undefined : readDay(lapsesBy)
  const unread = day?.ok === false ? [{ path: 'lapsesBy', message: day.problem }] : []
  const problems = [...faulty, ...filterProblems([...unread, ...then.faults])]
  const typed = { ...others, ...(day?.ok === true ? { lapsesBy: day.value } : {}) }
  const unfit = problems.map(({ field, message }) => ({ path: field, message }))
  const kept = Object.entries(typed).filter(([name]) => !problems.some(({ field }) => field === name))
  return { input: { ...Object.fromEntries(kept), ...withoutFaulty(then.input, unfit), ...view }, problems }
}

/** What is wrong with the filters, each line begun with what the field is called. */
export function filterProblems(fields: readonly FieldProblem[]): FormProblem[] {
  return problemsOf(fields, { ...FILTER_LABELS, ...THEN_LABELS })
}
