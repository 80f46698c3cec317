import { nearestName } from '../../lib/core/kernel/nearest-name.ts'
import type { CalendarDate } from '../../lib/core/calendar/dates.ts'
import type { Result } from '../../lib/core/kernel/result.ts'
import { COMPLEXITIES, HANDS, SAW_KINDS, WORK_KINDS } from '../../lib/core/rulebooks/words.ts'
import { readDay } from '../../lib/wording/read-day.ts'
import { readInches } from '../../lib/wording/read-inches.ts'
import { readKnown } from '../../lib/wording/read-known.ts'
import { problemsOf } from '../_door/form-outcome.ts'
import { addressWith, type AddressWords } from '../_parts/address.ts'
import type { FormProblem } from '../_parts/form-state.ts'
import { readOpenRows } from './open-rows.ts'

/** The blanks of the question by the names they have in the address, each with its label. */
export const BLANKS = {
  work: 'Work',
  across: 'Inches across',
  complexity: 'Complexity',
  saw: 'Saw',
  first: 'First day',
  last: 'Last day',
  place: 'Place',
  hands: 'People on the saw',
  species: 'Species',
  item: 'Log, tree or expected work',
  person: 'Person',
  known: 'As known',
  crew: 'With this crew',
  rows: 'Rows',
  open: 'Open rows',
} as const
export type BlankName = keyof typeof BLANKS

const NAMES = Object.keys(BLANKS) as BlankName[]

/** What stands beside a question and asks nothing alone. */
const BESIDE: readonly BlankName[] = ['crew', 'rows', 'open']
const ASKING = NAMES.filter((name) => !BESIDE.includes(name))

/** The blanks that hold a list of ids, with a comma between them. */
const LISTS: readonly BlankName[] = ['crew', 'open']

/** What was typed into the blanks; the empty text where nothing was. */
export type TypedWords = Readonly<Record<BlankName, string>>

/** A question as it stands in the address: nobody asked yet, not to be read, or read. */
export type TypedQuestion = { typed: TypedWords } & (
  { kind: 'none' } | { kind: 'faulty'; problems: readonly FormProblem[] } | { kind: 'read'; input: object }
)

/** How many letters a blank may hold; a list of ids holds more. */
const LONGEST = 200
const LONGEST_LIST = 6000
const longestOf = (name: BlankName) => (LISTS.includes(name) ? LONGEST_LIST : LONGEST)

/** Reads the question out of an address; what was typed stays as it was, whatever is wrong with it. */
export function readTypedQuestion(words: AddressWords): TypedQuestion {
  const typed = Object.fromEntries(NAMES.map((name) => [name, textOf(name, words[name])])) as TypedWords
  if (ASKING.every((name) => typed[name].trim() === '')) return { typed, kind: 'none' }
  const reader = new BlankReader(typed)
  const input = reader.question()
  return reader.faults.length === 0
    ? { typed, kind: 'read', input }
    : { typed, kind: 'faulty', problems: problemsOf(reader.faultsInOrder(), BLANKS) }
}

/** The blank at which a problem of the use case's input is said. */
export function blankOfPath(path: string): BlankName | '' {
  const last = path.split('.').at(-1) ?? ''
  const isBlank = (name: string): name is BlankName => Object.hasOwn(BLANKS, name)
  if (path.startsWith('persons')) return 'person'
  if (path.startsWith('company')) return 'crew'
  if (path.startsWith('knownAt')) return 'known'
  if (last === 'workKind') return 'work'
  if (last === 'sawKind') return 'saw'
  if (last === 'diameter') return 'across'
  return isBlank(last) ? last : ''
}

/** The address of a question at a path, with some blanks filled anew. */
export function questionAddress(
  path: string,
  typed: TypedWords,
  changes: Partial<Record<BlankName, string | undefined>> = {},
): string {
  const filled = Object.fromEntries(Object.entries(typed).filter(([, value]) => value.trim() !== ''))
  return addressWith(path, filled, changes)
}

class BlankReader {
  readonly faults: { path: BlankName; message: string }[] = []

  constructor(private readonly typed: TypedWords) {
    for (const name of NAMES) {
      const longest = longestOf(name)
      if (typed[name].length > longest) this.fault(name, `at most ${longest} letters stand here`)
    }
  }

