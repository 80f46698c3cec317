import { describe, expect, it } from 'vitest'
import type { Card } from '../../../lib/core/cards/cards.schema.ts'
import type { Standing } from '../../../lib/core/rulebooks/standing.ts'
import type { Complexity } from '../../../lib/core/rulebooks/words.ts'
import { card, suspension } from '../../builders/cards.ts'
import { adult, certificate, membership, person } from '../../builders/people.ts'
import { answerTo, expectRow, toldOf, type Row } from './told.ts'

const NO_CARD = 'no-card sawKind=crosscut workKind=bucking | card.needed | none'
const UNDER_B = 'needs-supervisor supervisor=B | grant.bucking.A | own-level'
const over = (limit: number, diameter: number) =>
  `over-diameter diameter=${diameter} limit=${limit} | restriction | none`
const words = (text: string) => `words-unresolved text=${text} | restriction.words | unknown`
const width = (inches: number) => ({ id: `width-${inches}`, kind: 'greatest-diameter' as const, inches })
const spoken = (text: string) => ({ id: 'spoken', kind: 'words' as const, text })

describe('worst within, best across', () => {
  const rows: Row[] = [
    {
      name: 'unknown is worse than supervised within one card',
      facts: [adult('p-1', { cards: [card('p-1', 'A', { restrictions: [spoken('ask first')] })] })],
      standing: 'unknown',
      findings: [UNDER_B, words('ask first')],
    },
    {
      name: 'none is worse than unknown within one card',
      facts: [
        adult('p-1', { cards: [card('p-1', 'B', { restrictions: [spoken('ask first'), width(18)] })] }),
      ],
      standing: 'none',
      findings: [over(18, 20), words('ask first')],
    },
    {
      name: "the person's rules bind every card",
      facts: [adult('p-1', { certificates: [certificate('p-1', 'first-aid')], cards: [card('p-1', 'C')] })],
      standing: 'unknown',
      findings: ['certificate-not-on-record subject=cpr | certificate.cpr | unknown'],
    },
    {
      name: 'the level of one card and the width of another give nothing together',
      facts: [
        adult('p-1', {
          cards: [
            card('p-1', 'C', { id: 'narrow', number: 'N-1', restrictions: [width(18)] }),
            card('p-1', 'A', { id: 'wide', number: 'N-2' }),
          ],
        }),
      ],
      work: { complexity: 'high' },
      standing: 'none',
      findings: [over(18, 20)],
    },
    {
      name: 'the better of two cards speaks',
      facts: [
        adult('p-1', {
          cards: [
            card('p-1', 'A', { id: 'low', number: 'N-1' }),
            card('p-1', 'B', { id: 'more', number: 'N-2' }),
          ],
        }),
      ],
      standing: 'independent',
      findings: [],
    },
  ]

  it.each(rows)('[AU1] $name', expectRow)

  it('[AU2] a card without a last day does not spoil a lesser card in force', () => {
    const { lastDay: _lastDay, ...endless } = card('p-1', 'B', { id: 'endless', number: 'N-1' })
    expectRow({
      name: 'endless B, A in force',
      facts: [adult('p-1', { cards: [endless, card('p-1', 'A', { id: 'low', number: 'N-2' })] })],
      standing: 'own-level',
      findings: [UNDER_B],
    })
    expectRow({
      name: 'endless B alone',
      facts: [adult('p-1', { cards: [endless] })],
      standing: 'unknown',
      findings: ['not-on-record what=last-day | card.days | unknown'],
    })
  })
})

describe('all findings', () => {
  it('[AU3] whatever the standing, every requirement that is not shown to be met is told', () => {
    expectRow({
      name: 'stood down, CPR missing, level A',
      facts: [
        adult('p-1', {
          certificates: [certificate('p-1', 'first-aid')],
          cards: [card('p-1', 'A')],
          suspensions: [suspension('stop', { firstDay: '2027-07-01' })],
        }),
      ],
      standing: 'none',
      findings: [
        'certificate-not-on-record subject=cpr | certificate.cpr | unknown',
        UNDER_B,
        'suspended because=unsafe-act form=stand-down notice=not-recorded | suspension | none',
      ],
    })
  })

  it('[AU3] equal findings stand once, with the records of all', () => {
    const stops = ['stop-b', 'stop-a'].map((id) => suspension(id, { firstDay: '2027-07-01' }))
    const answer = answerTo({ facts: [adult('p-1', { cards: [card('p-1', 'B')], suspensions: stops })] })
    expect(toldOf(answer)).toEqual([
      'suspended because=unsafe-act form=stand-down notice=not-recorded | suspension | none',
    ])
    expect(answer.findings[0]?.records).toEqual(['stop-a', 'stop-b'])
  })

  it('[AU3] the same kind by two rules stands twice', () => {
    expectRow({
      name: 'employee and student of 17',
      facts: [
        adult('p-1', {
          people: [person('p-1', { birthDate: '2010-01-01' })],
          memberships: [
            membership('p-1'),
            membership('p-1', {
              id: 'school',
              capacity: 'student',
              firstDay: '2027-01-01',
              lastDay: '2027-12-31',
            }),
          ],
          cards: [card('p-1', 'B')],
        }),
      ],
      standing: 'none',
      findings: [
        'under-age capacity=employee years=18 | age.employed | none',
        'under-age capacity=student years=18 | age.student | none',
      ],
    })
  })

  it('[AU7] a finding says what it still allows', () => {
    const allowed = (level: string, complexity: 'least' | 'high') =>
      answerTo({ facts: [adult('p-1', { cards: [card('p-1', level)] })], work: { complexity } }).findings.map(
        (finding) => [finding.kind, finding.allows],
      )
    expect(allowed('A', 'least')).toEqual([['needs-supervisor', 'own-level']])
    expect(allowed('B', 'high')).toEqual([['training-only', 'training']])
    expect(allowed('A', 'high')).toEqual([['level-too-low', 'none']])
    expect(answerTo({ facts: [adult('p-1')] }).findings.map((finding) => finding.allows)).toEqual(['none'])
  })
})

