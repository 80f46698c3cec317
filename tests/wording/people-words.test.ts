import { describe, expect, it } from 'vitest'
import type { EndedBy, Finding } from '../../lib/core/authority/answer.ts'
import { dateOf } from '../../lib/core/calendar/dates.ts'
import type { Instant } from '../../lib/core/calendar/instants.ts'
import type { Complexity } from '../../lib/core/rulebooks/words.ts'
import { ageText } from '../../lib/wording/ages.ts'
import { belongingText } from '../../lib/wording/belonging.ts'
import { heldText } from '../../lib/wording/held.ts'
import type { Names } from '../../lib/wording/names.ts'
import { personSummary, type ToldStratum } from '../../lib/wording/person-summaries.ts'
import {
  complexitiesText,
  dayFromToday,
  lineReasons,
  lineText,
  shortLineTexts,
  type ToldLine,
} from '../../lib/wording/standing-lines.ts'
import { thenSentences } from '../../lib/wording/then.ts'

const TODAY = dateOf('2027-05-03')

const names: Names = {
  person: (id) => `person ${id}`,
  place: () => 'Sable Lake',
  organisation: () => 'Lantern Creek Trail Volunteers',
  book: () => 'Federal book',
  edition: () => 'Edition',
  item: () => 'a log',
  hitch: () => 'a hitch',
  card: () => 'card K-0431',
  subject: (id) => (id === 'cpr' ? 'CPR' : 'first aid'),
  levelsFrom: (_edition, level) => [level],
}

const rule = { edition: 'e', rule: 'r', source: 'FSM 2358', mark: 'published' } as const
const lapsed = (subject: string, lastDay: string): Finding => ({
  kind: 'certificate-lapsed',
  subject,
  lastDay: dateOf(lastDay),
  rule,
  records: [],
  allows: 'none',
})
const suspended: Finding = {
  kind: 'suspended',
  form: 'suspension',
  because: 'incident',
  notice: 'after',
  rule,
  records: [],
  allows: 'none',
}
const supervised: Finding = { kind: 'needs-supervisor', rule, records: [], allows: 'own-level' }

const endedBy = (...came: Finding[]): EndedBy => ({
  day: dateOf('2027-07-12'),
  standing: 'none',
  came,
  went: [],
})

const holds: ToldLine = {
  standing: 'own-level',
  findings: [supervised],
  through: dateOf('2027-07-11'),
  endedBy: endedBy(lapsed('cpr', '2027-07-11'), lapsed('first-aid', '2027-07-11')),
  supervisors: ['B', 'C'],
}
const isSuspended: ToldLine = {
  standing: 'none',
  findings: [suspended, supervised],
  through: 'open',
  supervisors: [],
}
const isLapsed: ToldLine = {
  standing: 'none',
  findings: [lapsed('cpr', '2027-04-30')],
  through: 'open',
  supervisors: [],
  lapsedOn: dateOf('2027-04-30'),
}

