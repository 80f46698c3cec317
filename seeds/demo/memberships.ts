import type { Capacity } from '../../lib/core/rulebooks/words.ts'
import { GANNET_FOLD, HALDEN, LANTERN_CREEK, STAFF, type Draft } from './draft.ts'
import { entry, type EntryKey } from './entries.ts'

type Agreement = readonly [person: string, firstDay: string, lastDay: string, capacity?: Capacity]

function staffOf(unit: string, people: readonly string[]): Draft<'memberships'>[] {
  return people.map((person) => ({
    id: `m-${person}`,
    recordedIn: entry('staff'),
    person: `p-${person}`,
    organisation: STAFF,
    unit,
    capacity: 'employee',
  }))
}

function agreements(
  key: EntryKey,
  organisation: string,
  usual: Capacity,
  rows: readonly Agreement[],
): Draft<'memberships'>[] {
  return rows.map(([person, firstDay, lastDay, capacity]) => ({
    id: `m-${person}-${firstDay.slice(0, 7)}`,
    recordedIn: entry(key),
    person: `p-${person}`,
    organisation,
    capacity: capacity ?? usual,
    firstDay,
    lastDay,
  }))
}

const VOLUNTEERS = [
  'hallvard-eikeset',
  'benedikt-aasland',
  'dana-whitlow-2',
  'pilar-wetherlam',
  'wiremu-hakaraia',
  'gwenllian-prosser',
  'mateus-figueiroa',
  'hamish-dunnachie',
]

const yearly = (key: EntryKey, year: string) =>
  agreements(
    key,
    LANTERN_CREEK,
    'volunteer',
    VOLUNTEERS.map((person): Agreement => [person, `${year}-01-01`, `${year}-12-31`]),
  )

/** Who belongs where, in what capacity, under an agreement of which days. */
export const memberships: Draft<'memberships'>[] = [
  ...staffOf('quill-river', [
    'dana-whitlow',
    'kwabena-asare-boadi',
    'zeynep-karadagli',
    'farida-qosimova',
    'ifeoma-castellane',
    'ivo-radoslavov',
    'hollis-brandvold',
  ]),
  ...staffOf('sable-lake', [
    'siobhan-o-briain',
    'nguyen-thi-suong',
    'tavita-leaupepe',
    'chidinma-ezeigwe',
    'samir-hadzibegic',
    'marisol-quiroga-ibanez',
    'cedric-lumbwe',
    'lupe-saldivar',
  ]),
  ...staffOf('north-ashlar', [
    'lukasz-wrzos',
    'tobiah-renquist',
    'yelena-marozava',
    'jean-luc-daoust',
    'kaoru-minase',
    'bogdan-ilievski',
    'priyanka-deshkar',
    'tobias-wennerlund',
    'anouk-serac-oyelaran',
    'nour-al-din-haddad',
    'ren-takahara',
    'wulandari',
    'mbali-kamabaso',
    'aurelio-brandt-nakai',
    'maria-anastasia',
    'grigor-tsvetanov',
    'anneli-rautavuoma',
    'reinhild-ostermoor',
    'ansel-corriveau-tembo',
  ]),

  // On staff until the end of 2026, and a contractor since: outside the federal book.
  {
    id: 'm-stelian-craciunescu',
    recordedIn: entry('staff'),
    person: 'p-stelian-craciunescu',
    organisation: STAFF,
    unit: 'quill-river',
    capacity: 'employee',
    firstDay: '2024-05-01',
    lastDay: '2026-12-31',
  },
  ...agreements('contractor-2027', GANNET_FOLD, 'contractor', [
    ['stelian-craciunescu', '2027-04-01', '2027-11-30'],
  ]),

  // A volunteer since before the directive of 2016: one agreement on paper for all those years.
  ...agreements('volunteers', LANTERN_CREEK, 'volunteer', [['hallvard-eikeset', '2015-01-01', '2024-12-31']]),
  ...yearly('volunteers', '2025'),
  ...yearly('agreements-2026', '2026'),
  ...yearly('agreements-2027', '2027'),
  ...agreements('agreements-2027', LANTERN_CREEK, 'volunteer', [
    ['idris-penhallow', '2027-01-01', '2027-12-31'],
  ]),
  ...agreements('lantern-youth', LANTERN_CREEK, 'volunteer', [['tavi-marrowby', '2027-04-01', '2027-12-31']]),

  ...agreements('corps-2026', HALDEN, 'paid-corps-member', [
    ['ruadhan-mac-suibhne', '2026-05-01', '2026-12-20', 'student'],
    ['dilnoza-yusupbekova', '2026-05-01', '2026-12-20'],
    ['halima-warsame-dirie', '2026-05-01', '2026-12-20'],
  ]),
  ...agreements('corps-autumn', HALDEN, 'volunteer', [
    ['tuuli-harjunpaa', '2026-10-01', '2027-12-31'],
    ['elio-castagneri', '2026-10-01', '2027-08-14'],
    ['senna-vandekerkhove', '2026-10-01', '2027-12-31'],
    ['rui-matsuzawa-lobo', '2026-10-01', '2027-12-31', 'not-stated'],
    ['calla-fenwright', '2026-10-01', '2027-12-31', 'paid-corps-member'],
    ['kirra-ballantyne-oduya', '2026-10-01', '2027-10-31', 'paid-corps-member'],
    ['mirza-delalic', '2026-10-01', '2027-10-31', 'paid-corps-member'],
  ]),
  // The three A of the corps are back on 23 August: before it the corps has nobody but trainees.
  ...agreements('season-people-2027', HALDEN, 'paid-corps-member', [
    ['ruadhan-mac-suibhne', '2027-08-23', '2027-12-20', 'student'],
    ['dilnoza-yusupbekova', '2027-08-23', '2027-12-20'],
    ['halima-warsame-dirie', '2027-08-23', '2027-12-20'],
    ['joao-quintanilha', '2027-05-15', '2027-10-31'],
    ['losa-fonotia', '2027-05-01', '2027-10-31', 'volunteer'],
    ['ilke-dauwens', '2027-05-01', '2027-10-31', 'volunteer'],
    ['eun-ji-baek', '2027-05-15', '2027-10-31', 'student'],
  ]),
]

/** What guardians of minors said. For Tuuli Harjunpää nothing is on record. */
export const permissions: Draft<'permissions'>[] = [
  {
    id: 'g-elio-castagneri',
    recordedIn: entry('corps-autumn'),
    person: 'p-elio-castagneri',
    says: 'given',
    firstDay: '2026-10-01',
    attestedBy: 'Brendan Achterberg, Halden Youth Corps',
  },
  {
    id: 'g-senna-vandekerkhove',
    recordedIn: entry('corps-autumn'),
    person: 'p-senna-vandekerkhove',
    says: 'refused',
    firstDay: '2026-10-01',
    attestedBy: 'Brendan Achterberg, Halden Youth Corps',
  },
  {
    id: 'g-rui-matsuzawa-lobo',
    recordedIn: entry('corps-autumn'),
    person: 'p-rui-matsuzawa-lobo',
    says: 'given',
    firstDay: '2026-10-01',
    attestedBy: 'Brendan Achterberg, Halden Youth Corps',
  },
  {
    id: 'g-tavi-marrowby',
    recordedIn: entry('lantern-youth'),
    person: 'p-tavi-marrowby',
    says: 'given',
    firstDay: '2027-04-10',
    attestedBy: 'Solvei Haugstad-Iyer, Lantern Creek Trail Volunteers',
  },
]