  /** The faults in the order of the blanks. */
  faultsInOrder() {
    return NAMES.flatMap((name) => this.faults.filter(({ path }) => path === name))
  }

  question(): object {
    if (this.faults.length > 0) return {}
    const sawKind = this.filled('saw') === undefined ? 'crosscut' : this.oneOf('saw', SAW_KINDS)
    const item = this.filled('item')
    const first = this.day('first', item !== undefined)
    const last = this.day('last', item !== undefined)
    if (first !== undefined && last !== undefined && last < first) {
      this.fault('last', 'the last day lies before the first')
    }
    const person = this.filled('person')
    const crew = idsOf(this.typed.crew)
    return {
      work: item === undefined ? this.statedWork(sawKind) : { item, sawKind },
      ...(first === undefined ? {} : { first }),
      ...(last === undefined ? {} : { last }),
      ...(person === undefined ? {} : { persons: [person] }),
      ...(crew.length === 0 ? {} : { company: crew }),
      ...this.known(),
      ...this.rows(),
      open: readOpenRows(this.typed),
    }
  }

  private statedWork(sawKind: string | undefined): object {
    const place = this.filled('place')
    const species = this.filled('species')
    const hands = this.filled('hands') === undefined ? undefined : this.oneOf('hands', HANDS)
    return {
      workKind: this.wanted('work', () => this.oneOf('work', WORK_KINDS)),
      sawKind,
      diameter: this.wanted('across', () => this.read('across', readInches)),
      complexity: this.wanted('complexity', () => this.oneOf('complexity', COMPLEXITIES)),
      ...(hands === undefined ? {} : { hands }),
      ...(species === undefined ? {} : { species }),
      ...(place === undefined ? {} : { place }),
    }
  }

  /** A day; one that an item may say itself may be left empty. */
  private day(name: 'first' | 'last', mayLack: boolean): CalendarDate | undefined {
    if (mayLack && this.filled(name) === undefined) return undefined
    return this.wanted(name, () => this.read(name, readDay))
  }

  /** An entry by its number, a moment in UTC, or a day. */
  private known(): object {
    const text = this.filled('known')
    if (text === undefined) return {}
    const known = readKnown(text)
    if (known.ok) return { knownAt: known.value }
    this.fault('known', known.problem)
    return {}
  }

  private rows(): object {
    const text = this.filled('rows')
    if (text === undefined) return {}
    if (/^\d{1,5}$/.test(text)) return { rows: Number(text) }
    this.fault('rows', 'this is how many rows a group shows, 1 to 10000')
    return {}
  }

  private filled(name: BlankName): string | undefined {
    const text = this.typed[name].trim()
    return text === '' ? undefined : text
  }

  private wanted<Value>(name: BlankName, read: () => Value | undefined): Value | undefined {
    if (this.filled(name) !== undefined) return read()
    this.fault(name, 'this blank is empty')
    return undefined
  }

  private read<Value>(name: BlankName, reader: (text: string) => Result<Value, string>): Value | undefined {
    const read = reader(this.filled(name) ?? '')
    if (read.ok) return read.value
    this.fault(name, read.problem)
    return undefined
  }

  private oneOf(name: BlankName, words: readonly string[]): string | undefined {
    const text = this.filled(name) ?? ''
    if (words.includes(text)) return text
    const nearest = nearestName(text, words)
    const meant = nearest === undefined ? '' : `; is “${nearest}” meant?`
    this.fault(name, `“${text}” is none of the words that can stand here${meant === '' ? '.' : meant}`)
    return undefined
  }

  private fault(path: BlankName, message: string): void {
    this.faults.push({ path, message })
  }
}

/** The ids of a list, each once. */
export function idsOf(list: string): string[] {
  const ids = list.split(',').map((id) => id.trim())
  return [...new Set(ids.filter((id) => id !== ''))]
}

/** Of several words under one name a list takes all, and a blank the first. */
function textOf(name: BlankName, value: AddressWords[string]): string {
  if (typeof value === 'string' || value === undefined) return value ?? ''
  return (LISTS.includes(name) ? value.join(',') : value[0]) ?? ''
}
