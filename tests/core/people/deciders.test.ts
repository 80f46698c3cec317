import { describe, expect, it } from 'vitest'
import { dateOf } from '../../../lib/core/calendar/dates.ts'
import { mayDecide, type DecisionAsked } from '../../../lib/core/people/deciders.ts'
import { EditionIndex } from '../../../lib/core/rulebooks/edition-index.ts'
import { edition, rule } from '../rulebooks/sample-edition.ts'

const index = (...rules: Record<string, unknown>[]) => new EditionIndex({ recordedIn: 1, ...edition(rules) })
const withRule = index(rule('decider', { taughtWithinMonths: 24 }))

function ask(said: Partial<DecisionAsked> = {}, book = withRule) {
  const asked: DecisionAsked = {
    decider: 'dee',
    candidate: 'cal',
    day: dateOf('2027-05-03'),
    examiners: ['eva'],
    teaching: [],
    conflicts: [],
    ...said,
  }
  return mayDecide(asked, book)
}
const taught = (teacher: string, ...days: string[]) => days.map((day) => ({ teacher, day: dateOf(day) }))
const reasons = (...asked: Parameters<typeof ask>) => {
  const answer = ask(...asked)
  return answer.may ? [] : answer.because.map(({ kind }) => kind)
}

describe('who may decide', () => {
  it('[PE12] somebody who had no part in it: the rule is named', () => {
    const answer = ask({ teaching: taught('tia', '2027-05-01') })
    expect(answer.may && answer.rule.id).toBe('decider')
  })

  it('[PE8] the candidate, and an examiner', () => {
    expect(reasons({ candidate: 'dee' })).toEqual(['decides-on-themselves'])
    expect(reasons({ examiners: ['eva', 'dee'] })).toEqual(['examined'])
  })

  it.each([
    ['2025-05-02', true],
    ['2025-05-03', false],
    ['2027-05-03', false],
    ['2027-05-04', true],
  ])('[PE9] taught on %s, deciding on 2027-05-03 with a window of 24 months', (day, may) => {
    expect(ask({ teaching: taught('dee', day) }).may).toBe(may)
  })

  it('[PE9] the latest day of teaching counts, and is told with the day through which it bars', () => {
    expect(ask({ teaching: taught('dee', '2026-04-01', '2025-06-01', '2020-01-01') })).toEqual({
      may: false,
      because: [{ kind: 'taught', day: '2026-04-01', months: 24, barredThrough: '2028-04-01' }],
    })
  })

  it('[PE10] each conflict declared, and nothing declared', () => {
    const answer = ask({ conflicts: ['household', 'paid'] })
    expect(answer.may ? [] : answer.because).toEqual([
      { kind: 'conflict', conflict: 'household' },
      { kind: 'conflict', conflict: 'paid' },
    ])
    const undeclared = {
      decider: 'dee',
      candidate: 'cal',
      day: dateOf('2027-05-03'),
      examiners: [],
      teaching: [],
    }
    expect(mayDecide(undeclared, withRule)).toEqual({
      may: false,
      because: [{ kind: 'conflicts-not-declared' }],
    })
  })

  it('[PE11] a book without a rule for deciders', () => {
    expect(reasons({}, index())).toEqual(['no-decider-rule'])
  })

  it('[PE12] all reasons at once', () => {
    const all = {
      candidate: 'dee',
      examiners: ['dee'],
      teaching: taught('dee', '2027-01-01'),
      conflicts: ['boss' as const],
    }
    expect(reasons(all)).toEqual(['decides-on-themselves', 'examined', 'taught', 'conflict'])
  })
})
