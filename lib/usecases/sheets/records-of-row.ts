import type { Sections } from '../../core/authority/records.ts'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import { foldedName } from '../../core/kernel/folded.ts'
import type { SheetKind } from '../../core/sheets/sheet-kinds.ts'
import { withoutKnowing } from '../program/program-facts.ts'
import type { RecordSection } from '../records/record-kinds.ts'
import { cardKey, type OnRecord } from './on-record.ts'
import type { SheetSettings } from './settings.schema.ts'

/** The values that a row states, by the keys of their fields. */
export type RowValues = ReadonlyMap<string, unknown>

/** A record as a row would have it, beside the one on record that it would correct. */
export type RecordOfRow = {
  section: RecordSection
  before?: Sections[RecordSection]
  fields: Record<string, unknown>
  /** What no two rows may both say. */
  claims: string
}

export type RowGround = {
  kind: SheetKind
  record: OnRecord
  settings: SheetSettings
  today: CalendarDate
  /** Who brings the sheet in, by name. */
  by: string
}

/** A sentence where the row contradicts what is on record, or does not say which record it means. */
type Unclear = { message: string; key: string }
export type RecordsOfRow = { records: readonly RecordOfRow[] } | Unclear

/**
 * The records that a row states, whole: what it leaves out stays as it is on record, or as a new record of that kind
 * begins.
 * @param person who it is about: an id on record, or one that is new
 */
export function recordsOfRow(
  row: number,
  values: RowValues,
  person: string | undefined,
  ground: RowGround,
): RecordsOfRow {
  switch (ground.kind) {
    case 'people':
      return personOfRow(row, values, person ?? '', ground)
    case 'memberships':
      return together(membershipOfRow(row, values, person ?? '', ground))
    case 'certificates':
      return certificateOfRow(row, values, person ?? '', ground)
    case 'cards':
      return cardOfRow(values, person ?? '', ground)
    case 'items':
      return itemOfRow(values, ground)
    case 'hitches': {
      const before = ground.record.hitches.get(foldedName(textAt(values, 'number')))
      return {
        records: [recordOf('hitches', before, {}, values, `hitch ${foldedName(textAt(values, 'number'))}`)],
      }
    }
  }
}

/** A text that a row states, or nothing of it. */
export function textAt(values: RowValues, key: string): string {
  const value = values.get(key)
  return typeof value === 'string' ? value : ''
}

/** A record with the values of a row over what stands, or over what a new one begins with. */
function recordOf(
  section: RecordSection,
  before: Sections[RecordSection] | undefined,
  begins: Readonly<Record<string, unknown>>,
  values: RowValues,
  claims: string,
): RecordOfRow {
  const {
    supersedes: _supersedes,
    id: _id,
    ...stands
  } = before === undefined ? { id: '', ...begins } : withoutKnowing(before)
  const fields: Record<string, unknown> = { ...stands }
  for (const [path, value] of values) {
    const [name = '', inner] = path.split('.')
    fields[name] = inner === undefined ? value : { ...(fields[name] as object | undefined), [inner]: value }
  }
  return { section, fields, claims, ...(before === undefined ? {} : { before }) }
}

function pick(
  values: RowValues,
  isWanted: (key: string) => boolean,
  rename = (key: string) => key,
): Map<string, unknown> {
  return new Map([...values].filter(([key]) => isWanted(key)).map(([key, value]) => [rename(key), value]))
}

const OF_MEMBERSHIP = 'membership.'

function personOfRow(row: number, values: RowValues, person: string, ground: RowGround): RecordsOfRow {
  const { record, settings, today } = ground
  const before = record.person(person)
  const own = pick(values, (key) => ['name', 'birthDate', 'ofAgeFrom'].includes(key))
  const attested = values.get('attestedBy')
  if (own.has('ofAgeFrom') && attested !== undefined) own.set('attestedBy', attested)
  const isAgeKnown =
    own.has('birthDate') ||
    own.has('ofAgeFrom') ||
    before?.birthDate !== undefined ||
    before?.ofAgeFrom !== undefined
  const { attest } = settings
  // Who is attested to be of age today was so at the latest today; since when, nobody has said.
  if (attest?.ofAge?.includes(row) === true && !isAgeKnown)
    own.set('ofAgeFrom', today).set('attestedBy', attest.by)
  const records = [recordOf('people', before, {}, own, `person ${person}`)]
  const membership = pick(
    values,
    (key) => key.startsWith(OF_MEMBERSHIP),
    (key) => key.slice(OF_MEMBERSHIP.length),
  )
  if (membership.size === 0) return { records }
  if (attested !== undefined) membership.set('attestedBy', attested)
  return together(membershipOfRow(row, membership, person, ground), records, OF_MEMBERSHIP)
}

