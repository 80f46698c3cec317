import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { bringInSheet } from '../../../lib/usecases/sheets/bring-in-sheet.ts'
import { settleSheetOf, throwAwaySheetOf } from '../../../lib/usecases/sheets/desk-of-sheets.ts'
import { CORRECT, ENTER } from '../../../lib/usecases/records/all-records.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'
import { INES, lines, MARIT, sheetCalls, standing, statuses, valueOf } from './sheet-calls.ts'

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

describe('a sheet of people', () => {
  it('adds those who are new with their membership, and changes nothing the second time', async () => {
    const sheets = sheetCalls(opened)
    const before = await standing(opened)
    const text = lines(
      'Full name;Born;Organisation;Unit;Capacity;Agreement from;Agreement through',
      'Ottoline Varga;3 May 1991;ashlar-range-staff;Quill River;volunteer;1 Jan 2027;Dec 2027',
      'Ødegård, Bjørk;4 June 2001;ashlar-range-staff;Quill River;employee;;',
    )
    const sheet = await sheets.put('people', text)
    const plan = await sheets.planned(sheet)
    expect(plan.rows.map(({ reasons }) => reasons)).toEqual([[], []])
    expect(statuses(plan)).toEqual(['add', 'add'])
    expect(plan.rows[0]!.cells).toContainEqual({
      ...{ key: 'membership.lastDay', label: 'Last day of the agreement', after: '31 December 2027' },
    })
    expect(await standing(opened)).toEqual(before)
    const { entry } = valueOf<{ entry: number }>(await sheets.bringIn(sheet))
    const { program } = await snapshotOf(opened.runtime.store)
    // In which order facts of one entry stand says nothing.
    const added = program.people.filter(({ recordedIn }) => recordedIn === entry).map(({ name }) => name)
    expect(new Set(added)).toEqual(new Set(['Ottoline Varga', 'Ødegård, Bjørk']))

    const again = await sheets.put('people', text)
    expect(statuses(await sheets.planned(again))).toEqual(['asked', 'asked'])
    await sheets.confirmAll(again)
    expect(statuses(await sheets.planned(again))).toEqual(['same', 'same'])
    expect(await sheets.bringIn(again)).toMatchObject({
      kind: 'refused',
      because: { kind: 'nothing-to-bring-in' },
    })

    valueOf(await sheets.undo(entry))
    expect(await standing(opened)).toEqual(before)
    expect(await sheets.undo(entry)).toMatchObject({ kind: 'refused', because: { kind: 'no-sheet-entry' } })
  })

  it('changes cell by cell, before and after, and an empty cell changes nothing', async () => {
    const sheets = sheetCalls(opened)
    const before = await standing(opened)
    const sheet = await sheets.put(
      'people',
      lines('Number here,Name,Born on,Of age from', 'p-dana-whitlow,Dana W. Whitlow,,', 'p-nobody,X,,'),
    )
    const plan = await sheets.planned(sheet)
    expect(statuses(plan)).toEqual(['change', 'cannot'])
    expect(plan.rows[0]!.cells).toEqual([
      { key: 'name', label: 'Name', before: 'Dana Whitlow', after: 'Dana W. Whitlow' },
    ])
    const { entry } = valueOf<{ entry: number }>(await sheets.bringIn(sheet))
    valueOf(await sheets.undo(entry))
    expect(await standing(opened)).toEqual(before)
  })

  it('asks once how days in figures are meant, and who is meant by a name', async () => {
    const sheets = sheetCalls(opened)
    const sheet = await sheets.put(
      'people',
      lines(
        'Name,Born on,Organisation',
        'Dana Whitlow,2/3/85,ashlar-range-staff',
        'New Invented,25/12/99,ashlar-range-staff',
      ),
    )
    const first = await sheets.planned(sheet)
    expect(first.days).toEqual({ ambiguous: 1, example: '2/3/85', possible: ['day-first'] })
    expect(statuses(first)).toEqual(['cannot', 'add'])
    await sheets.settle(sheet, (settings) => ({ ...settings, days: 'day-first' }))
    const second = await sheets.planned(sheet)
    expect(statuses(second)).toEqual(['asked', 'add'])
    expect(second.rows[1]!.cells).toContainEqual({
      key: 'birthDate',
      label: 'Born on',
      after: '25 December 1999',
    })
    expect(
      second.matches.map(({ typed, candidates }) => [typed, candidates.map(({ id }) => id).sort()]),
    ).toEqual([['Dana Whitlow', ['p-dana-whitlow', 'p-dana-whitlow-2']]])
    await sheets.settle(sheet, (settings) => ({ ...settings, meant: { 2: { kind: 'new' } } }))
    expect(statuses(await sheets.planned(sheet))).toEqual(['add', 'add'])
    await sheets.settle(sheet, (settings) => ({ ...settings, meant: { 2: { kind: 'left-out' } } }))
    expect(statuses(await sheets.planned(sheet))).toEqual(['left-out', 'add'])
    await sheets.settle(sheet, (settings) => ({ ...settings, meant: {}, matchBy: ['name', 'born'] }))
    expect(statuses(await sheets.planned(sheet))).toEqual(['add', 'add'])
  })

  it('takes the word of a named person for age and agreement, in the rows that were chosen', async () => {
    const sheets = sheetCalls(opened)
    const sheet = await sheets.put(
      'people',
      lines('Name,Organisation', 'Aa Invented,ashlar-range-staff', 'Bb Invented,ashlar-range-staff'),
    )
    await sheets.settle(
      sheet,
      (settings) =>
        ({
          ...settings,
          attest: { by: 'Petra Lind', ofAge: [2], agreement: { through: '2027-12-31', rows: [3] } },
        }) as typeof settings,
    )
    const plan = await sheets.planned(sheet)
    expect(plan.rows.map(({ cells }) => cells.map(({ key, after }) => [key, after]))).toEqual([
      [
        ['name', 'Aa Invented'],
        ['ofAgeFrom', '3 May 2027'],
        ['attestedBy', 'Petra Lind'],
        ['membership.organisation', 'Ashlar Range, agency staff'],
        ['membership.capacity', 'not stated'],
      ],
      [
        ['name', 'Bb Invented'],
        ['membership.organisation', 'Ashlar Range, agency staff'],
        ['membership.capacity', 'not stated'],
        ['membership.lastDay', '31 December 2027'],
      ],
    ])
  })

  it('lets nobody bring in what their roles do not reach', async () => {
    const sheets = sheetCalls(opened, INES)
    const sheet = await sheets.put(
      'people',
      lines(
        'Name,Organisation,Unit',
        'Cc Invented,ashlar-range-staff,Quill River',
        'Dd Invented,Lantern Creek Trail Volunteers,',
      ),
    )
    const plan = await sheets.planned(sheet)
    expect(statuses(plan)).toEqual(['add', 'cannot'])
    expect(plan.rows[1]!.reasons[0]!.message).toContain('do not reach')
    expect(await sheets.putIn('cards', lines('Name', 'X'))).toMatchObject({ kind: 'forbidden' })
    const other = sheetCalls(opened, MARIT)
    expect(await other.call(throwAwaySheetOf, { sheet })).toEqual({ kind: 'not-found' })
  })
})

