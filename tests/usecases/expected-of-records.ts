import { ROLES, type Role } from '../../lib/access/roles.ts'

/** Who may call, by the table of roles: `scoped` says whether a role that is given for one unit is enough. */
export type Expected = {
  input: object
  may: 'anybody' | 'start' | readonly Role[]
  scoped?: 'is-enough' | 'is-not-enough'
}

const KEEPS_PEOPLE = ['crew-coordinator', 'program-manager'] as const
const STANDS_DOWN = ['crew-lead', 'crew-coordinator', 'certifying-official', 'program-manager'] as const
const KEEPS_CARDS = ['certifying-official', 'program-manager'] as const
const RESOLVES = ['certifying-official'] as const
const MANAGES = ['program-manager'] as const

/** A section: who may write it, and a record that reads well, of nobody on record where it is about somebody. */
type Row = readonly [one: string, may: readonly Role[], fields: object]

const NOBODY = 'p-nobody-at-all'
const DAY = '2027-05-03'
const PLACE = 'north-ashlar'

const ROWS: readonly Row[] = [
  ['membership', KEEPS_PEOPLE, { person: NOBODY, organisation: 'ashlar-range-staff', capacity: 'volunteer' }],
  ['permission', KEEPS_PEOPLE, { person: NOBODY, says: 'given', firstDay: DAY }],
  ['certificate', KEEPS_PEOPLE, { person: NOBODY, subject: 'cpr', delivery: 'in-person', seen: true }],
  ['join', KEEPS_PEOPLE, { person: NOBODY, stays: NOBODY, because: 'Invented.' }],
  [
    'card',
    KEEPS_CARDS,
    {
      number: 'N-1',
      line: 1,
      person: NOBODY,
      book: 'federal-crosscut',
      workKinds: ['bucking'],
      sawKinds: ['crosscut'],
      level: 'A',
      effectiveDay: DAY,
      restrictions: [],
      carriedIn: { issuer: 'Invented Agency' },
    },
  ],
  [
    'extension',
    MANAGES,
    {
      book: 'federal-crosscut',
      runsTo: DAY,
      effectiveDay: DAY,
      order: 'Invented',
      source: 'Invented',
      of: { kind: 'card', card: 'no-card' },
    },
  ],
  [
    'suspension',
    KEEPS_CARDS,
    {
      form: 'suspension',
      kind: 'unsafe-act',
      subject: { kind: 'person', person: NOBODY },
      firstDay: DAY,
      reason: 'Invented',
    },
  ],
  ['resolution', RESOLVES, { card: 'no-card', restriction: 'r-1', into: [], reason: 'Invented' }],
  [
    'designation',
    KEEPS_CARDS,
    {
      person: NOBODY,
      role: 'instructor',
      book: 'federal-crosscut',
      level: 'A',
      workKinds: ['bucking'],
      sawKind: 'crosscut',
      firstDay: DAY,
    },
  ],
  [
    'assignment',
    KEEPS_PEOPLE,
    { person: NOBODY, items: ['no-item'], firstDay: DAY, lastDay: DAY, trainers: [NOBODY] },
  ],
  ['organisation', MANAGES, { name: 'Invented organisation of a test' }],
  ['place', MANAGES, { name: 'Invented place of a test', kind: 'place', parent: PLACE }],
  ['item', KEEPS_PEOPLE, { name: 'Invented log of a test', workKind: 'bucking', diameter: 12, place: PLACE }],
  [
    'expected',
    KEEPS_PEOPLE,
    {
      name: 'Invented work of a test',
      workKind: 'bucking',
      diameter: 12,
      place: PLACE,
      least: 0,
      most: 1,
      complexity: 'least',
    },
  ],
  ['rating', KEEPS_PEOPLE, { item: 'no-item', complexity: 'least', rater: NOBODY, day: DAY, how: 'on-site' }],
  [
    'hitch',
    KEEPS_PEOPLE,
    { number: '99', name: 'Invented hitch of a test', place: PLACE, firstDay: DAY, lastDay: DAY },
  ],
  ['placement', KEEPS_PEOPLE, { hitch: 'no-hitch', person: NOBODY, firstDay: DAY, lastDay: DAY }],
  ['raise', KEEPS_PEOPLE, { item: 'no-item', complexity: 'high', by: NOBODY, day: DAY, reason: 'Invented' }],
]

