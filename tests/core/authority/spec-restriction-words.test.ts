import { describe, it } from 'vitest'
import { card, resolution } from '../../builders/cards.ts'
import { adult } from '../../builders/people.ts'
import type { Part } from '../../builders/records.ts'
import { item, rating } from '../../builders/work.ts'
import { expectRow, type Row } from './told.ts'

type Restriction = NonNullable<NonNullable<Parameters<typeof card>[2]>['restrictions']>[number]

const SIXTEENTH = 0.0625
const BOTH: ('bucking' | 'felling')[] = ['bucking', 'felling']

function holder(level: string, restrictions: Restriction[]): Part {
  return adult('p-1', { cards: [card('p-1', level, { workKinds: BOTH, restrictions })] })
}

const over = (limit: number, diameter: number) =>
  `over-diameter diameter=${diameter} limit=${limit} | restriction | none`
const most = (complexity: 'least' | 'moderate'): Restriction => ({
  id: 'most',
  kind: 'greatest-complexity',
  complexity,
})
const spoken = (text: string, workKinds?: typeof BOTH): Restriction => ({
  id: 'spoken',
  kind: 'words',
  text,
  ...(workKinds === undefined ? {} : { workKinds }),
})

describe('free text', () => {
  const text = 'no steep ground'
  const unresolved = `words-unresolved text=${text} | restriction.words | unknown`
  const resolved = (into: Parameters<typeof resolution>[2]): Part => ({
    resolutions: [resolution('card-p-1', 'spoken', into)],
  })
  const facts = (said: Restriction, ...parts: Part[]): Part[] => [holder('B', [said]), ...parts]
  const rows: Row[] = [
    { name: 'unresolved', facts: facts(spoken(text)), standing: 'unknown', findings: [unresolved] },
    {
      name: 'unresolved, about felling, asked for bucking',
      facts: facts(spoken(text, ['felling'])),
      standing: 'independent',
      findings: [],
    },
    {
      name: 'unresolved, about felling, asked for felling',
      facts: facts(spoken(text, ['felling'])),
      work: { workKind: 'felling' },
      standing: 'unknown',
      findings: [unresolved],
    },
    {
      name: 'found to restrict nothing',
      facts: facts(spoken(text), resolved({ into: [] })),
      standing: 'independent',
      findings: [],
    },
    {
      name: 'found to mean a width: at the limit',
      facts: facts(spoken(text), resolved({ into: [{ id: 'w', kind: 'greatest-diameter', inches: 20 }] })),
      standing: 'independent',
      findings: [],
    },
    {
      name: 'found to mean a width: a sixteenth over',
      facts: facts(
        spoken(text),
        resolved({ into: [{ id: 'w', kind: 'greatest-diameter', inches: 20 - SIXTEENTH }] }),
      ),
      standing: 'none',
      findings: [over(20 - SIXTEENTH, 20)],
    },
  ]
  it.each(rows)('[AU33] $name', expectRow)
})

describe('the greatest complexity of a card', () => {
  const rater = adult('rater', { cards: [card('rater', 'C')] })
  const told: Part = {
    items: [item('log-1')],
    ratings: [rating('log-1', 'least', 'rater', '2027-07-01', { how: 'told' })],
  }
  const above = 'above-greatest-complexity complexity=moderate limit=least | restriction | none'
  const rows: Row[] = [
    {
      name: 'at the limit',
      facts: [holder('B', [most('moderate')])],
      work: { complexity: 'moderate' },
      standing: 'independent',
      findings: [],
    },
    {
      name: 'above',
      facts: [holder('B', [most('least')])],
      work: { complexity: 'moderate' },
      standing: 'none',
      findings: [above],
    },
    {
      name: 'what the item is planned as counts, and not what it was rated',
      facts: [rater, told, holder('B', [most('least')])],
      work: { item: 'log-1', notStated: ['complexity'] },
      standing: 'none',
      findings: [above],
    },
    {
      name: 'an unrated item is not judged by it',
      facts: [holder('B', [most('least')])],
      work: { complexity: 'not-rated' },
      standing: 'unknown',
      findings: ['complexity-unrated | complexity.rated | unknown'],
    },
  ]
  it.each(rows)('[AU34] $name', expectRow)
})