describe('a sheet with bad rows', () => {
  const TEXT = lines(
    'Name,Certificate,Taken,Expires,How given,Seen',
    'Anneli Rautavuoma,CPR,2027-02-01,2029-01-31,in person,yes',
    'Łukasz Wrzos,CPR,31 April 2027,2029-01-31,in person,yes',
    'Łukasz Wrzos,CPR,1 May 2027,30 April 2027,in person,yes',
    'Nobody Known,CPR,1 May 2027,30 April 2029,in person,yes',
    'Łukasz Wrzos,Juggling,1 May 2027,30 April 2029,in person,yes',
    'Łukasz Wrzos,CPR,1 May 2027,30 April 2029,by post,yes',
    'Łukasz Wrzos,CPR,1 May 2027,30 April 2029,in person,perhaps',
  )

  it('[11] [12] says of each why, by row and column, and brings in the others alone', async () => {
    const sheets = sheetCalls(opened)
    const sheet = await sheets.put('certificates', TEXT)
    await sheets.confirmAll(sheet)
    const plan = await sheets.planned(sheet)
    expect(
      plan.rows.map(({ number, status, reasons }) => [
        number,
        status,
        reasons[0]?.heading,
        reasons[0]?.message,
      ]),
    ).toEqual([
      [2, 'add', undefined, undefined],
      [3, 'cannot', 'Taken', '“31 April 2027”: Write a day that exists: April 2027 has 30 days.'],
      [4, 'cannot', 'Expires', expect.stringMatching(/last day|before/i)],
      [5, 'cannot', undefined, 'Nobody within your reach has this name.'],
      [6, 'cannot', 'Certificate', 'No kind of certificate on record is called “Juggling”.'],
      [7, 'cannot', 'How given', '“by post” must be in person, blended, online or not stated.'],
      [8, 'cannot', 'Seen', '“perhaps” must be yes or no.'],
    ])
    const brought = valueOf<{ entry: number; added: number }>(await sheets.bringIn(sheet))
    expect(brought).toMatchObject({ added: 1 })
    valueOf(await sheets.undo(brought.entry))
  })

  it('[13] is not undone where a later record rests on it or corrected it, and says which', async () => {
    const sheets = sheetCalls(opened)
    const sheet = await sheets.put(
      'people',
      lines('Name,Organisation', 'Ee Invented,ashlar-range-staff', 'Ff Invented,ashlar-range-staff'),
    )
    const { entry } = valueOf<{ entry: number }>(await sheets.bringIn(sheet))
    const { program } = await snapshotOf(opened.runtime.store)
    const [one, other] = program.people
      .filter(({ recordedIn }) => recordedIn === entry)
      .sort((left, right) => left.name.localeCompare(right.name))
    const certificate = {
      person: one!.id,
      subject: 'cpr',
      delivery: 'in-person',
      seen: true,
      firstDay: '2027-05-01',
      lastDay: '2029-04-30',
    }
    valueOf(await sheets.call(ENTER.certificates, { fields: certificate }))
    const corrected = {
      id: other!.id,
      version: entry,
      fields: { name: 'Gg Invented' },
      why: 'Invented: a name misread.',
    }
    valueOf(await sheets.call(CORRECT.people, corrected))
    const refused = await sheets.undo(entry)
    expect(refused).toMatchObject({ kind: 'refused', because: { kind: 'rested-on', more: 0 } })
    const { records } = (refused as unknown as { because: { records: string[] } }).because
    expect(records).toHaveLength(2)
    expect(records[0]).toContain('corrected since')
    expect(records[1]).toMatch(/CPR.*of Ee Invented/)
  })

  it('is not brought in where something else was recorded since it was looked at', async () => {
    const sheets = sheetCalls(opened)
    const sheet = await sheets.put('people', lines('Name,Organisation', 'Hh Invented,ashlar-range-staff'))
    const { digest } = await sheets.tried(sheet)
    valueOf(
      await sheets.bringIn(
        await sheets.put('people', lines('Name,Organisation', 'Hh Invented,ashlar-range-staff')),
      ),
    )
    expect(await sheets.call(bringInSheet, { sheet, plan: digest })).toMatchObject({
      ...{ kind: 'refused', because: { kind: 'sheet-would-do-otherwise' } },
    })
  })
})

