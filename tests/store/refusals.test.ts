import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openStore, type Store } from '../../lib/store/client.ts'
import { refusalOf, type RefusalKind } from '../../lib/store/refusals.ts'
import { snapshotOf } from '../../lib/store/snapshot.ts'
import type { Changes, EntryToWrite, NewFact } from '../../lib/store/write.ts'
import { writeOne } from '../builders/stored-program.ts'
import { cloneDatabase, type TestDatabase } from '../builders/test-database.ts'

let database: TestDatabase
let store: Store

const fact = (section: NewFact['section'], id: string, fields: object, supersedes?: number): NewFact => ({
  section,
  fact: { id, ...fields, ...(supersedes === undefined ? {} : { supersedes }) },
})
const edition = (id: string, firstDay: string, lastDay?: string) =>
  fact('editions', id, {
    book: 'book',
    name: id,
    says: 'Invented.',
    firstDay,
    ...(lastDay === undefined ? {} : { lastDay }),
    levels: [],
    rules: [],
  })
const card = (id: string, fields: object = {}) =>
  fact('cards', id, {
    number: 'TX-1',
    line: 1,
    person: 'ana',
    book: 'book',
    workKinds: ['bucking'],
    sawKinds: ['crosscut'],
    level: 'A',
    effectiveDay: '2027-01-01',
    restrictions: [],
    ...fields,
  })
const account = (id: string, signInName: string) =>
  fact('accounts', id, { signInName, founding: false, closed: false })
const program = (id: string) =>
  fact('program', id, {
    name: 'Invented',
    timeZone: 'UTC',
    book: 'book',
    firstDayOfDeciding: '2027-03-01',
    invented: true,
  })
const person = (id: string) => fact('people', id, { name: `The person ${id}` })

const command = 'c0ffee00-0000-4000-8000-000000000003'

beforeAll(async () => {
  database = await cloneDatabase()
  store = openStore(database.appUrl)
  await writeOne(
    store,
    {
      record: [
        fact('books', 'book', { name: 'Book', says: 'Invented.' }),
        edition('first', '2026-01-01', '2026-12-31'),
        program('here'),
        person('ana'),
        person('ben'),
        card('card-1'),
        account('a-ana', 'ana'),
      ],
    },
    { command, commandDigest: Buffer.alloc(32) },
  )
  await writeOne(store, { withdraw: [{ section: 'people', id: 'ben', recordedIn: 1 }] })
})

afterAll(async () => {
  await store.close()
  await database.drop()
})

type Case = [RefusalKind, string, Partial<Changes>, Partial<EntryToWrite>?]

const CASES: Case[] = [
  ['stale', 'a correction of what was withdrawn', { record: [fact('people', 'ben', { name: 'Ben' }, 1)] }],
  ['stale', 'a second withdrawal', { withdraw: [{ section: 'people', id: 'ben', recordedIn: 1 }] }],
  ['closes-nothing', 'a correction of no version', { record: [fact('people', 'ana', { name: 'Ana' }, 2)] }],
  [
    'closes-nothing',
    'a withdrawal of nobody',
    { withdraw: [{ section: 'people', id: 'cy', recordedIn: 1 }] },
  ],
  ['already-current', 'a person a second time', { record: [person('ana')] }],
  ['twin', 'the same twice in one entry', { record: [person('cy'), person('cy')] }],
  ['refers-to-nothing', 'a rating of no item', { record: [ratingOf('nothing')] }],
  [
    'number-of-two-people',
    'a number of two people',
    { record: [card('card-2', { line: 2, person: 'ben' })] },
  ],
  ['line-of-two-cards', 'a line of two cards', { record: [card('card-3')] }],
  [
    'line-of-two-cards',
    'a card that changes its line',
    { record: [{ ...card('card-1', { line: 2, supersedes: 1 }) }] },
  ],
  [
    'card-undecided',
    'a card without a decision on the first day of deciding',
    { record: [card('card-4', { number: 'TX-4', effectiveDay: '2027-03-01' })] },
  ],
  ['editions-overlap', 'two editions on a day', { record: [edition('second', '2026-12-31')] }],
  [
    'two-crews',
    'somebody in two crews on a day',
    {
      record: [
        place('p'),
        hitch('h-1'),
        placed('one', '2027-07-08', '2027-07-12'),
        placed('two', '2027-07-12', '2027-07-14'),
      ],
    },
  ],
  ['sign-in-name-taken', 'a sign-in name twice', { record: [account('a-ben', 'ana')] }],
  ['another-program', 'a second program', { record: [program('there')] }],
  ['breaks-a-check', 'a span backwards', { record: [edition('third', '2028-01-02', '2028-01-01')] }],
  ['command-repeated', 'a command twice', {}, { command, commandDigest: Buffer.alloc(32) }],
]

function place(id: string): NewFact {
  return fact('places', id, { name: 'Invented', kind: 'program' })
}

function hitch(id: string): NewFact {
  const days = { firstDay: '2027-07-08', lastDay: '2027-07-14' }
  return fact('hitches', id, { number: '1', name: 'Invented', place: 'p', ...days })
}

function placed(id: string, firstDay: string, lastDay: string): NewFact {
  return fact('placements', id, { hitch: 'h-1', person: 'ana', firstDay, lastDay })
}

function ratingOf(item: string): NewFact {
  return fact('ratings', 'rating', {
    item,
    complexity: 'least',
    rater: 'ana',
    day: '2027-01-01',
    how: 'on-site',
  })
}

describe('a write that breaks a rule of the database', () => {
  it.each(CASES)(
    'is refused as %s, and nothing of it is written: %s',
    async (kind, _what, changes, entry) => {
      const before = await snapshotOf(store)
      const more = { ...changes, record: [...(changes.record ?? []), person('goes-with-it')] }
      await expect(writeOne(store, more, entry)).rejects.toMatchObject({ name: 'StoreRefusal', kind })
      expect(await snapshotOf(store)).toBe(before)
    },
  )

  it('is let through where a day lies between: editions may follow each other', async () => {
    expect((await writeOne(store, { record: [edition('second', '2027-01-01')] })).n).toBe(3)
    expect((await snapshotOf(store)).program.editions.map(({ id }) => id)).toEqual(['first', 'second'])
  })

  it('is let through where a card of that day has a decision or was carried in, or is of the day before', async () => {
    const days = [
      card('day-before', { number: 'TX-5', effectiveDay: '2027-02-28' }),
      card('decided', { number: 'TX-6', effectiveDay: '2027-03-01', decision: 'Decided on the first day.' }),
      card('carried', {
        number: 'TX-7',
        effectiveDay: '2027-03-01',
        carriedIn: { issuer: 'Another program' },
      }),
    ]
    await writeOne(store, { record: days })
    expect((await snapshotOf(store)).program.cards).toHaveLength(4)
  })

  it('is none where the error is another: it is handed on as it is', async () => {
    expect(refusalOf(new Error('something else'))).toBeUndefined()
    await expect(
      writeOne(store, {}, { command: 'no uuid', commandDigest: Buffer.alloc(32) }),
    ).rejects.not.toMatchObject({ name: 'StoreRefusal' })
  })
})