/** Everybody who works here has a record of their own to read; an auditor has none. */
const WORKERS = ROLES.filter((role) => role !== 'auditor')

const standDown = {
  subject: { kind: 'person', person: NOBODY },
  kind: 'unsafe-act',
  reason: 'Invented',
  told: false,
}
const correcting = { id: 'no-such-record', version: 1, why: 'Invented' }

/** The same table for what is entered, corrected and withdrawn by hand, a section at a time. */
export const EXPECTED_OF_RECORDS: Readonly<Record<string, Expected>> = {
  'records/enter-person': {
    input: {
      fields: { name: 'Invented Person of a test' },
      membership: { organisation: 'ashlar-range-staff', unit: PLACE, capacity: 'volunteer' },
    },
    may: KEEPS_PEOPLE,
    scoped: 'is-enough',
  },
  'records/correct-person': {
    input: { ...correcting, fields: { name: 'Invented' } },
    may: KEEPS_PEOPLE,
    scoped: 'is-enough',
  },
  'records/withdraw-person': { input: correcting, may: KEEPS_PEOPLE, scoped: 'is-enough' },
  'records/correct-person-before': {
    input: { ...correcting, fields: { name: 'Invented' } },
    may: KEEPS_PEOPLE,
    scoped: 'is-enough',
  },
  'records/withdraw-person-before': { input: correcting, may: KEEPS_PEOPLE, scoped: 'is-enough' },
  'records/list-people': { input: { section: 'cards' }, may: WORKERS, scoped: 'is-enough' },
  'records/list-program': { input: { section: 'places' }, may: ROLES, scoped: 'is-enough' },
  'records/read-people': { input: { section: 'cards', id: 'no-card' }, may: WORKERS, scoped: 'is-enough' },
  'records/read-program': { input: { section: 'places', id: PLACE }, may: ROLES, scoped: 'is-enough' },
  'records/stand-down': { input: standDown, may: STANDS_DOWN, scoped: 'is-enough' },
  'records/stand-down-before': { input: standDown, may: STANDS_DOWN, scoped: 'is-enough' },
  'records/notice-reached': {
    input: { id: 'no-such-record', version: 1, person: NOBODY },
    may: STANDS_DOWN,
    scoped: 'is-enough',
  },
  'records/dispute': {
    input: { section: 'cards', id: 'no-card', says: 'Invented' },
    may: WORKERS,
    scoped: 'is-enough',
  },
  'records/answer-dispute': {
    input: { id: 'no-dispute', version: 1, outcome: 'stands', says: 'Invented' },
    may: ['crew-coordinator', 'certifying-official', 'program-manager'],
    scoped: 'is-enough',
  },
  'records/confirm-stand-down': { input: correcting, may: KEEPS_CARDS, scoped: 'is-enough' },
  'records/whom-to-stop': { input: {}, may: STANDS_DOWN, scoped: 'is-enough' },
  'records/who-may-counts': { input: { items: [] }, may: WORKERS, scoped: 'is-enough' },
  'records/worksheet': { input: { item: 'no-item' }, may: ROLES, scoped: 'is-enough' },
  'records/hitch': { input: { hitch: 'no-hitch' }, may: ROLES, scoped: 'is-enough' },
  'records/counts': { input: {}, may: WORKERS, scoped: 'is-enough' },
  'records/choices': { input: {}, may: WORKERS, scoped: 'is-enough' },
  ...Object.fromEntries(
    ROWS.flatMap(([one, may, fields]) => {
      const programWide = ['organisation', 'place'].includes(one)
      const enter: Expected = { input: { fields }, may, scoped: programWide ? 'is-not-enough' : 'is-enough' }
      const correct: Expected = { input: { ...correcting, fields }, may, scoped: 'is-enough' }
      const withdraw: Expected = { input: correcting, may, scoped: 'is-enough' }
      return [
        [`records/enter-${one}`, enter],
        ...(['suspension', 'join'].includes(one) ? [[`records/enter-${one}-before`, enter] as const] : []),
        [`records/correct-${one}`, correct],
        [`records/correct-${one}-before`, correct],
        [`records/withdraw-${one}`, withdraw],
        [`records/withdraw-${one}-before`, withdraw],
      ] as const
    }),
  ),
}
