import { describe, expect, it } from 'vitest'
import { card } from '../builders/cards.ts'
import { adult, certificate, designation } from '../builders/people.ts'
import type { Part } from '../builders/records.ts'
import type { WorkSaid } from '../builders/work.ts'
import { expectPublished, supervisorsOf, type AuthorityRow } from './authority-row.ts'

type CardSaid = NonNullable<Parameters<typeof card>[2]>

const BOTH: ('bucking' | 'felling')[] = ['bucking', 'felling']
const DEFINITIONS = 'FSM 2358.05 (2016), definitions'
const POSITIONS = 'National Wildfire Coordinating Group position descriptions'

function sawyer(id: string, level: string, said: CardSaid = {}): Part {
  return adult(id, { cards: [card(id, level, said)] })
}
const holder = (level: string, said: CardSaid = {}): Part =>
  sawyer('p-1', level, { workKinds: BOTH, ...said })

const HIGH: WorkSaid = { complexity: 'high' }
const MODERATE: WorkSaid = { complexity: 'moderate' }
const FELLING: WorkSaid = { workKind: 'felling' }

const refresher = (said: Parameters<typeof certificate>[2] = {}): Part => ({
  book: 'interagency-faller',
  certificates: [certificate('p-1', 'annual-refresher', said)],
})
const faller = (level: string, said: Parameters<typeof certificate>[2] = {}): Part[] => [
  holder(level, { book: 'interagency-faller', sawKinds: ['chain-saw'] }),
  refresher(said),
]
const power = (complexity: 'least' | 'moderate' | 'high'): WorkSaid => ({
  ...FELLING,
  sawKind: 'chain-saw',
  complexity,
})

const FALLERS: AuthorityRow[] = [
  {
    source: `${POSITIONS}, FAL3`,
    fact: 'low complexity, closely supervised',
    facts: faller('basic'),
    work: power('least'),
    standing: 'own-level',
    findings: ['needs-supervisor'],
  },
  {
    source: `${POSITIONS}, FAL3`,
    fact: 'the tasks of the next under direct supervision',
    facts: faller('basic'),
    work: power('moderate'),
    standing: 'own-level',
    findings: ['needs-supervisor'],
  },
  {
    source: `${POSITIONS}, FAL3`,
    fact: 'nothing of high complexity',
    facts: faller('basic'),
    work: power('high'),
    standing: 'none',
    findings: ['level-too-low'],
  },
  {
    source: `${POSITIONS}, FAL2`,
    fact: 'low to moderate complexity, unsupervised',
    facts: faller('intermediate'),
    work: power('moderate'),
    standing: 'independent',
    findings: [],
  },
  {
    source: `${POSITIONS}, FAL2`,
    fact: 'the tasks of the next under direct supervision',
    facts: faller('intermediate'),
    work: power('high'),
    standing: 'training',
    findings: ['training-only'],
  },
  {
    source: `${POSITIONS}, FAL1: from memory`,
    fact: 'high complexity, unsupervised',
    facts: faller('advanced'),
    work: power('high'),
    standing: 'independent',
    findings: [],
  },
  {
    source: `${POSITIONS}, FAL3: RT-130 every year`,
    fact: 'the refresher lapsed the day before',
    facts: faller('advanced', { lastDay: '2027-07-07' }),
    work: power('least'),
    standing: 'none',
    findings: ['certificate-lapsed'],
  },
  {
    source: `${POSITIONS}: no crosscut saw`,
    fact: 'a crosscut question under that book',
    facts: [...faller('advanced'), holder('C')],
    work: FELLING,
    standing: 'none',
    findings: ['book-does-not-recognise'],
  },
]

