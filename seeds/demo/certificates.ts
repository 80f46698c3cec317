import type { Delivery } from '../../lib/core/rulebooks/words.ts'
import type { Draft } from './draft.ts'
import { entry, type EntryKey } from './entries.ts'

type Row = readonly [
  person: string,
  subject: 'first-aid' | 'cpr' | 'annual-refresher',
  firstDay: string,
  lastDay: string,
]

const COUNTY = 'Ashlar County first aid school'
const ROUGH_GATE = 'First aid class at Rough Gate'

function certificate(key: EntryKey, row: Row, issuedBy: string, delivery: Delivery = 'in-person') {
  const [person, subject, firstDay, lastDay] = row
  return {
    id: `ct-${person}-${subject}-${firstDay.slice(0, 4)}`,
    recordedIn: entry(key),
    person: `p-${person}`,
    subject,
    issuedBy,
    delivery,
    firstDay,
    lastDay,
    seen: true,
    by: 'Inês Caldwell-Moraes, crew coordinator',
  } satisfies Draft<'certificates'>
}

/** First aid and CPR of one class for everybody who came; month and year mean the month's last day. */
function classOf(key: EntryKey, firstDay: string, lastDay: string, people: readonly string[]) {
  return people.flatMap((person) => [
    certificate(key, [person, 'first-aid', firstDay, lastDay], ROUGH_GATE),
    certificate(key, [person, 'cpr', firstDay, lastDay], ROUGH_GATE),
  ])
}

function single(key: EntryKey, rows: readonly Row[]) {
  return rows.map((row) => certificate(key, row, COUNTY))
}

const ODD_YEARS = [
  'tobiah-renquist',
  'ifeoma-castellane',
  'yelena-marozava',
  'kaoru-minase',
  'bogdan-ilievski',
  'tavita-leaupepe',
  'jean-luc-daoust',
  'pilar-wetherlam',
  'nour-al-din-haddad',
  'anouk-serac-oyelaran',
  'dana-whitlow-2',
  'ivo-radoslavov',
  'grigor-tsvetanov',
  'maria-anastasia',
  'hollis-brandvold',
  'ansel-corriveau-tembo',
  'stelian-craciunescu',
  'marisol-quiroga-ibanez',
  'zeynep-karadagli',
]

const EVEN_YEARS = [
  'aurelio-brandt-nakai',
  'hallvard-eikeset',
  'wiremu-hakaraia',
  'chidinma-ezeigwe',
  'samir-hadzibegic',
  'tobias-wennerlund',
  'gwenllian-prosser',
  'mateus-figueiroa',
  'anneli-rautavuoma',
  'lupe-saldivar',
  'hamish-dunnachie',
]

const CORPS = [
  'tuuli-harjunpaa',
  'elio-castagneri',
  'senna-vandekerkhove',
  'rui-matsuzawa-lobo',
  'calla-fenwright',
  'kirra-ballantyne-oduya',
  'mirza-delalic',
  'ruadhan-mac-suibhne',
  'dilnoza-yusupbekova',
]

const YOUNG = [
  'tavi-marrowby',
  'joao-quintanilha',
  'losa-fonotia',
  'ilke-dauwens',
  'eun-ji-baek',
  'idris-penhallow',
]

const classes = [
  ...classOf('certificates-before', '2024-04-20', '2026-04-30', EVEN_YEARS),
  ...classOf('certificates-2025', '2025-04-12', '2027-04-30', [...ODD_YEARS, 'cedric-lumbwe']),
  ...classOf('certificates-2026', '2026-04-18', '2028-04-30', EVEN_YEARS),
  ...classOf('certificates-corps', '2026-10-10', '2028-10-31', CORPS),
  ...classOf('certificates-2027', '2027-04-17', '2029-04-30', [...ODD_YEARS, ...YOUNG]),
]

