import { BOTH, BUCKING, carriedIn, FELLING, restricted } from './card-rows.ts'
import { COOPERATOR, FALLER, type Draft } from './draft.ts'

const fromBefore = carriedIn('carried-in', 'Ashlar Range Saw Program, paper register', [
  ['K-0127', 'reinhild-ostermoor', 'B', BUCKING, '2016-10-02', '2019-10-01'],
  ['K-0300', 'siobhan-o-briain', 'C', BOTH, '2023-04-12', '2026-04-11'],
  ['K-0318', 'maria-anastasia', 'A', BUCKING, '2024-05-01', '2027-04-30'],
  // Renewed two days after its last day: 11 July 2026 is uncovered.
  ['K-0322', 'tavita-leaupepe', 'B', BUCKING, '2023-07-11', '2026-07-10'],
  ['K-0337', 'nguyen-thi-suong', 'A', BUCKING, '2024-05-12', '2027-05-11'],
  ['K-0339', 'tobias-wennerlund', 'A', BUCKING, '2024-05-19', '2027-05-18'],
  // An instructor: his own card ends six days before the class he is to teach.
  ['K-0340', 'bogdan-ilievski', 'B', BUCKING, '2024-05-22', '2027-05-21'],
  ['K-0341', 'chidinma-ezeigwe', 'B', BUCKING, '2024-05-22', '2027-05-21'],
  ['K-0343', 'gwenllian-prosser', 'A', BUCKING, '2024-06-06', '2027-06-05'],
  [
    'K-0345',
    'samir-hadzibegic',
    'A',
    BUCKING,
    '2024-06-11',
    '2027-06-10',
    restricted({ id: 'r-1', kind: 'species', species: ['pine', 'fir'] }),
  ],
  ['K-0348', 'yelena-marozava', 'C', BOTH, '2024-07-01', '2027-06-30'],
  // One number with two lines.
  ['K-0349', 'ifeoma-castellane', 'C', BUCKING, '2024-07-16', '2027-07-15', { line: 1 }],
  ['K-0349', 'ifeoma-castellane', 'B', FELLING, '2024-07-16', '2027-07-15', { line: 2 }],
  // Renewed on time from the day after its last day: two cards without a gap.
  ['K-0350', 'kaoru-minase', 'B', BUCKING, '2024-07-11', '2027-07-10'],
  ['K-0352', 'dana-whitlow', 'B', BOTH, '2024-07-19', '2027-07-18'],
  [
    'K-0356',
    'jean-luc-daoust',
    'B',
    BOTH,
    '2024-10-04',
    '2027-10-03',
    restricted({
      id: 'r-1',
      kind: 'words',
      workKinds: FELLING,
      text: 'no side-hill felling until seen again',
    }),
  ],
  [
    'K-0360',
    'pilar-wetherlam',
    'B',
    BOTH,
    '2025-01-13',
    '2028-01-12',
    restricted({ id: 'r-1', kind: 'supervisor-only', workKinds: FELLING }),
  ],
  ['K-0364', 'stelian-craciunescu', 'A', BUCKING, '2025-03-01', '2028-02-29'],
])

const fromElsewhere = [
  ...carriedIn(
    'carried-in-elsewhere',
    'Varden Forest Agency, its own card system',
    [
      // Five years where the federal book proposes three: it counts, and is listed as a doubt.
      ['K-0362', 'aurelio-brandt-nakai', 'C', BUCKING, '2024-02-20', '2029-02-19'],
      ['K-0363', 'marisol-quiroga-ibanez', 'A', BUCKING, '2025-02-03', '2028-02-02'],
    ],
    { 'K-0362': 'VFA-22817', 'K-0363': 'VFA-23104' },
  ),
  ...carriedIn('carried-in-elsewhere', 'Lantern Creek Trail Volunteers', [
    ['L-0003', 'wiremu-hakaraia', 'B', BUCKING, '2024-05-01', '2026-04-30', { book: COOPERATOR }],
  ]),
  ...carriedIn('carried-in-elsewhere', 'Incident qualification register', [
    [
      'F-2041',
      'ansel-corriveau-tembo',
      'advanced',
      BOTH,
      '2025-01-20',
      '2030-01-19',
      { book: FALLER, sawKinds: ['chain-saw'] },
    ],
  ]),
  // Issued under the edition before the one of 2016.
  ...carriedIn('carried-in-old', 'Ashlar Range, before the directive of 2016', [
    ['K-0009', 'hallvard-eikeset', 'C', BUCKING, '2016-05-02', '2028-05-01'],
  ]),
  ...carriedIn('cooperator-2026', 'Lantern Creek Trail Volunteers', [
    ['L-0007', 'wiremu-hakaraia', 'B', BUCKING, '2026-05-01', '2028-04-30', { book: COOPERATOR }],
  ]),
  ...carriedIn('cooperator-2026-09', 'Lantern Creek Trail Volunteers', [
    ['L-0014', 'mateus-figueiroa', 'A', BUCKING, '2026-09-15', '2027-09-14', { book: COOPERATOR }],
  ]),
]

/** Every card that was not decided here. */
export const cardsCarriedIn: Draft<'cards'>[] = [...fromBefore, ...fromElsewhere]