describe('a standing for a kind of work', () => {
  it.each([
    ['2027-05-03', '3 May 2027, today'],
    ['2027-05-04', '4 May 2027, in 1 day'],
    ['2027-07-11', '11 July 2027, in 69 days'],
    ['2028-05-03', '3 May 2028, in 366 days'],
    ['2028-05-04', '4 May 2028'],
    ['2027-05-02', '2 May 2027'],
  ])('[WO21] the day %s is said with the time left, where that is worth counting', (day, said) => {
    expect(dayFromToday(dateOf(day), TODAY)).toBe(said)
  })

  it('[WO21] as of another day nothing is counted from today', () => {
    expect(dayFromToday(dateOf('2027-07-11'), undefined)).toBe('11 July 2027')
    const now = { n: 61, statedAt: '2027-04-14T16:40:00.000Z' as Instant, day: TODAY, today: TODAY }
    expect(thenSentences({ ...now, knownThen: false })).toEqual([])
    expect(thenSentences({ ...now, knownThen: true, day: dateOf('2027-01-20') })).toEqual([
      'This is as known at entry 61, of 14 April 2027, 16:40 UTC. What was recorded later is left out.',
      'It is told as of 20 January 2027, which is past.',
    ])
  })

  it.each([
    [['least'], 'least complex'],
    [['least', 'moderate'], 'least and moderately complex'],
    [['high'], 'highly complex'],
    [['least', 'moderate', 'high'], 'however complex'],
  ] as [Complexity[], string][])('[WO21] %o is said as %s', (complexities, said) => {
    expect(complexitiesText(complexities)).toBe(said)
  })

  it('[WO21] what holds says through which day, and what ends it', () => {
    expect(lineText(holds, TODAY)).toBe('under a B or C, through 11 July 2027, in 69 days')
    expect(lineReasons(holds, names)).toEqual([
      'The last day of CPR is 11 July 2027.',
      'The last day of first aid is 11 July 2027.',
    ])
    expect(shortLineTexts(holds, 'least', TODAY, names)).toEqual([
      'Under a B or C, least complex only.',
      'Through 11 July 2027, in 69 days: CPR and first aid.',
    ])
    expect(shortLineTexts({ ...holds, through: 'open' }, 'high', TODAY, names)).toEqual([
      'Under a B or C, however complex.',
      'No end on record.',
    ])
  })

  it('[WO21] a no says why, and only what makes it a no', () => {
    expect(lineText(isSuspended, TODAY)).toBe('no')
    expect(lineReasons(isSuspended, names)).toEqual([
      'A suspension (an incident) covers these days; notice of it had reached them.',
    ])
    expect(lineText(isLapsed, TODAY)).toBe('no, since 1 May 2027')
    expect(shortLineTexts(isLapsed, 'least', TODAY, names)).toEqual(['The last day of CPR is 30 April 2027.'])
  })

  it('[WO21] a no that ends by itself says until when', () => {
    const until: ToldLine = {
      ...isSuspended,
      through: dateOf('2027-06-30'),
      endedBy: { day: dateOf('2027-07-01'), standing: 'independent', came: [], went: [suspended] },
    }
    expect(lineText(until, TODAY)).toBe('no, until 30 June 2027')
    expect(shortLineTexts(until, 'least', TODAY, names)[0]).toBe('No until 30 June 2027.')
  })

  it('[WO21] kinds that stand alike are said together, and others apart', () => {
    const stratum = (workKind: 'bucking' | 'felling', line: ToldLine): ToldStratum => ({
      ...line,
      work: { workKind, sawKind: 'crosscut' },
      complexities: ['least'],
    })
    expect(personSummary([stratum('bucking', isLapsed), stratum('felling', isLapsed)], TODAY, names)).toEqual(
      ['Bucking and felling: no, since 1 May 2027. The last day of CPR is 30 April 2027.'],
    )
    const apart = personSummary([stratum('bucking', holds), stratum('felling', isLapsed)], TODAY, names)
    expect(apart).toHaveLength(2)
    expect(apart[0]).toMatch(/^Bucking, least complex: under a B or C, through 11 July 2027, in 69 days\. /)
  })

  it('[WO21] of the strata of a kind the best is said', () => {
    const strata: ToldStratum[] = [
      { ...isLapsed, work: { workKind: 'bucking', sawKind: 'crosscut' }, complexities: ['high'] },
      { ...holds, work: { workKind: 'bucking', sawKind: 'crosscut' }, complexities: ['least'] },
    ]
    expect(personSummary(strata, TODAY, names)).toEqual([
      expect.stringMatching(/^Bucking, least complex: under/),
    ])
  })
})

describe('what is on record about a person', () => {
  it.each([
    [{ kind: 'card', card: 'k' }, 'card K-0431'],
    [{ kind: 'certificate', subject: 'cpr' }, 'CPR'],
    [{ kind: 'agreement', organisation: 'o' }, 'agreement with Lantern Creek Trail Volunteers'],
    [{ kind: 'designation', role: 'evaluator' }, 'designation as evaluator'],
    [{ kind: 'permission' }, 'guardian’s permission'],
    [{ kind: 'suspension', suspension: 's' }, 'suspension or stand-down'],
  ] as const)('[WO22] %o is called %s', (held, said) => {
    expect(heldText(held, names)).toBe(said)
  })

  it.each([
    [{ kind: 'born', day: dateOf('2010-10-03') }, 'born 3 October 2010'],
    [{ kind: 'of-age-from', day: dateOf('2028-10-03') }, 'of age from 3 October 2028'],
    [
      { kind: 'of-age-from', day: dateOf('2028-10-03'), attestedBy: 'the corps' },
      'of age from 3 October 2028, attested by the corps',
    ],
    [{ kind: 'of-age' }, 'of age'],
    [{ kind: 'not-on-record' }, 'age not on record'],
  ] as const)('[WO22] an age %o is said as %s', (age, said) => {
    expect(ageText(age)).toBe(said)
  })

  it('[WO22] a membership says with whom and, where it is stated, where', () => {
    const membership = {
      id: 'm',
      recordedIn: 1,
      person: 'p',
      organisation: 'o',
      capacity: 'volunteer' as const,
    }
    expect(belongingText(membership, names)).toBe('with Lantern Creek Trail Volunteers')
    expect(belongingText({ ...membership, unit: 'sable-lake' }, names)).toBe(
      'with Lantern Creek Trail Volunteers, at Sable Lake',
    )
  })
})
