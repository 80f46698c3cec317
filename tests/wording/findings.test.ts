import { describe, expect, it } from 'vitest'
import type { Finding, FindingFigures, FindingKind } from '../../lib/core/authority/answer.ts'
import { dateOf } from '../../lib/core/calendar/dates.ts'
import type { Inches } from '../../lib/core/kernel/measures.ts'
import { endedByText } from '../../lib/wording/ended.ts'
import { findingSentence } from '../../lib/wording/findings.ts'
import { expectSays, expectSentence, RULE, someNames } from './sentence-checks.ts'

type Sample<Kind extends FindingKind> = [
  figures: Omit<Extract<FindingFigures, { kind: Kind }>, 'kind'>,
  ...words: string[],
]

const last = dateOf('2027-07-11')

/** At least one sample of every kind: a kind without one does not compile. */
const SAMPLES: { [Kind in FindingKind]: [Sample<Kind>, ...Sample<Kind>[]] } = {
  'no-card': [[{ workKind: 'felling', sawKind: 'crosscut' }, 'felling', 'crosscut']],
  'book-does-not-recognise': [[{ book: 'cooperator-crosscut', level: 'B' }, 'B card', 'ooperator']],
  'level-too-low': [
    [{ level: 'A', complexity: 'high' }, 'Level A', 'highly complex'],
    [{ level: 'A', complexity: 'not-rated' }, 'Level A'],
  ],
  'training-only': [
    [{ level: 'A', supervisor: 'B' }, 'Level A', 'training', 'a B or C', 'designated'],
    [{ trainers: ['p-1', 'p-4'] }, 'training assignment', 'Ada Brandt or Cy Orrin'],
  ],
  'needs-supervisor': [
    [{ supervisor: 'B' }, 'supervisor', 'a B or C'],
    [{}, 'somebody on their own'],
  ],
  'complexity-unrated': [[{}, 'rated']],
  'card-not-yet-valid': [[{ firstDay: dateOf('2027-05-03') }, '3 May 2027']],
  'card-no-longer-valid': [
    [{ lastDay: last }, 'last day', '11 July 2027'],
    [{ lastDay: last, ended: 'withdrawn' }, 'withdrawn', '11 July 2027'],
  ],
  'over-diameter': [[{ limit: 24 as Inches, diameter: 24.0625 as Inches }, '24 in', '24 1/16 in']],
  'outside-places': [
    [{ places: ['north-end', 'south-end'] }, 'North End and South End'],
    [{ places: [] }, 'names none'],
  ],
  'outside-species': [
    [{ allowed: ['tall fir', 'red pine', 'oak'] }, 'tall fir, red pine and oak'],
    [{ allowed: [] }, 'names none'],
  ],
  'above-greatest-complexity': [
    [{ limit: 'moderate', complexity: 'high' }, 'least or moderately complex', 'highly complex'],
  ],
  'double-bucking-only': [[{}, 'double bucking', 'one-person']],
  'no-felling': [[{}, 'no felling']],
  'words-unresolved': [[{ text: 'not on ice' }, '“not on ice”', 'certifying official']],
  'certificate-not-on-record': [[{ subject: 'first-aid' }, 'first aid']],
  'certificate-lapsed': [[{ subject: 'cpr', lastDay: last }, 'CPR', '11 July 2027']],
  'certificate-not-seen': [[{ subject: 'cpr' }, 'CPR', 'seen']],
  'certificate-delivery': [[{ subject: 'first-aid' }, 'First aid', 'online only']],
  suspended: [
    [
      { form: 'suspension', because: 'incident', notice: 'before' },
      'suspension',
      'incident',
      'before notice',
    ],
    [
      { form: 'stand-down', because: 'unsafe-act', notice: 'after' },
      'stand-down',
      'unsafe act',
      'had reached',
    ],
    [{ form: 'stand-down', because: 'competence', notice: 'not-recorded' }, 'competence', 'not on record'],
    [{ form: 'suspension', because: 'administrative', notice: 'after' }, 'administrative'],
  ],
  'under-age': [
    [{ years: 16 }, '16'],
    [{ years: 18, capacity: 'volunteer' }, '18', 'a volunteer'],
    [{ years: 18, capacity: 'not-stated' }, '18', 'not stated'],
  ],
  'guardian-permission-missing': [
    [{ says: 'not-on-record' }, 'guardian', 'on record'],
    [{ says: 'ended', day: dateOf('2027-07-08') }, 'guardian', 'good through 8 July 2027'],
    [{ says: 'refused' }, 'refused'],
    [{ says: 'withdrawn' }, 'withdrawn'],
  ],
  'no-agreement': [
    [{ says: 'not-on-record' }, 'not on record'],
    [{ says: 'no-last-day', day: last }, '11 July 2027', 'last day'],
    [{ says: 'no-last-day' }, 'last day'],
    [{ says: 'ended', day: last }, '11 July 2027'],
    [{ says: 'ended' }, 'ended'],
    [{ says: 'not-begun', day: last }, '11 July 2027'],
    [{ says: 'not-begun' }, 'begun'],
  ],
  'outside-book': [[{ capacity: 'contractor' }, 'a contractor']],
  'not-on-record': [
    [{ what: 'age' }, 'age'],
    [{ what: 'capacity' }, 'capacity', 'a volunteer', 'a contractor'],
    [{ what: 'last-day' }, 'last day'],
    [{ what: 'work-kinds' }, 'kinds of work'],
    [{ what: 'hands' }, 'one or two people'],
    [{ what: 'species' }, 'species'],
    [{ what: 'place' }, 'places'],
  ],
  'no-edition': [[{ book: 'federal-crosscut' }, 'Federal crosscut book']],
  'rule-failed': [[{ says: 'the table is empty' }, RULE.rule, 'the table is empty']],
}

const names = someNames()
const samples = Object.entries(SAMPLES).flatMap(([kind, ofKind]) =>
  ofKind.map(([figures, ...words]) => ({
    kind,
    words,
    finding: { kind, rule: RULE, records: ['card-p-1'], allows: 'none', ...figures } as unknown as Finding,
  })),
)

describe('findings', () => {
  it.each(samples)('[WO1] [WO8] $kind says $words', ({ finding, words }) => {
    expectSays(findingSentence(finding, names), ...words)
  })

  it('[WO9] a finding names the place, and an id that nobody knows as it is', () => {
    const finding: Finding = {
      kind: 'outside-places',
      places: ['north-end', 'nowhere'],
      rule: RULE,
      records: [],
      allows: 'none',
    }
    const sentence = findingSentence(finding, names)
    expect(sentence).toContain('North End and nowhere')
    expect(sentence).not.toContain('north-end')
  })
})

describe('what ends a run', () => {
  const came: Finding = {
    kind: 'certificate-lapsed',
    subject: 'cpr',
    lastDay: last,
    rule: RULE,
    records: [],
    allows: 'none',
  }
  const day = dateOf('2027-07-12')

  it('[WO12] says the day, the standing then, and the reason that came', () => {
    const text = endedByText({ day, standing: 'none', came: [came], went: [] }, names)
    expect(text).toBe('From 12 July 2027: no. The last day of CPR is 11 July 2027.')
  })

  it('[WO12] says what stood in the way until then, where nothing came', () => {
    const text = endedByText({ day, standing: 'independent', came: [], went: [came] }, names)
    expect(text).toContain('From 12 July 2027: on their own. Until then: The last day of CPR')
  })

  it('[WO12] is whole where neither came nor went', () => {
    expectSentence(endedByText({ day, standing: 'unknown', came: [], went: [] }, names))
  })
})
