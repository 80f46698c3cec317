import { describe, it } from 'vitest'
import { card } from '../builders/cards.ts'
import { adult, assignment, designation } from '../builders/people.ts'
import type { Part } from '../builders/records.ts'
import { item, type WorkSaid } from '../builders/work.ts'
import { expectPublished, type AuthorityRow } from './authority-row.ts'

type CardSaid = NonNullable<Parameters<typeof card>[2]>

const BOTH: ('bucking' | 'felling')[] = ['bucking', 'felling']
const PROPOSED = '80 FR 34610 (2015-06-17), as reported'
const DEFINITIONS = 'FSM 2358.05 (2016), definitions'
const FROM_MEMORY = 'FSM 2358.05 (2016), definitions, felling: from memory'
const SCHEME = 'Cooperator saw programme pages'

function sawyer(id: string, level: string, said: CardSaid = {}): Part {
  return adult(id, { cards: [card(id, level, said)] })
}
const holder = (level: string, said: CardSaid = {}): Part =>
  sawyer('p-1', level, { workKinds: BOTH, ...said })

const HIGH: WorkSaid = { complexity: 'high' }
const MODERATE: WorkSaid = { complexity: 'moderate' }
const FELLING: WorkSaid = { workKind: 'felling' }

const LEVELS: AuthorityRow[] = [
  {
    source: PROPOSED,
    fact: 'a trainee bucks under immediate supervision',
    facts: [holder('trainee')],
    standing: 'training',
    findings: ['training-only'],
  },
  {
    source: PROPOSED,
    fact: 'a trainee does not fell',
    facts: [holder('trainee')],
    work: FELLING,
    standing: 'none',
    findings: ['level-too-low'],
  },
  {
    source: DEFINITIONS,
    fact: 'an A works in least complex situations under immediate supervision',
    facts: [holder('A')],
    standing: 'own-level',
    findings: ['needs-supervisor'],
  },
  {
    source: DEFINITIONS,
    fact: 'an A works at the next level for training',
    facts: [holder('A')],
    work: MODERATE,
    standing: 'training',
    findings: ['training-only'],
  },
  {
    source: DEFINITIONS,
    fact: 'an A does not work two levels up',
    facts: [holder('A')],
    work: HIGH,
    standing: 'none',
    findings: ['level-too-low'],
  },
  {
    source: DEFINITIONS,
    fact: 'a B bucks any size in moderately complex situations: 40 in',
    facts: [holder('B')],
    work: { ...MODERATE, diameter: 40 },
    standing: 'independent',
    findings: [],
  },
  {
    source: DEFINITIONS,
    fact: 'unless the card is restricted',
    facts: [holder('B', { restrictions: [{ id: 'w', kind: 'greatest-diameter', inches: 36 }] })],
    work: { ...MODERATE, diameter: 40 },
    standing: 'none',
    findings: ['over-diameter'],
  },
  {
    source: DEFINITIONS,
    fact: 'a B works at the next level under immediate supervision',
    facts: [holder('B')],
    work: HIGH,
    standing: 'training',
    findings: ['training-only'],
  },
  {
    source: DEFINITIONS,
    fact: 'a B, bucking only, does not fell',
    facts: [holder('B', { workKinds: ['bucking'] })],
    work: FELLING,
    standing: 'none',
    findings: ['no-card'],
  },
  {
    source: 'common practice, no source: a dated training assignment under a named, designated instructor',
    fact: 'that B is in training on the tree of the assignment',
    facts: [
      holder('B', { workKinds: ['bucking'] }),
      sawyer('trainer', 'C', { workKinds: BOTH }),
      {
        items: [item('tree-1', { workKind: 'felling' })],
        designations: [designation('trainer')],
        assignments: [
          assignment('p-1', ['tree-1'], ['trainer'], { firstDay: '2027-07-08', lastDay: '2027-07-08' }),
        ],
      },
    ],
    work: { ...FELLING, item: 'tree-1' },
    standing: 'training',
    findings: ['no-card', 'training-only'],
  },
  {
    source: FROM_MEMORY,
    fact: 'a B fells in moderately complex situations',
    facts: [holder('B')],
    work: { ...FELLING, ...MODERATE },
    standing: 'independent',
    findings: [],
  },
  {
    source: DEFINITIONS,
    fact: 'a C bucks in highly complex situations',
    facts: [holder('C')],
    work: { ...HIGH, diameter: 60 },
    standing: 'independent',
    findings: [],
  },
  {
    source: FROM_MEMORY,
    fact: 'a C fells in highly complex situations',
    facts: [holder('C')],
    work: { ...FELLING, ...HIGH },
    standing: 'independent',
    findings: [],
  },
  {
    source: 'Evaluation forms that separate the two; from memory',
    fact: 'a card for the power saw is none for the crosscut',
    facts: [holder('C', { sawKinds: ['chain-saw'] })],
    standing: 'none',
    findings: ['no-card'],
  },
  {
    source: SCHEME,
    fact: 'a cooperator A works under the immediate supervision of a B or C',
    facts: [
      holder('A', { book: 'cooperator-crosscut', workKinds: ['bucking'] }),
      { book: 'cooperator-crosscut' },
    ],
    standing: 'own-level',
    findings: ['needs-supervisor'],
  },
  {
    source: SCHEME,
    fact: 'the cooperator scheme issues no felling',
    facts: [holder('C', { book: 'cooperator-crosscut' }), { book: 'cooperator-crosscut' }],
    work: FELLING,
    standing: 'none',
    findings: ['book-does-not-recognise'],
  },
]

describe('levels', () => {
  it.each(LEVELS)('$source: $fact', expectPublished)
})