type Spoken = {
  name: string
  cards: Card[]
  standing?: Standing
  complexity?: Complexity
  findings: string[]
}

describe('the card that speaks', () => {
  const one = (id: string, level: string, said: Parameters<typeof card>[2] = {}) =>
    card('p-1', level, { id, number: `N-${id}`, ...said })
  const ended = (lastDay: string) => `card-no-longer-valid lastDay=${lastDay} | card.days | none`
  const notYet = (firstDay: string) => `card-not-yet-valid firstDay=${firstDay} | card.days | none`

  it.each<Spoken>([
    {
      name: 'best standing: unknown before none',
      cards: [
        one('a', 'B', { restrictions: [width(18)] }),
        one('b', 'B', { restrictions: [spoken('ask first')] }),
      ],
      standing: 'unknown',
      findings: [words('ask first')],
    },
    {
      name: 'in force before ended',
      cards: [
        one('a', 'C', { lastDay: '2027-07-07' }),
        one('b', 'B', { restrictions: [width(18), width(19)] }),
      ],
      findings: [over(18, 20), over(19, 20)],
    },
    {
      name: 'of ended ones the latest last day',
      cards: [one('a', 'C', { lastDay: '2027-06-30' }), one('b', 'B', { lastDay: '2027-07-07' })],
      findings: [ended('2027-07-07')],
    },
    {
      name: 'ended before not yet valid',
      cards: [one('a', 'C', { effectiveDay: '2027-07-09' }), one('b', 'B', { lastDay: '2026-07-07' })],
      findings: [ended('2026-07-07')],
    },
    {
      name: 'of those not yet valid the earliest',
      cards: [one('a', 'C', { effectiveDay: '2027-07-10' }), one('b', 'B', { effectiveDay: '2027-07-09' })],
      findings: [notYet('2027-07-09')],
    },
    {
      name: 'fewest findings',
      cards: [
        one('a', 'C', { restrictions: [width(17), width(18)] }),
        one('b', 'B', { restrictions: [width(19)] }),
      ],
      findings: [over(19, 20)],
    },
    {
      name: 'higher rank',
      cards: [
        one('a', 'A', { restrictions: [], lastDay: '2029-01-01' }),
        one('b', 'C', { restrictions: [width(18)] }),
      ],
      complexity: 'high',
      findings: [over(18, 20)],
    },
    {
      name: 'later last day',
      cards: [
        one('a', 'B', { restrictions: [width(18)] }),
        one('b', 'B', { restrictions: [width(19)], lastDay: '2028-04-14' }),
      ],
      findings: [over(19, 20)],
    },
    {
      name: 'id',
      cards: [one('b', 'B', { restrictions: [width(18)] }), one('a', 'B', { restrictions: [width(19)] })],
      findings: [over(19, 20)],
    },
  ])('[AU4] $name', ({ cards, standing = 'none', complexity = 'least', findings }) => {
    expectRow({ name: '', facts: [adult('p-1', { cards })], work: { complexity }, standing, findings })
  })

  it.each<Spoken>([
    {
      name: 'an ended bucking card speaks before a felling card in force',
      cards: [one('a', 'C', { workKinds: ['felling'] }), one('b', 'B', { lastDay: '2027-07-07' })],
      findings: [ended('2027-07-07')],
    },
    {
      name: 'a felling card says only that there is no card, whatever else it is',
      cards: [one('a', 'C', { workKinds: ['felling'], restrictions: [width(18)], lastDay: '2027-07-07' })],
      findings: [NO_CARD],
    },
    {
      name: 'a card for the power saw says only that there is no card',
      cards: [one('a', 'C', { sawKinds: ['chain-saw'] })],
      findings: [NO_CARD],
    },
    { name: 'nor does anybody without cards say more', cards: [], findings: [NO_CARD] },
  ])('[AU5] $name', ({ cards, findings }) => {
    expectRow({ name: '', facts: [adult('p-1', { cards })], standing: 'none', findings })
  })
})
