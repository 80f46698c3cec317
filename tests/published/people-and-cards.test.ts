import { describe, it } from 'vitest'
import { card } from '../builders/cards.ts'
import { adult, certificate, membership, permission, person } from '../builders/people.ts'
import type { Part } from '../builders/records.ts'
import { place } from '../builders/work.ts'
import { expectPublished, type AuthorityRow } from './authority-row.ts'

type CardSaid = NonNullable<Parameters<typeof card>[2]>

const BOTH: ('bucking' | 'felling')[] = ['bucking', 'felling']
const YEAR = { firstDay: '2027-01-01', lastDay: '2027-12-31' }

function holder(level: string, said: CardSaid = {}, more: Part = {}): Part {
  return adult('p-1', { cards: [card('p-1', level, said)], ...more })
}

const volunteer = (birthDate: string): Part =>
  holder(
    'B',
    {},
    {
      people: [person('p-1', { birthDate })],
      memberships: [membership('p-1', { capacity: 'volunteer', ...YEAR })],
      permissions: [permission('p-1')],
    },
  )

const MANUAL = 'FSM 2358 (2016), as reported at its release'
const PROPOSED = '80 FR 34610 (2015-06-17), as reported'

const AGE: AuthorityRow[] = [
  {
    source: MANUAL,
    fact: 'crosscut, on the 16th birthday (a volunteer, whom the program supervises)',
    facts: [volunteer('2011-07-08')],
    standing: 'own-level',
    findings: ['under-age', 'needs-supervisor'],
  },
  {
    source: MANUAL,
    fact: 'crosscut, the day before the 16th birthday',
    facts: [volunteer('2011-07-09')],
    standing: 'none',
    findings: ['under-age'],
  },
  {
    source: 'National Wildfire Coordinating Group position descriptions: 18, from memory',
    fact: 'power saw, the day before the 18th birthday',
    facts: [
      holder(
        'intermediate',
        { book: 'interagency-faller', sawKinds: ['chain-saw'] },
        {
          people: [person('p-1', { birthDate: '2009-07-09' })],
          memberships: [],
          certificates: [certificate('p-1', 'annual-refresher')],
        },
      ),
      { book: 'interagency-faller' },
    ],
    work: { sawKind: 'chain-saw' },
    standing: 'none',
    findings: ['under-age'],
  },
  {
    source: 'National Wildfire Coordinating Group position descriptions: 18, from memory',
    fact: 'power saw, on the 18th birthday',
    facts: [
      holder(
        'intermediate',
        { book: 'interagency-faller', sawKinds: ['chain-saw'] },
        {
          people: [person('p-1', { birthDate: '2009-07-08' })],
          memberships: [],
          certificates: [certificate('p-1', 'annual-refresher')],
        },
      ),
      { book: 'interagency-faller' },
    ],
    work: { sawKind: 'chain-saw' },
    standing: 'independent',
    findings: [],
  },
  {
    source: '29 CFR 570.54, read only in summary, from memory',
    fact: 'an employee of 17',
    facts: [holder('B', {}, { people: [person('p-1', { birthDate: '2009-07-09' })] })],
    standing: 'none',
    findings: ['under-age'],
  },
]

const places = [place('north', { kind: 'unit' }), place('south', { kind: 'unit' })]

const CARDS: AuthorityRow[] = [
  {
    source: PROPOSED,
    fact: 'no card, no saw',
    facts: [adult('p-1')],
    standing: 'none',
    findings: ['no-card'],
  },
  {
    source: PROPOSED,
    fact: 'a card and first aid, CPR not on record',
    facts: [holder('B', {}, { certificates: [certificate('p-1', 'first-aid')] })],
    standing: 'unknown',
    findings: ['certificate-not-on-record'],
  },
  {
    source: MANUAL,
    fact: 'a card is good in every region: here',
    facts: [holder('B'), { places }],
    work: { place: 'north' },
    standing: 'independent',
    findings: [],
  },
  {
    source: MANUAL,
    fact: 'and there',
    facts: [holder('B'), { places }],
    work: { place: 'south' },
    standing: 'independent',
    findings: [],
  },
  {
    source: MANUAL,
    fact: 'federal contractors are outside the directive',
    facts: [holder('C', {}, { memberships: [membership('p-1', { capacity: 'contractor', ...YEAR })] })],
    standing: 'none',
    findings: ['outside-book'],
  },
  {
    source: 'Regional partner course pages',
    fact: 'online only, with no skills check on record',
    facts: [
      holder(
        'B',
        {},
        {
          certificates: [certificate('p-1', 'first-aid'), certificate('p-1', 'cpr', { delivery: 'online' })],
        },
      ),
    ],
    standing: 'none',
    findings: ['certificate-delivery'],
  },
  {
    source: 'Regional partner course pages',
    fact: 'an online renewal after one in-person check',
    facts: [
      holder(
        'B',
        {},
        {
          certificates: [
            certificate('p-1', 'first-aid'),
            certificate('p-1', 'cpr', { id: 'renewed', delivery: 'online' }),
            certificate('p-1', 'cpr', { firstDay: '2023-01-01', lastDay: '2024-12-31' }),
          ],
        },
      ),
    ],
    standing: 'independent',
    findings: [],
  },
  {
    source:
      "A partner's class page puts wood of 5 in or less outside; not seen in FSM 2358, so the stricter stands",
    fact: 'a 5 in log without a card',
    facts: [adult('p-1')],
    work: { diameter: 5 },
    standing: 'none',
    findings: ['no-card'],
  },
  {
    source: '0667-2805-MTDC, chapter 6',
    fact: 'a card restricted by size, a sixteenth over',
    facts: [holder('B', { restrictions: [{ id: 'w', kind: 'greatest-diameter', inches: 24 }] })],
    work: { diameter: 24.0625 },
    standing: 'none',
    findings: ['over-diameter'],
  },
  {
    source: '0667-2805-MTDC, chapter 6',
    fact: 'restricted by type of tree',
    facts: [holder('B', { restrictions: [{ id: 's', kind: 'species', species: ['invented pine'] }] })],
    standing: 'none',
    findings: ['outside-species'],
  },
  {
    source: '0667-2805-MTDC, chapter 6',
    fact: 'restricted by place',
    facts: [holder('B', { restrictions: [{ id: 'p', kind: 'places', places: ['south'] }] }), { places }],
    work: { place: 'north' },
    standing: 'none',
    findings: ['outside-places'],
  },
  {
    source: '0667-2805-MTDC, chapter 6',
    fact: 'restricted by activity: no felling',
    facts: [holder('B', { workKinds: BOTH, restrictions: [{ id: 'f', kind: 'no-felling' }] })],
    work: { workKind: 'felling' },
    standing: 'none',
    findings: ['no-felling'],
  },
  {
    source: 'common practice, no source',
    fact: 'with a supervisor only',
    facts: [holder('B', { restrictions: [{ id: 'w', kind: 'supervisor-only' }] })],
    standing: 'own-level',
    findings: ['needs-supervisor'],
  },
  {
    source: 'common practice, no source',
    fact: 'a card issued for less than its term ends on its own last day',
    facts: [holder('B', { lastDay: '2025-12-31' })],
    day: '2026-01-01',
    standing: 'none',
    findings: ['card-no-longer-valid'],
  },
]

describe('ages', () => {
  it.each(AGE)('$source: $fact', expectPublished)
})
describe('cards and what goes with them', () => {
  it.each(CARDS)('$source: $fact', expectPublished)
})