/** Records that belong to one row, or why one of them cannot be told; `prefix` stands before the keys of its fields. */
function together(
  one: RecordOfRow | Unclear,
  others: readonly RecordOfRow[] = [],
  prefix = '',
): RecordsOfRow {
  return 'message' in one ? { ...one, key: `${prefix}${one.key}` } : { records: [...others, one] }
}

function membershipOfRow(
  row: number,
  values: RowValues,
  person: string,
  { record, settings }: RowGround,
): RecordOfRow | Unclear {
  const stated = new Map(values)
  const agreement = settings.attest?.agreement
  if (agreement?.rows.includes(row) === true)
    stated.set('lastDay', agreement.through).set('attestedBy', settings.attest?.by)
  const organisation = stated.get('organisation')
  const first = stated.get('firstDay')
  // Another agreement of the same organisation is another membership; one without a first day is meant as it stands.
  const fitting = record
    .memberships(person)
    .filter((one) => organisation === undefined || one.organisation === organisation)
    .filter((one) => first === undefined || one.firstDay === undefined || one.firstDay === first)
  const exact = fitting.filter(({ firstDay }) => first !== undefined && firstDay === first)
  const found = exact.length > 0 ? exact : fitting
  const [before] = found
  if (found.length > 1)
    return {
      key: organisation === undefined ? 'organisation' : 'firstDay',
      message: `${found.length} memberships on record may be meant. Say the organisation and its first day.`,
    }
  return recordOf(
    'memberships',
    before,
    { person, capacity: 'not-stated' },
    stated,
    `membership ${before?.id ?? `${person} ${String(organisation)} ${String(first)}`}`,
  )
}

function certificateOfRow(
  row: number,
  values: RowValues,
  person: string,
  { record, settings, by }: RowGround,
): RecordsOfRow {
  const stated = new Map(values)
  const { attest } = settings
  if (attest?.seen?.includes(row) === true) stated.set('seen', true).set('by', attest.by)
  const subject = stated.get('subject')
  const first = stated.get('firstDay')
  const last = stated.get('lastDay')
  // A later class of the same kind is another certificate.
  const fitting = record
    .certificates(person)
    .filter(
      (one) =>
        one.subject === subject &&
        (first === undefined ? last === undefined || one.lastDay === last : one.firstDay === first),
    )
  const [before] = fitting
  if (fitting.length > 1)
    return {
      key: 'firstDay',
      message: `${fitting.length} certificates on record may be meant. Say the day it was taken.`,
    }
  const begins = { person, delivery: 'not-stated', seen: false, by }
  const claims = `certificate ${before?.id ?? `${person} ${String(subject)} ${String(first)} ${String(last)}`}`
  return { records: [recordOf('certificates', before, begins, stated, claims)] }
}

function cardOfRow(values: RowValues, person: string, { record }: RowGround): RecordsOfRow {
  const number = textAt(values, 'number')
  const key = cardKey(number, Number(values.get('line') ?? 1))
  const owner = record.ownerOf(number)
  if (owner !== undefined && owner !== person)
    return { key: 'number', message: `The card number ${number} is on record with another person.` }
  const before = record.cards.get(key)
  const stated = new Map(values)
  const words = stated.get('restrictions')
  const standing = before?.restrictions ?? []
  const isStanding = standing.some((one) => one.kind === 'words' && one.text === words)
  if (words !== undefined)
    stated.set(
      'restrictions',
      isStanding ? standing : [...standing, { id: `r-${standing.length + 1}`, kind: 'words', text: words }],
    )
  const begins = { person, line: 1, workKinds: 'not-stated', restrictions: [] }
  return { records: [recordOf('cards', before, begins, stated, `card ${key}`)] }
}

function itemOfRow(values: RowValues, { record }: RowGround): RecordsOfRow {
  const id = values.get('id')
  const stated = pick(values, (key) => key !== 'id')
  if (typeof id === 'string') {
    const before = record.items.get(id)
    return before === undefined
      ? { key: 'id', message: `No log or tree has the number “${id}” here.` }
      : { records: [recordOf('items', before, {}, stated, `item ${id}`)] }
  }
  const name = textAt(values, 'name')
  const place = values.get('place')
  const list = values.get('list')
  const fitting = record
    .itemsCalled(name)
    .filter((one) => one.place === place && (list === undefined || one.list === list))
  const [before] = fitting
  if (fitting.length > 1)
    return {
      key: 'name',
      message: `${fitting.length} logs or trees there are called “${name}”. Write the number that one has here.`,
    }
  const claims = `item ${before?.id ?? `${foldedName(name)} ${String(place)} ${String(list)}`}`
  return { records: [recordOf('items', before, {}, stated, claims)] }
}