const singles = [
  ...single('certificates-before', [
    ['siobhan-o-briain', 'first-aid', '2023-12-01', '2025-11-30'],
    ['siobhan-o-briain', 'cpr', '2023-12-01', '2025-11-30'],
    ['nguyen-thi-suong', 'first-aid', '2023-12-01', '2025-11-30'],
    ['nguyen-thi-suong', 'cpr', '2023-07-19', '2025-07-18'],
    ['lukasz-wrzos', 'first-aid', '2024-02-03', '2026-02-02'],
    ['lukasz-wrzos', 'cpr', '2023-07-12', '2025-07-11'],
    ['benedikt-aasland', 'first-aid', '2024-04-20', '2026-04-30'],
    ['benedikt-aasland', 'cpr', '2023-09-27', '2025-09-26'],
    ['dana-whitlow', 'first-aid', '2024-03-06', '2026-03-05'],
    ['dana-whitlow', 'cpr', '2024-03-06', '2026-03-05'],
    ['hallvard-eikeset', 'first-aid', '2016-03-05', '2018-03-31'],
    ['hallvard-eikeset', 'cpr', '2016-03-05', '2018-03-31'],
    ['reinhild-ostermoor', 'first-aid', '2019-05-04', '2021-05-31'],
    ['reinhild-ostermoor', 'cpr', '2019-05-04', '2021-05-31'],
    // The skills check that makes the online renewal of 2027 count.
    ['farida-qosimova', 'cpr', '2023-03-11', '2025-03-31'],
  ]),
  ...single('certificates-2025-07', [
    ['nguyen-thi-suong', 'cpr', '2025-07-19', '2027-07-18'],
    ['ren-takahara', 'cpr', '2025-07-23', '2027-07-22'],
  ]),
  ...single('certificates-2025-autumn', [
    ['wulandari', 'first-aid', '2025-08-15', '2027-08-14'],
    ['benedikt-aasland', 'cpr', '2025-09-27', '2027-09-26'],
  ]),
  ...single('certificates-2025-12', [
    ['siobhan-o-briain', 'first-aid', '2025-12-01', '2027-11-30'],
    ['siobhan-o-briain', 'cpr', '2025-12-01', '2027-11-30'],
    ['nguyen-thi-suong', 'first-aid', '2025-12-01', '2027-11-30'],
  ]),
  ...single('certificates-2026-02', [['lukasz-wrzos', 'first-aid', '2026-02-03', '2028-02-02']]),
  ...single('certificates-2026-03', [
    ['dana-whitlow', 'first-aid', '2026-03-06', '2028-03-05'],
    ['dana-whitlow', 'cpr', '2026-03-06', '2028-03-05'],
  ]),
  ...single('certificates-2026', [
    ['benedikt-aasland', 'first-aid', '2026-04-18', '2028-04-30'],
    ['ren-takahara', 'first-aid', '2026-04-18', '2028-04-30'],
    ['wulandari', 'cpr', '2026-04-18', '2028-04-30'],
    // No first aid of hers is on record: nobody can say yes.
    ['mbali-kamabaso', 'cpr', '2026-04-18', '2028-04-30'],
    ['kwabena-asare-boadi', 'first-aid', '2026-04-18', '2028-04-30'],
    ['priyanka-deshkar', 'first-aid', '2026-04-18', '2028-04-30'],
    ['farida-qosimova', 'first-aid', '2026-04-18', '2028-04-30'],
  ]),
  ...single('certificates-corps', [['halima-warsame-dirie', 'cpr', '2026-10-10', '2028-10-31']]),
  ...single('certificates-2027', [['ansel-corriveau-tembo', 'annual-refresher', '2027-03-13', '2028-03-31']]),
]

const cprOfWrzos = certificate(
  'certificates-2025-07',
  ['lukasz-wrzos', 'cpr', '2025-07-12', '2028-07-11'],
  COUNTY,
)

const particular: Draft<'certificates'>[] = [
  // A correction that was entered late: three years had been typed where the certificate says two.
  { ...cprOfWrzos, supersededIn: entry('cpr-corrected') },
  {
    ...cprOfWrzos,
    recordedIn: entry('cpr-corrected'),
    supersedes: entry('certificates-2025-07'),
    lastDay: '2027-07-11',
  },
  {
    // Self-stated, and nobody has seen it.
    id: 'ct-kwabena-asare-boadi-cpr-2026',
    recordedIn: entry('self-stated-2026'),
    person: 'p-kwabena-asare-boadi',
    subject: 'cpr',
    delivery: 'in-person',
    firstDay: '2026-05-02',
    lastDay: '2028-05-31',
    seen: false,
  },
  // Online renewals: the first with nothing before it, the second after a class in person.
  certificate(
    'certificates-online',
    ['priyanka-deshkar', 'cpr', '2027-03-01', '2029-02-28'],
    'An online first aid school',
    'online',
  ),
  certificate(
    'certificates-online',
    ['farida-qosimova', 'cpr', '2027-03-01', '2029-02-28'],
    'An online first aid school',
    'online',
  ),
  // Delivery not stated: a doubt that is listed, not a gap.
  certificate(
    'certificates-corps',
    ['halima-warsame-dirie', 'first-aid', '2026-10-10', '2028-10-31'],
    'A college',
    'not-stated',
  ),
]

/** First aid, CPR and what else a rule asks for: dates, issuer and who saw it, never a condition. */
export const certificates: Draft<'certificates'>[] = [...classes, ...singles, ...particular]
