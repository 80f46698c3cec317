import { describe, expect, it } from 'vitest'
import type { Answer, Finding } from '../../lib/core/authority/answer.ts'
import { dateOf } from '../../lib/core/calendar/dates.ts'
import type { Standing } from '../../lib/core/rulebooks/standing.ts'
import { statusOfAnswer, statusOfDays, statusOfFinding } from '../../lib/drawings/status.ts'

const day = dateOf
const TODAY = day('2027-05-03')

describe('the mark of something with a first and a last day', () => {
  it.each([
    ['neither day', undefined, undefined, 'not-on-record'],
    ['begins tomorrow', '2027-05-04', '2028-05-03', 'not-yet'],
    ['begins today', '2027-05-03', '2028-05-03', 'current'],
    ['ended yesterday', '2024-05-03', '2027-05-02', 'lapsed'],
    ['its last day is today', '2024-05-03', '2027-05-03', 'lapses-soon'],
    ['sixty days ahead', '2024-05-03', '2027-07-02', 'lapses-soon'],
    ['sixty-one days ahead', '2024-05-03', '2027-07-03', 'current'],
    ['no last day', '2024-05-03', undefined, 'current'],
  ] as const)('%s', (_name, first, last, status) => {
    const days = [first, last].map((text) => (text === undefined ? undefined : day(text)))
    expect(statusOfDays(days[0], days[1], TODAY)).toBe(status)
  })
})

const finding = (kind: string, more: object = {}) =>
  ({ kind, allows: 'none', records: [], ...more }) as unknown as Finding

/** An answer about 8 to 15 July. */
function answer(
  standing: Standing,
  holdsThrough: string,
  findings: readonly Finding[] = [],
  opens: Standing = standing,
): Pick<Answer, 'standing' | 'spans' | 'holdsThrough' | 'findings'> {
  const spans = [
    { first: day('2027-07-08'), last: day('2027-07-11'), standing: opens, findings: [] },
    { first: day('2027-07-12'), last: day('2027-07-15'), standing, findings },
  ]
  return {
    standing,
    spans,
    holdsThrough: holdsThrough === 'open' ? 'open' : day(holdsThrough),
    findings,
  }
}

describe('the mark of an answer', () => {
  it.each([
    ['holds with no end', answer('independent', 'open'), 'current'],
    ['holds well beyond', answer('own-level', '2027-09-26'), 'current'],
    ['holds through the last day asked', answer('independent', '2027-07-15'), 'lapses-soon'],
    ['holds a day more, over sixty days from today', answer('independent', '2027-07-16'), 'current'],
    ['is not on record', answer('unknown', 'open'), 'not-on-record'],
    ['is on their own at first and no later', answer('none', '2027-07-11', [], 'independent'), 'lapses-soon'],
    [
      'is suspended',
      answer('none', 'open', [finding('certificate-lapsed'), finding('suspended')]),
      'suspended',
    ],
    ['has lapsed', answer('none', 'open', [finding('certificate-lapsed')]), 'lapsed'],
    [
      'has an agreement that ended',
      answer('none', 'open', [finding('no-agreement', { says: 'ended' })]),
      'lapsed',
    ],
    [
      'has an agreement to come',
      answer('none', 'open', [finding('no-agreement', { says: 'not-begun' })]),
      'not-yet',
    ],
    [
      'has no card, whatever else lapsed',
      answer('none', 'open', [finding('no-card'), finding('certificate-lapsed')]),
      'not-yet',
    ],
    ['has no card', answer('none', 'open', [finding('no-card')]), 'not-yet'],
  ] as const)('that %s', (_name, given, status) => {
    expect(statusOfAnswer(given, day('2027-07-15'), TODAY)).toBe(status)
  })

  it('a reason that leaves it unknown is not on record, and others say what they are', () => {
    expect(statusOfFinding(finding('certificate-lapsed', { allows: 'unknown' }))).toBe('not-on-record')
    expect(statusOfFinding(finding('suspended'))).toBe('suspended')
    expect(statusOfFinding(finding('card-no-longer-valid'))).toBe('lapsed')
    expect(statusOfFinding(finding('level-too-low'))).toBe('not-yet')
  })
})
