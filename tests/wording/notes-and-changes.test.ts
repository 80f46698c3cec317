import { describe, expect, it } from 'vitest'
import type {
  Change,
  Met,
  MissingFact,
  Note,
  NoteFigures,
  NoteKind,
  RecordedFact,
} from '../../lib/core/authority/answer.ts'
import { dateOf } from '../../lib/core/calendar/dates.ts'
import { apartPhrases, changePhrase, changeSetPhrase, NO_SET } from '../../lib/wording/changes.ts'
import { metSentence } from '../../lib/wording/met.ts'
import { noteDaysText, noteSentence } from '../../lib/wording/notes.ts'
import { expectSays, expectSentence, RULE, someNames } from './sentence-checks.ts'

const names = someNames()
const day = dateOf('2027-07-11')
const days = [
  { first: dateOf('2027-07-08'), last: dateOf('2027-07-08') },
  { first: dateOf('2027-07-10'), last: dateOf('2027-07-12') },
]

type NoteSample<Kind extends NoteKind> = [Omit<Extract<NoteFigures, { kind: Kind }>, 'kind'>, ...string[]]

const NOTES: { [Kind in NoteKind]: [NoteSample<Kind>, ...NoteSample<Kind>[]] } = {
  'rule-not-confirmed': [[{}, RULE.rule, 'memory']],
  'sources-disagree': [
    [{ other: 'two and a half lengths' }, RULE.rule, 'two and a half lengths.'],
    [{ other: 'Two lengths.' }, 'Two lengths.'],
  ],
  'valid-only-by-a-later-order': [
    [
      { effectiveDay: dateOf('2021-10-08'), runsTo: dateOf('2022-12-31') },
      '8 October 2021',
      '31 December 2022',
    ],
  ],
  'successor-not-held': [
    [{ name: 'A later text', day: dateOf('2023-03-06') }, 'A later text', '6 March 2023'],
  ],
  'delivery-not-stated': [[{ subject: 'cpr' }, 'CPR']],
  'longer-than-term': [
    [{ lastDay: day, termLastDay: dateOf('2027-04-13') }, '11 July 2027', '13 April 2027'],
  ],
  'rating-provisional': [
    [
      { because: ['photo'], rated: 'least', planned: 'moderate' },
      'photo',
      'least complex',
      'moderately complex',
    ],
    [
      { because: ['told', 'rater-not-independent', 'old'], rated: 'high', planned: 'high' },
      'told',
      'on their own',
      'older',
    ],
  ],
}

describe('notes', () => {
  const samples = Object.entries(NOTES).flatMap(([kind, ofKind]) =>
    ofKind.map(([figures, ...words]) => ({
      kind,
      words,
      note: { kind, rule: RULE, records: [], days, ...figures } as unknown as Note,
    })),
  )

  it.each(samples)('[WO2] [WO8] $kind says $words', ({ note, words }) => {
    expectSays(noteSentence(note, names), ...words)
  })

  it.each(samples)('[WO2] $kind is whole without a rule', ({ note }) => {
    const { rule: _rule, ...without } = note
    expectSentence(noteSentence(without, names))
  })

  it('[WO2] the days of a note are said apart', () => {
    expect(noteDaysText({ kind: 'rule-not-confirmed', records: [], days })).toBe(
      '8 July 2027 and 10 to 12 July 2027',
    )
  })
})

type ChangeSample<Kind extends Change['kind']> = [Omit<Extract<Change, { kind: Kind }>, 'kind'>, string]