const REGULATION: AuthorityRow[] = [
  {
    source: '29 CFR 1910.266(i)(6), from memory',
    fact: 'somebody newly trained works under close supervision',
    facts: [holder('trainee')],
    standing: 'training',
    findings: ['training-only'],
  },
  {
    source: '29 CFR 1910.266(i)(7)',
    fact: 'first aid is kept current: on its last day',
    facts: [
      adult('p-1', {
        certificates: [certificate('p-1', 'first-aid', { lastDay: '2027-07-08' }), certificate('p-1', 'cpr')],
        cards: [card('p-1', 'B')],
      }),
    ],
    standing: 'independent',
    findings: [],
  },
  {
    source: '29 CFR 1910.266(i)(7)',
    fact: 'first aid that lapsed yesterday',
    facts: [
      adult('p-1', {
        certificates: [certificate('p-1', 'first-aid', { lastDay: '2027-07-07' }), certificate('p-1', 'cpr')],
        cards: [card('p-1', 'B')],
      }),
    ],
    standing: 'none',
    findings: ['certificate-lapsed'],
  },
  {
    source: '29 CFR 1910.266(i)(7); FSM 2358',
    fact: 'card valid, CPR lapsed yesterday',
    facts: [
      adult('p-1', {
        certificates: [certificate('p-1', 'first-aid'), certificate('p-1', 'cpr', { lastDay: '2027-07-07' })],
        cards: [card('p-1', 'B')],
      }),
    ],
    standing: 'none',
    findings: ['certificate-lapsed'],
  },
  {
    source: '29 CFR 1910.266(i)(2)(ii)',
    fact: 'work of a new kind wants training first: felling for who only bucks',
    facts: [holder('C', { workKinds: ['bucking'] })],
    work: FELLING,
    standing: 'none',
    findings: ['no-card'],
  },
]

describe('power saw fallers', () => {
  it.each(FALLERS)('$source: $fact', expectPublished)
})
describe('the logging standard: what of it is a rule for people', () => {
  it.each(REGULATION)('$source: $fact', expectPublished)
})

const a = sawyer('a', 'A')
const lapsedB = adult('b', {
  certificates: [certificate('b', 'first-aid'), certificate('b', 'cpr', { lastDay: '2027-07-07' })],
  cards: [card('b', 'B')],
})
const trainee = sawyer('t', 'trainee')
const instructor: Part = { designations: [designation('b', { level: 'B' })] }

const SUPERVISORS = [
  {
    source: DEFINITIONS,
    fact: 'an A under a B',
    facts: [a, sawyer('b', 'B')],
    work: {},
    learner: 'a',
    may: ['b'],
  },
  {
    source: DEFINITIONS,
    fact: 'an A under a C',
    facts: [a, sawyer('b', 'C')],
    work: {},
    learner: 'a',
    may: ['b'],
  },
  {
    source: DEFINITIONS,
    fact: 'not an A under another A',
    facts: [a, sawyer('b', 'A')],
    work: {},
    learner: 'a',
    may: [],
  },
  {
    source: DEFINITIONS,
    fact: 'by somebody qualified for that work: a B for bucking alone does not supervise felling',
    facts: [sawyer('a', 'A', { workKinds: BOTH }), sawyer('b', 'B')],
    work: FELLING,
    learner: 'a',
    may: [],
  },
  {
    source: 'FSM 2358.05, training with approval, from memory',
    fact: 'an A in training under a B who is designated',
    facts: [a, sawyer('b', 'B'), instructor],
    work: MODERATE,
    learner: 'a',
    may: ['b'],
  },
  {
    source: 'FSM 2358.05, training with approval, from memory',
    fact: 'and not under one who is not',
    facts: [a, sawyer('b', 'B')],
    work: MODERATE,
    learner: 'a',
    may: [],
  },
  {
    source: DEFINITIONS,
    fact: 'a B at the next level under a C',
    facts: [sawyer('a', 'B'), sawyer('b', 'C'), { designations: [designation('b')] }],
    work: HIGH,
    learner: 'a',
    may: ['b'],
  },
  {
    source: DEFINITIONS,
    fact: 'and not under another B',
    facts: [sawyer('a', 'B'), sawyer('b', 'B'), { designations: [designation('b')] }],
    work: HIGH,
    learner: 'a',
    may: [],
  },
  {
    source: '29 CFR 1910.266(i)(8), a designated person, from memory',
    fact: 'a trainee under a designated B',
    facts: [trainee, sawyer('b', 'B'), instructor],
    work: {},
    learner: 't',
    may: ['b'],
  },
  {
    source: '29 CFR 1910.266(i)(7), supervisors included',
    fact: 'not under a B whose CPR has lapsed',
    facts: [a, lapsedB],
    work: {},
    learner: 'a',
    may: [],
  },
]

describe('who may supervise', () => {
  it.each(SUPERVISORS)('$source: $fact', ({ facts, work, learner, may }) => {
    const found = supervisorsOf(facts, [learner, 'b'], work)
    expect(found.may[learner]).toEqual(may)
    expect(found.feasible).toBe(may.length > 0)
  })
})
