import { item } from './demo.ts'
import { FELL, HIGH, JULY, LEAST, MODERATE, type Trap } from './trap.ts'

/** The traps that lie in people, their certificates and their suspensions. */
export const personTraps: Trap[] = [
  [
    'a CPR that lapses in the middle of a hitch',
    'p-lukasz-wrzos',
    item('i-windfall-fir-6').work,
    JULY,
    [
      ['2027-07-11', 'independent'],
      ['2027-07-15', 'none', 'certificate-lapsed: cpr'],
    ],
  ],
  [
    'a 15-year-old whose birthday falls in a hitch',
    'p-tavi-marrowby',
    item('x-h-12-small').work,
    ['2027-07-10', '2027-07-16'],
    [
      ['2027-07-11', 'none', 'training-only', 'under-age'],
      ['2027-07-16', 'training', 'training-only', 'under-age'],
    ],
  ],
  [
    'a self-stated CPR that nobody has seen',
    'p-kwabena-asare-boadi',
    MODERATE,
    JULY,
    [['2027-07-15', 'unknown', 'certificate-not-seen: cpr']],
  ],
  [
    'an online renewal without a skills check on record',
    'p-priyanka-deshkar',
    MODERATE,
    JULY,
    [['2027-07-15', 'none', 'certificate-delivery: cpr']],
  ],
  [
    'an online renewal with a skills check on record',
    'p-farida-qosimova',
    MODERATE,
    JULY,
    [['2027-07-15', 'independent']],
  ],
  [
    'a candidate with no card, on the class',
    'p-idris-penhallow',
    item('i-c-02-log-1').work,
    ['2027-05-27', '2027-05-28'],
    [['2027-05-28', 'training', 'no-card', 'training-only']],
  ],
  [
    'a candidate with no card, on a log above what the book allows',
    'p-idris-penhallow',
    item('i-c-02-log-3').work,
    ['2027-05-27', '2027-05-28'],
    [['2027-05-28', 'none', 'no-card']],
  ],
  [
    'a suspension lifted',
    'p-lukasz-wrzos',
    MODERATE,
    ['2027-01-17', '2027-02-02'],
    [
      ['2027-01-17', 'independent'],
      ['2027-01-31', 'none', 'suspended'],
      ['2027-02-02', 'independent'],
    ],
  ],
  ['a suspension not lifted', 'p-anouk-serac-oyelaran', FELL, JULY, [['2027-07-15', 'none', 'suspended']]],
  [
    'an administrative suspension with a last day',
    'p-grigor-tsvetanov',
    LEAST,
    ['2027-06-30', '2027-07-01'],
    [
      ['2027-06-30', 'none', 'needs-supervisor', 'suspended'],
      ['2027-07-01', 'own-level', 'needs-supervisor'],
    ],
  ],
  [
    'a place that is closed',
    'p-tobiah-renquist',
    { ...HIGH, place: 'windfall-basin' },
    ['2027-06-20', '2027-06-21'],
    [
      ['2027-06-20', 'none', 'suspended'],
      ['2027-06-21', 'independent'],
    ],
  ],
  [
    'no first aid on record',
    'p-mbali-kamabaso',
    LEAST,
    JULY,
    [['2027-07-15', 'unknown', 'needs-supervisor', 'certificate-not-on-record: first-aid']],
  ],
  [
    'a contractor',
    'p-stelian-craciunescu',
    LEAST,
    JULY,
    [['2027-07-15', 'none', 'needs-supervisor', 'outside-book']],
  ],
  [
    'a student, before the agreement begins and after',
    'p-ruadhan-mac-suibhne',
    LEAST,
    ['2027-08-22', '2027-08-23'],
    [
      // One agreement has ended and the next has not begun: both are said.
      ['2027-08-22', 'none', 'needs-supervisor', 'no-agreement', 'no-agreement'],
      ['2027-08-23', 'own-level', 'needs-supervisor'],
    ],
  ],
  [
    'a minor whose capacity is not stated',
    'p-rui-matsuzawa-lobo',
    LEAST,
    JULY,
    [['2027-07-15', 'unknown', 'training-only', 'under-age', 'not-on-record']],
  ],
  [
    'a minor whose guardian refused',
    'p-senna-vandekerkhove',
    LEAST,
    JULY,
    [['2027-07-15', 'none', 'training-only', 'under-age', 'guardian-permission-missing']],
  ],
  [
    'a minor whose guardian’s permission is not on record',
    'p-tuuli-harjunpaa',
    LEAST,
    JULY,
    [['2027-07-15', 'unknown', 'needs-supervisor', 'under-age', 'guardian-permission-missing']],
  ],
  [
    'the same with the permission',
    'p-elio-castagneri',
    LEAST,
    JULY,
    [['2027-07-15', 'own-level', 'needs-supervisor', 'under-age']],
  ],
  [
    'a paid corps member of 17',
    'p-calla-fenwright',
    LEAST,
    JULY,
    [['2027-07-15', 'none', 'training-only', 'under-age']],
  ],
  [
    'attested of age from a day, without a birth date',
    'p-ilke-dauwens',
    LEAST,
    ['2027-07-01', '2027-07-02'],
    [
      ['2027-07-01', 'unknown', 'training-only', 'under-age', 'guardian-permission-missing', 'not-on-record'],
      ['2027-07-02', 'training', 'training-only'],
    ],
  ],
]
