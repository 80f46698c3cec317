import type { Sections } from '../../core/authority/records.ts'
import { namesPeople } from '../../core/sheets/sheet-fields.ts'
import type { SheetRow } from '../../core/sheets/sheet.ts'
import type { FieldProblem, NotDone } from '../door/outcome.ts'
import { success } from '../../core/kernel/result.ts'
import { contentOf } from '../program/program-facts.ts'
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
    if (found.kind === 'person') {
      const { id } = found
      // As on record, and not as the sheet has it: of two who share a name it says which.
      return withRecords(row, { title: ground.record.names.person(id), person: id }, values, id, ground)
    }
    person = matchOf(row, typed, ground).newId
  }
  return withRecords(row, { title }, values, person, ground)
}

type About = Pick<PlannedRow, 'title' | 'person'>

function withRecords(
  row: SheetRow,
  about: About,
  values: RowValues,
  person: string | undefined,
  ground: Ground,
): RowPlanned {
  const { input, record } = ground
  const { kind, settings, today, hand } = input
  const { number } = row
  const made = recordsOfRow(number, values, person, { kind, record, settings, today, by: hand.name })
  const cannot = (reasons: readonly RowReason[]): RowPlanned => ({
    planned: { number, status: 'cannot', ...about, cells: [], reasons },
    facts: [],
  })
  if ('message' in made) return cannot([{ message: made.message, ...headingOf(made.key, ground) }])
  const reasons: RowReason[] = []
  const facts: DraftFact[] = []
  const cells: PlannedCell[] = []
  const claims: [string, string][] = []
  for (const one of made.records) {
    const { section, before } = one
    const fields = (problem: NotDone): readonly RowReason[] =>
      problem.kind === 'invalid' ? problem.fields.map((field) => placedField(field, section, ground)) : []
    const read = readTyped(section, idOf(one, person), one.fields)
    if (!read.ok) {
      reasons.push(...fields(read.problem))
      continue
    }
    const fact = read.value
    const content = contentOf(fact)
    const isSame = before !== undefined && contentOf(before) === content
    // What stands and stays is not written: it may have come by a decision, or from elsewhere.
    const refused = isSame ? success(undefined) : refusedByHand({ section, fact }, hand)
    if (!refused.ok) reasons.push(...fields(refused.problem))
    const outside = beyondReach(one, fact, person, made.records.length, ground)
    if (outside !== undefined) reasons.push({ message: outside })
    const claimed = ground.claimed.get(one.claims)
    if (claimed !== undefined) {
      // Two rows may say the same of one person, and each something of its own beside it.
      if (claimed.content !== content || made.records.length === 1)
        reasons.push({ message: `Row ${claimed.row} is about the same already.` })
      continue
    }
    claims.push([one.claims, content])
    if (isSame) continue
    cells.push(...changedCells(one, fact, ground))
    const { fact: recorded } = factToRecord(section, fact, before?.recordedIn)
    facts.push({ section, fact: recorded, row: number })
  }
  if (reasons.length > 0) return cannot(reasons)
  // Only now: a row that cannot be brought in keeps no other from saying the same.
  for (const [claim, content] of claims) ground.claimed.set(claim, { row: number, content })
  const isNew = made.records.every(({ before }) => before === undefined)
  const status = facts.length === 0 ? 'same' : isNew ? 'add' : 'change'
  return { planned: { number, status, ...about, cells, reasons: [] }, facts }
}

function placedField({ path, message }: FieldProblem, section: RecordSection, ground: Ground): RowReason {
  return placed({ path: path.replace(/^fields\.?/, ''), message, section }, ground)
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
  records: number,
  ground: Ground,
): string | undefined {
  const { reach } = ground.input
  if (one.section === 'memberships') {
    // Where it was, too: nobody is moved out of a unit that the roles do not reach.
    const both = [fact, ...(one.before === undefined ? [] : [one.before])]
    if (!both.every((each) => 'capacity' in each && reach.belongs(each)))
      return 'Your roles do not reach this organisation and unit.'
  }
  if (one.section === 'people' && one.before === undefined && records === 1 && !reach.place(undefined))
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
