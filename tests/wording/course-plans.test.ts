import { describe, expect, it } from 'vitest'
import { dateOf } from '../../lib/core/calendar/dates.ts'
import type { AttendanceProblem } from '../../lib/core/courses/attendance.ts'
import type { Conflict } from '../../lib/core/courses/conflicts.ts'
import type { EvaluatorDays } from '../../lib/core/courses/season-needs.ts'
import type { CarryProblem } from '../../lib/core/courses/shares.ts'
import type { Certification } from '../../lib/core/courses/training-record.ts'
import {
  attendanceProblemSentence,
  carryProblemSentences,
  certificationLacksSentence,
  conflictSentence,
  evaluatorDaysSentence,
  missingShareSentence,
  noShareRuleSentence,
} from '../../lib/wording/course-plans.ts'
import { expectSays, expectSentence, RULE } from './sentence-checks.ts'
import { names, day, DAY, lapsed, LAPSED, rows } from './course-samples.ts'

describe('what collides', () => {
  it.each(
    rows<Conflict>({
      'day-outside': [
        [{ day, firstDay: dateOf('2027-06-01'), lastDay: dateOf('2027-06-04') }, DAY, '4 June 2027'],
      ],
      'work-outside': [[{ day, group: 'G', workKind: 'felling' }, 'group G', 'felling']],
      'module-unknown': [[{ module: 'size-up', edition: 'e' }, 'Size-up', '“e”']],
      'module-without-day': [[{ module: 'size-up' }, 'Size-up', 'no day']],
      'mixed-group': [
        [
          { day, group: 'G', workKinds: ['bucking', 'felling'], rule: RULE },
          'bucking and felling',
          RULE.rule,
        ],
      ],
      'place-closed': [
        [{ day, place: 'north-end', workKind: 'bucking', suspension: 's' }, 'North End', 'bucking'],
      ],
      'no-edition-that-day': [[{ day }, DAY]],
      'over-ratio': [
        [
          {
            ratio: 'per-trainer',
            day,
            group: 'G',
            candidates: ['a', 'b'],
            trainers: ['c'],
            each: 1,
            rule: RULE,
          },
          '2 candidates',
          '1 entitled trainer;',
          'at most 1',
        ],
        [
          { ratio: 'while-cutting', day, group: 'G', candidates: ['a'], trainers: [], each: 2, rule: RULE },
          '1 candidate and 0 entitled trainers',
          'while one of them cuts',
        ],
      ],
      elsewhere: [
        [
          { person: 'p-1', days: [day], other: { kind: 'session', id: 's-2' } },
          'Ada Brandt',
          'the second class',
        ],
        [{ person: 'p-1', days: [day], other: { kind: 'hitch', id: 'h-9' } }, 'h-9'],
      ],
      'teaches-and-learns': [[{ person: 'p-1', days: [day] }, 'Ada Brandt', 'both']],
      'staff-twice': [[{ person: 'p-1', day, groups: ['G', 'H'] }, 'G and H']],
      'staff-day-without-sitting': [[{ person: 'p-1', day }, 'nothing is planned']],
      'two-groups': [[{ person: 'p-1', day, groups: ['G', 'H'] }, 'G and H']],
      'no-sitting-for-seat': [[{ person: 'p-1' }, 'Ada Brandt']],
      'group-unknown': [[{ person: 'p-1', group: 'G' }, 'group G']],
      'carried-to-nowhere': [[{ person: 'p-1', to: 's-2' }, 'the second class']],
    }),
  )('[WO42] $kind says $words', ({ one, words }) => {
    expectSays(conflictSentence(one, names), ...words)
  })
})

describe('shares, attendance, records and the season', () => {
  it.each([
    ['none-on-site', 'lists none'],
    ['may-not-train', 'may not train'],
    ['too-few', 'too few'],
  ] as const)('[WO43] missing: %s', (because, words) => {
    const missing = {
      person: 'p-1',
      workKind: 'bucking',
      complexity: 'high',
      wanted: 2,
      got: 1,
      because,
    } as const
    expectSays(missingShareSentence(missing, names), 'Ada Brandt', '1 of 2', 'highly complex', words)
  })

  it('[WO43] a level without a rule', () => {
    expectSays(
      noShareRuleSentence({ person: 'p-1', level: 'D', workKind: 'felling' }, names),
      'Ada Brandt',
      'D',
      'felling',
    )
  })

  it.each(
    rows<CarryProblem>({
      'not-later': [[{ day }, DAY]],
      'no-field-day': [[{ to: day }, DAY]],
      'not-a-day-of-the-item': [[{ to: day }, DAY]],
      'may-not-that-day': [
        [{ to: day, standing: 'none', findings: [lapsed] }, DAY, LAPSED],
        [{ to: day, standing: 'unknown', findings: [] }, 'not on record'],
      ],
      'not-on-roster': [[{ person: 'p-1' }, 'Ada Brandt']],
      'not-an-item-of-the-session': [[{ item: 'log-1' }, 'Log at the ford']],
    }),
  )('[WO43] carrying over: $kind says $words', ({ one, words }) => {
    const said = carryProblemSentences(one, names)
    for (const sentence of said) expectSentence(sentence)
    for (const word of words) expect(said.join(' ')).toContain(word)
  })

  it.each(
    rows<AttendanceProblem>({
      'not-planned-that-day': [[{ person: 'p-1', module: 'size-up', day }, 'not planned']],
      'not-on-roster': [[{ person: 'p-1', module: 'size-up', day }, 'without a place']],
      'said-twice': [
        [{ person: 'p-1', module: 'size-up', day, was: ['present', 'absent'] }, 'present and absent'],
      ],
    }),
  )('[WO43] attendance: $kind says $words', ({ one, words }) => {
    expectSays(attendanceProblemSentence(one, names), 'Ada Brandt', 'Size-up', DAY, ...words)
  })

  it('[WO43] what a certification lacks, and nothing where it lacks nothing', () => {
    const one: Certification = {
      basis: 'prior-training',
      person: 'p-1',
      record: 'r',
      says: 'Invented',
      missing: ['identity', 'signature'],
      rule: RULE,
    }
    expectSays(certificationLacksSentence(one) ?? '', 'who was trained and a signature', RULE.source)
    expect(certificationLacksSentence({ ...one, missing: [] })).toBeUndefined()
  })

  const base = { workKind: 'bucking', byCards: ['a'], bySeats: ['b', 'c'], candidates: 3, had: 1 } as const
  it.each([
    [
      { ...base, reckoned: true, each: 2, eachRule: RULE, fieldDays: 2, daysRule: RULE, wanted: 4, short: 3 },
      [
        '3 candidates (1 by cards that end, 2 by places',
        'divided by 2',
        '2 field days',
        '4 days',
        '1 had',
        '3 short',
      ],
    ],
    [{ ...base, reckoned: false, lacks: 'course.size' }, ['no rule of kind course.size']],
  ] as [EvaluatorDays, string[]][])('[WO43] the days of evaluators of %j', (days, words) => {
    expectSays(evaluatorDaysSentence(days), ...words)
  })
})