describe('who is meant', () => {
  const text = lines('Name,Unit', 'Dana Whitlow,Quill River', 'Anneli Rautavuoma,Quill River')

  it('is part of what was seen: a sheet that would change somebody else is not brought in', async () => {
    const sheets = sheetCalls(opened)
    const named = lines('Name,Of age from', 'Dana Whitlow,3 May 2005')
    const sheet = await sheets.put('people', named)
    const mean = (person: string) =>
      sheets.settle(sheet, (settings) => ({ ...settings, meant: { 2: { kind: 'person', person } } }))
    valueOf(await mean('p-dana-whitlow'))
    const { digest } = await sheets.tried(sheet)
    valueOf(await mean('p-dana-whitlow-2'))
    expect(await sheets.call(bringInSheet, { sheet, plan: digest })).toMatchObject({
      because: { kind: 'sheet-would-do-otherwise' },
    })
  })

  it('stays as it was answered where a page asks about others', async () => {
    const sheets = sheetCalls(opened)
    const sheet = await sheets.put('people', text)
    const settings = { columns: { name: 'Name', 'membership.unit': 'Unit' } }
    const say = (row: number, meant: object) =>
      sheets.call(settleSheetOf, { sheet, settings: { ...settings, meant }, asked: [row] })
    valueOf(await say(2, { 2: { kind: 'left-out' } }))
    valueOf(await say(3, { 3: { kind: 'left-out' } }))
    expect(statuses(await sheets.planned(sheet))).toEqual(['left-out', 'left-out'])
    valueOf(await say(2, {}))
    expect(statuses(await sheets.planned(sheet))).toEqual(['asked', 'left-out'])
  })

  it('a row that cannot be keeps no other from saying the same', async () => {
    const sheets = sheetCalls(opened)
    const rows = lines(
      'Name,Organisation,Unit',
      'Pp Invented,ashlar-range-staff,nowhere',
      'Pp Invented,ashlar-range-staff,Quill River',
    )
    expect(statuses(await sheets.planned(await sheets.put('people', rows)))).toEqual(['cannot', 'add'])
  })

  it('a sheet that was undone may be brought in again', async () => {
    const sheets = sheetCalls(opened)
    const sheet = await sheets.put('people', lines('Name,Organisation', 'Qq Invented,ashlar-range-staff'))
    const { entry } = valueOf<{ entry: number }>(await sheets.bringIn(sheet))
    expect(await sheets.bringIn(sheet)).toMatchObject({
      because: { kind: 'sheet-brought-in-already', entry },
    })
    valueOf(await sheets.undo(entry))
    expect(valueOf<{ entry: number }>(await sheets.bringIn(sheet)).entry).toBe(entry + 2)
  })
})