const CHANGES: { [Kind in Change['kind']]: ChangeSample<Kind>[] } = {
  'renewal-evaluation': [
    [{ card: 'card-p-1', by: day }, 'ask for a renewal evaluation for card K-1 by 11 July 2027'],
  ],
  'renew-certificate': [[{ subject: 'cpr', by: day }, 'renew CPR by 11 July 2027']],
  'record-missing-fact': [
    [
      { what: 'certificate', subject: 'first-aid', records: [] },
      'record the first aid certificate with its days',
    ],
  ],
  'have-seen': [[{ subject: 'cpr', records: [] }, 'have somebody else see the CPR certificate']],
  'add-supervisor': [
    [
      { level: 'B', trainer: false, days },
      'add a B or C as supervisor, on 8 July 2027 and from 10 to 12 July 2027',
    ],
    [
      { level: 'C', trainer: true, days: days.slice(0, 1) },
      'add a C who is designated to train, on 8 July 2027',
    ],
    [
      { level: 'B', trainer: true, trainers: ['p-1', 'p-4'], days: days.slice(0, 1) },
      'add Ada Brandt or Cy Orrin, whom the assignment names, as a B or C who is designated to train, on 8 July 2027',
    ],
  ],
}

describe('changes', () => {
  const samples = Object.entries(CHANGES).flatMap(([kind, ofKind]) =>
    ofKind.map(([figures, phrase]) => ({ phrase, change: { kind, ...figures } as Change })),
  )

  it.each(samples)('[WO3] $phrase', ({ change, phrase }) => {
    expect(changePhrase(change, names, RULE.edition)).toBe(phrase)
  })

  it('[WO3] every fact that may be missing has its words', () => {
    const facts: Record<MissingFact | RecordedFact, string> = {
      age: 'age',
      capacity: 'capacity',
      'last-day': 'last day',
      'work-kinds': 'kinds of work',
      hands: 'one or two people',
      species: 'species',
      place: 'place',
      certificate: 'certificate',
      'meaning-of-words': 'certifying official',
      rating: 'rating',
      'guardian-permission': 'guardian',
      agreement: 'agreement',
    }
    for (const [what, word] of Object.entries(facts)) {
      const change = { kind: 'record-missing-fact', what: what as MissingFact, records: [] } satisfies Change
      expect(changePhrase(change, names, '')).toContain(word)
    }
  })

  it('[WO3] a set is joined by "and"', () => {
    const set = samples.slice(0, 2).map(({ change }) => change)
    expect(changeSetPhrase(set, names, RULE.edition)).toBe(
      'ask for a renewal evaluation for card K-1 by 11 July 2027 and renew CPR by 11 July 2027',
    )
  })

  it('[WO3] somebody else, another date and leave it stand apart; leave it is always open', () => {
    const all = { sets: [], somebodyElse: 4, anotherDate: days[1]!, leaveIt: true } as const
    expect(apartPhrases(all)).toEqual([
      'somebody else (4 others are on their own)',
      'another date (10 to 12 July 2027)',
      'leave it',
    ])
    expect(apartPhrases({ sets: [], somebodyElse: 1, leaveIt: true })[0]).toContain('1 other is on their own')
    expect(apartPhrases({ sets: [], somebodyElse: 0, leaveIt: true })).toEqual(['leave it'])
    expectSentence(NO_SET)
    expect(NO_SET).toContain('certifying official alone')
  })
})

describe('what is met', () => {
  const MET: {
    [Kind in Met['kind']]: [Omit<Extract<Met, { kind: Kind }>, 'kind' | 'rule' | 'records'>, ...string[]]
  } = {
    'age-reached': [{ years: 16 }, '16'],
    'agreement-covers': [{}, 'agreement'],
    'guardian-permits': [{}, 'guardian'],
    'certificate-holds': [{ subject: 'first-aid', lastDay: day }, 'First aid', '11 July 2027'],
    'card-in-force': [{ firstDay: dateOf('2025-04-14'), lastDay: day }, '14 April 2025', '11 July 2027'],
    'cell-gives': [
      { level: 'B', complexity: 'moderate', gives: 'independent' },
      'B',
      'moderately complex',
      'on their own',
    ],
    'inside-restriction': [{ restriction: 'r-1' }, 'r-1'],
  }

  it.each(Object.entries(MET))('[WO7] [WO8] %s', (kind, [figures, ...words]) => {
    const met = { kind, rule: RULE, records: [], ...figures } as unknown as Met
    expectSays(metSentence(met, names), ...words)
  })
})
