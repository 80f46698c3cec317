import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { ENTER } from '../../../lib/usecases/records/all-records.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'
import { INES, lines, sheetCalls, standing, statuses, valueOf } from './sheet-calls.ts'

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

describe('a sheet of', () => {
  it.each<[string, string, string[], string[]]>([
    [
      'cards',
      'Name,Card number,Rule book,Level,For,With,Effective,Expires,Restrictions,Issued by',
      [
        'Anneli Rautavuoma,0043-Q,FEDERAL,A,both,crosscut,1 Feb 2027,31 Jan 2029,on flat ground,An invented ranger',
      ],
      ['add'],
    ],
    [
      'memberships',
      'Name,Organisation,Capacity,From,Through',
      ['Anneli Rautavuoma,Lantern Creek Trail Volunteers,volunteer,1 June 2028,Aug 2028'],
      ['add'],
    ],
    [
      'items',
      'Log,Work,Diameter,Where',
      ['Windfall 7,buck,22 1/2,NORTH', 'Snag 3,fell,18 in,NORTH', 'Snag 4,split,18,NORTH'],
      ['add', 'add', 'cannot'],
    ],
    [
      'hitches',
      'Hitch,Name,Where,Start,End,Crew lead',
      [
        '27-90,Invented tour,NORTH,1 Aug 2027,9 Aug 2027,Siobhán Ó Briain',
        '27-91,Other,NORTH,9 Aug 2027,1 Aug 2027,',
      ],
      ['add', 'cannot'],
    ],
  ])('%s is read, and undone exactly', async (as, head, rows, expected) => {
    const sheets = sheetCalls(opened)
    const before = await standing(opened)
    const { program } = await snapshotOf(opened.runtime.store)
    const named = (text: string) =>
      text
        .replaceAll('NORTH', program.places.find(({ kind }) => kind === 'place')!.name)
        .replaceAll('FEDERAL', program.books[0]!.name)
    const sheet = await sheets.put(as, lines(head, ...rows.map(named)))
    await sheets.confirmAll(sheet)
    const plan = await sheets.planned(sheet)
    expect(plan.rows.flatMap(({ reasons, status }) => (status === 'cannot' ? [] : reasons))).toEqual([])
    expect(statuses(plan), JSON.stringify(plan.rows)).toEqual(expected)
    const { entry } = valueOf<{ entry: number }>(await sheets.bringIn(sheet))
    const again = await sheets.put(as, lines(head, ...rows.map(named)))
    await sheets.confirmAll(again)
    expect(statuses(await sheets.planned(again))).toEqual(
      expected.map((one) => (one === 'add' ? 'same' : one)),
    )
    valueOf(await sheets.undo(entry))
    expect(await standing(opened)).toEqual(before)
  })

  it('cards refuses a number that another person has', async () => {
    const sheets = sheetCalls(opened)
    const { program, n } = await snapshotOf(opened.runtime.store)
    const card = program.cards.find(
      ({ person, supersededIn }) => person !== 'p-anneli-rautavuoma' && (supersededIn ?? n + 1) > n,
    )!
    const sheet = await sheets.put(
      'cards',
      lines(
        'Name,Card number,Rule book,Level,For,With,Effective,Issued by',
        `Anneli Rautavuoma,${card.number},${program.books[0]!.name},A,both,crosscut,1 Feb 2027,X`,
      ),
    )
    await sheets.confirmAll(sheet)
    const [row] = (await sheets.planned(sheet)).rows
    expect(row).toMatchObject({ status: 'cannot', reasons: [{ heading: 'Card number' }] })
    expect(row!.reasons[0]!.message).toContain('is on record with another person')
  })
})

describe('a row that does not say which record it means', () => {
  it('is not guessed: two certificates of one kind want the day', async () => {
    const sheets = sheetCalls(opened)
    const person = 'p-kaoru-minase'
    for (const firstDay of ['2027-01-05', '2027-02-05']) {
      const fields = { person, subject: 'bloodborne-pathogens', delivery: 'online', seen: false, firstDay }
      valueOf(await sheets.call(ENTER.certificates, { fields }))
    }
    const asked = lines(
      'Number here,Certificate,Taken,Seen',
      `${person},bloodborne pathogens,,yes`,
      `${person},bloodborne pathogens,5 Feb 2027,yes`,
    )
    const [unclear, clear] = (await sheets.planned(await sheets.put('certificates', asked))).rows
    expect(unclear).toMatchObject({ status: 'cannot', reasons: [{ heading: 'Taken' }] })
    expect(unclear!.reasons[0]!.message).toContain('2 certificates on record may be meant')
    expect(clear).toMatchObject({ status: 'change', person })
  })

  it('is not guessed: two memberships want the organisation', async () => {
    const sheets = sheetCalls(opened)
    const person = 'p-kaoru-minase'
    const fields = { person, organisation: 'halden-youth-corps', capacity: 'volunteer' }
    valueOf(await sheets.call(ENTER.memberships, { fields }))
    const sheet = await sheets.put(
      'memberships',
      lines('Number here,Agreement through', `${person},Dec 2027`),
    )
    const [row] = (await sheets.planned(sheet)).rows
    expect(row).toMatchObject({ status: 'cannot' })
    expect(row!.reasons[0]!.message).toContain('2 memberships on record may be meant')
  })
})

describe('a coordinator of one unit', () => {
  it('moves nobody out of a unit that their roles do not reach', async () => {
    const sheets = sheetCalls(opened)
    const person = 'p-dana-whitlow'
    const membership = {
      person,
      organisation: 'lantern-creek-volunteers',
      unit: 'sable-lake',
      capacity: 'volunteer',
    }
    valueOf(await sheets.call(ENTER.memberships, { fields: membership }))
    const text = lines('Number here,Organisation,Unit', `${person},lantern-creek-volunteers,Quill River`)
    const own = sheetCalls(opened, INES)
    const [row] = (await own.planned(await own.put('memberships', text))).rows
    expect(row).toMatchObject({ status: 'cannot' })
    expect(row!.reasons.map(({ message }) => message)).toContain(
      'Your roles do not reach this organisation and unit.',
    )
    // Who manages the whole program may.
    const [allowed] = (await sheets.planned(await sheets.put('memberships', text))).rows
    expect(allowed).toMatchObject({ status: 'change' })
  })

  it('puts nobody on record without a membership, not even in a sheet that has the column', async () => {
    const own = sheetCalls(opened, INES)
    const plan = await own.planned(
      await own.put('people', lines('Name,Organisation', 'Nn Invented,', 'Oo Invented,ashlar-range-staff')),
    )
    expect(plan.rows[0]!.reasons.map(({ message }) => message)).toEqual([
      'Somebody new needs an organisation: without a membership you would not reach their record.',
    ])
  })
})
