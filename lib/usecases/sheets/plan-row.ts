import type { Sections } from '../../core/authority/records.ts'
import { canonicalJson } from '../../core/journal/canonical-json.ts'
import { namesPeople } from '../../core/sheets/sheet-fields.ts'
import type { SheetRow } from '../../core/sheets/sheet.ts'
import { withoutKnowing } from '../program/program-facts.ts'
import { refusedByHand } from '../records/by-hand.ts'
import type { RecordSection } from '../records/record-kinds.ts'
import { factToRecord, newRecordId, readTyped } from '../records/typed-record.ts'
import type { Ground } from './ground-of-sheet.ts'
import { leadOf, matchOf, personOf } from './people-of-rows.ts'
import type { PlannedCell, PlannedRow, RowReason } from './plan.ts'
import { readCell } from './read-cell.ts'
import { recordsOfRow, textAt, type RecordOfRow, type RowValues } from './records-of-row.ts'
import { changedCells, headingOf, placed } from './row-cells.ts'
import type { DraftFact } from './sound-facts.ts'

type RowPlanned = { planned: PlannedRow; facts: readonly DraftFact[] }

/** Reads a row, finds whom it is about, and makes the records that it states. */
export function planRow(row: SheetRow, ground: Ground): RowPlanned {
  const { input, columns } = ground
  const reasons: RowReason[] = []
  const values = new Map<string, unknown>()
  const typed: Record<string, string> = {}
  for (const { field, heading, cell } of columns) {
    const text = cell(row)
    // An empty cell says nothing: what is on record stays.
    if (text === '') continue
    const read = readCell(text, field.reads, ground.cells)
    if (!read.ok) {
      reasons.push({ ...(heading === undefined ? {} : { heading }), message: read.problem })
      continue
    }
    if (field.identifies !== undefined) typed[field.identifies] = String(read.value)
    if (field.of !== 'nothing' || field.key === 'id') values.set(field.key, read.value)
  }
  const named = typed['name'] ?? typed['number'] ?? textAt(values, 'name')
  const title = named === '' ? `Row ${row.number}` : named
  const ends = (status: PlannedRow['status'], why: readonly RowReason[] = reasons): RowPlanned => ({
    planned: { number: row.number, status, title, cells: [], reasons: why },
    facts: [],
  })
  const lead = values.get('lead')
  if (typeof lead === 'string') {
    const found = leadOf(lead, ground)
    if (found.ok) values.set('lead', found.id)
    else reasons.push({ message: found.message, ...headingOf('lead', ground) })
  }
  if (reasons.length > 0) return ends('cannot')
  let person: string | undefined
  if (namesPeople(input.kind)) {
    const found = personOf(row, typed, ground)
    if (found.kind === 'asked' || found.kind === 'left-out') return ends(found.kind)
    if (found.kind === 'cannot') return ends('cannot', [{ message: found.message }])
    person = found.kind === 'person' ? found.id : matchOf(row, typed, ground).newId
  }
  return withRecords(row, title, values, person, ground)
}

function withRecords(
  row: SheetRow,
  title: string,
  values: RowValues,
  person: string | undefined,
  ground: Ground,
): RowPlanned {
  const { input, record } = ground
  const { kind, settings, today, hand } = input
  const made = recordsOfRow(row.number, values, person, { kind, record, settings, today, by: hand.name })
  const cannot = (reasons: readonly RowReason[]): RowPlanned => ({
    planned: { number: row.number, status: 'cannot', title, cells: [], reasons },
    facts: [],
  })
  if ('message' in made) return cannot([{ message: made.message, ...headingOf(made.key, ground) }])
  const reasons: RowReason[] = []
  const facts: DraftFact[] = []
  const cells: PlannedCell[] = []
  for (const one of made.records) {
    const id = idOf(one, person)
    const read = readTyped(one.section, id, one.fields)
    if (!read.ok) {
      const fields = read.problem.kind === 'invalid' ? read.problem.fields : []
      reasons.push(
        ...fields.map(({ path, message }) =>
          placed({ path: path.replace(/^fields\.?/, ''), message, section: one.section }, ground),
        ),
      )
      continue
    }
    const fact = read.value
    const refused = refusedByHand({ section: one.section, fact }, hand)
    if (!refused.ok && refused.problem.kind === 'invalid')
      reasons.push(
        ...refused.problem.fields.map(({ path, message }) =>
          placed({ path: path.replace(/^fields\.?/, ''), message, section: one.section }, ground),
        ),
      )
    const outside = beyondReach(one, fact, person, ground)
    if (outside !== undefined) reasons.push({ message: outside })
    const content = contentOf(fact)
    const claimed = ground.claimed.get(one.claims)
    if (claimed !== undefined) {
      // Two rows may say the same of one person, and each something of its own beside it.
      if (claimed.content !== content || made.records.length === 1)
        reasons.push({ message: `Row ${claimed.row} is about the same already.` })
      continue
    }
    ground.claimed.set(one.claims, { row: row.number, content })
    if (one.before !== undefined && contentOf(one.before) === content) continue
    cells.push(...changedCells(one, fact, ground))
    const { fact: recorded } = factToRecord(one.section, fact, one.before?.recordedIn)
    facts.push({ section: one.section, fact: recorded, row: row.number })
  }
  if (reasons.length > 0) return cannot(reasons)
  const isNew = made.records.every(({ before }) => before === undefined)
  const status = facts.length === 0 ? 'same' : isNew ? 'add' : 'change'
  return { planned: { number: row.number, status, title, cells, reasons: [] }, facts }
}

function idOf(one: RecordOfRow, person: string | undefined): string {
  if (one.before !== undefined) return one.before.id
  return one.section === 'people' && person !== undefined ? person : newRecordId(one.section)
}

/** What is to be checked of reach, as a sentence where it fails. */
function beyondReach(
  one: RecordOfRow,
  fact: Sections[RecordSection],
  person: string | undefined,
  ground: Ground,
): string | undefined {
  const { reach } = ground.input
  if (one.section === 'memberships' && 'capacity' in fact && !reach.belongs(fact))
    return 'Your roles do not reach this organisation and unit.'
  if (
    one.section === 'people' &&
    one.before === undefined &&
    !ground.columns.some(({ field }) => field.of === 'membership') &&
    !reach.place(undefined)
  )
    return 'Somebody new needs an organisation: without a membership you would not reach their record.'
  if (one.section === 'items' || one.section === 'hitches') {
    const before = one.before as { place?: string } | undefined
    const places = [(fact as { place?: string }).place, ...(before === undefined ? [] : [before.place])]
    if (!places.every((place) => reach.place(place))) return 'Your roles do not reach work in this place.'
  }
  return one.before !== undefined && person !== undefined && !reach.person(person)
    ? 'This record is not within your reach.'
    : undefined
}

function contentOf(fact: Sections[RecordSection]): string {
  const { supersedes: _supersedes, ...content } = withoutKnowing(fact)
  return canonicalJson(content)
}
