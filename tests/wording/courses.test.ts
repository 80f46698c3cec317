import { describe, expect, it } from 'vitest'
import { dateOf } from '../../lib/core/calendar/dates.ts'
import type { Finding } from '../../lib/core/authority/answer.ts'
import type { AttendanceProblem } from '../../lib/core/courses/attendance.ts'
import type { Conflict } from '../../lib/core/courses/conflicts.ts'
import type { Lack } from '../../lib/core/courses/prerequisites.ts'
import type { RosterLimit } from '../../lib/core/courses/roster-limit.ts'
import type { SeatState } from '../../lib/core/courses/roster.ts'
import type { EvaluatorDays } from '../../lib/core/courses/season-needs.ts'
import type { CarryProblem } from '../../lib/core/courses/shares.ts'
import type { MayNotEvaluate, StaffProblem } from '../../lib/core/courses/staff-authority.ts'
import type { Certification } from '../../lib/core/courses/training-record.ts'
import type { RuleOf } from '../../lib/core/rulebooks/rules.schema.ts'
import {
  attendanceProblemSentence,
  carryProblemSentences,
  certificationLacksSentence,
  conflictSentence,
  evaluatorDaysSentence,
  missingShareSentence,
  noShareRuleSentence,
} from '../../lib/wording/course-plans.ts'
import {
  mayNotEvaluateSentence,
  nothingAssignedSentence,
  prerequisiteSentences,
  rosterLimitSentence,
  seatSentence,
  staffProblemSentences,
  type CourseNames,
} from '../../lib/wording/courses.ts'
import { expectSays, expectSentence, RULE, someNames } from './sentence-checks.ts'

const names: CourseNames = {
  ...someNames(),
  session: (id) => (id === 's-2' ? 'the second class' : id),
  module: (id) => (id === 'size-up' ? 'Size-up' : id),
}
const day = dateOf('2027-06-05')
const DAY = '5 June 2027'
const lapsed: Finding = {
  kind: 'certificate-lapsed',
  subject: 'cpr',
  lastDay: dateOf('2027-06-04'),
  rule: RULE,
  records: [],
  allows: 'none',
}
const LAPSED = 'The last day of CPR is 4 June 2027.'

/** For each kind some samples with the words that their sentence contains. */
type Samples<Union extends { kind: string }> = {
  [Kind in Union['kind']]: readonly [Omit<Extract<Union, { kind: Kind }>, 'kind'>, ...string[]][]
}
function rows<Union extends { kind: string }>(samples: Samples<Union>) {
  return Object.entries(samples as Record<string, readonly [object, ...string[]][]>).flatMap(
    ([kind, ofKind]) =>
      ofKind.map(([figures, ...words]) => ({ kind, words, one: { kind, ...figures } as unknown as Union })),
  )
}

describe('places on a roster', () => {
  it.each(
    rows<SeatState>({
      'on-roster': [
        [{ number: 3 }, 'number 3'],
        [
          { number: 6, movedUp: { day, because: { how: 'withdrew', seat: 'x', person: 'p-1' } } },
          'moved up on 5 June 2027 because Ada Brandt withdrew',
        ],
        [
          { number: 6, movedUp: { day, because: { how: 'carried-over', seat: 'x', person: 'p-1' } } },
          'because Ada Brandt was carried over',
        ],
      ],
      waiting: [[{ number: 2 }, 'waiting list as number 2']],
      withdrew: [
        [{ day, staysEmpty: false }, DAY],
        [{ day, staysEmpty: true }, 'stays empty'],
      ],
      'carried-over': [[{ day, to: 's-2', staysEmpty: false }, 'the second class', DAY]],
      'asked-already': [[{ seat: 'x' }, 'nobody has two']],
    }),
  )('[WO40] $kind says $words', ({ one, words }) => {
    expectSays(seatSentence(one, names), ...words)
  })

  it.each([
    [{ places: 0, bound: { kind: 'trainers', day, trainers: [], each: 6, rule: RULE } }, ['no places', DAY]],
    [
      { places: 6, bound: { kind: 'trainers', day, trainers: ['p-1'], each: 6, rule: RULE } },
      ['6 places', 'Ada Brandt', DAY, 'FSM 2358.05'],
    ],
    [{ places: 1, bound: { kind: 'on-roster', day, rule: RULE } }, ['1 place,', RULE.rule]],
    [{ places: 9 }, ['No rule limits']],
  ] as [RosterLimit, string[]][])('[WO40] a limit %j', (limit, words) => {
    expectSays(rosterLimitSentence(limit, names), ...words)
  })
})

describe('staff and candidates', () => {
  it.each(
    rows<StaffProblem>({
      'staff-not-on-record': [[{}, 'no person on record']],
      'staff-without-edition': [[{}, 'no edition']],
      'not-designated': [[{ role: 'evaluator' }, 'Ada Brandt', 'as evaluator', 'felling']],
      'not-designated-that-day': [
        [
          {
            role: 'instructor',
            designation: 'd',
            firstDay: dateOf('2026-01-01'),
            lastDay: dateOf('2026-12-31'),
          },
          '1 January 2026 through 31 December 2026',
        ],
        [{ role: 'instructor', designation: 'd', firstDay: dateOf('2028-01-01') }, '1 January 2028 on'],
      ],
      'no-own-authority': [
        [{ standing: 'none', findings: [lapsed] }, 'no authority on their own for felling', LAPSED],
        [{ standing: 'unknown', findings: [] }, 'not on record'],
      ],
    }),
  )('[WO41] staff: $kind says the day and $words', ({ one, words }) => {
    const said = staffProblemSentences({ person: 'p-1', day, workKind: 'felling' }, one, names)
    for (const sentence of said) expectSentence(sentence)
    for (const word of [DAY, ...words]) expect(said.join(' ')).toContain(word)
  })

  const rule = { id: 'evaluator.B' } as RuleOf<'evaluator'>
  it.each(
    rows<MayNotEvaluate>({
      'evaluates-themselves': [[{}, 'themselves']],
      'unknown-level': [[{ level: 'D' }, 'level D']],
      'not-designated': [[{ workKind: 'bucking', sawKind: 'crosscut' }, 'bucking', 'crosscut']],
      'not-designated-on-day': [
        [{ firstDay: day, designation: 'd' }, `${DAY} on`],
        [{ firstDay: day, lastDay: day, designation: 'd' }, `through ${DAY}`],
      ],
      'designated-below': [[{ level: 'A', wanted: 'B', designation: 'd' }, 'level A', 'level B']],
      'no-card': [[{ workKind: 'felling', sawKind: 'crosscut' }, 'felling']],
      'holds-below': [[{ holds: 'A', wanted: 'C' }, 'level A', 'level C']],
      'no-evaluator-rule': [[{ holds: 'A' }, 'an A']],
      'not-among-recommended': [
        [{ holds: 'B', recommends: ['A'], rule }, 'a B evaluates for A only'],
        [{ holds: 'B', recommends: [], rule }, 'a B evaluates nobody'],
      ],
    }),
  )('[WO41] evaluating: $kind says $words', ({ one, words }) => {
    expectSays(mayNotEvaluateSentence(one, names), ...words)
  })

  it.each(
    rows<Lack>({
      'candidate-not-on-record': [[{}, 'nobody of this id']],
      'day-without-edition': [[{}, 'no edition']],
      'rules-unmet': [
        [{ standing: 'none', findings: [lapsed] }, 'is not met', LAPSED],
        [{ standing: 'unknown', findings: [] }, 'does not hold'],
      ],
      'below-age': [
        [{ years: 16, says: 'below' }, '16', 'still to come'],
        [{ years: 16, says: 'unknown' }, '16', 'not on record'],
      ],
      'card-wanted': [
        [{ levels: ['A', 'B'] }, 'level A or B', 'none is on record'],
        [{ levels: ['A'], ended: day }, `ended on ${DAY}`],
      ],
      'module-missed': [
        [{ module: 'size-up', was: 'partly' }, 'Size-up was attended in part only'],
        [{ module: 'size-up', was: 'absent' }, 'Size-up was not attended'],
        [{ module: 'size-up', was: 'not-recorded' }, 'no attendance is recorded'],
      ],
      'module-not-planned': [[{ module: 'size-up' }, 'Size-up', 'on no day before']],
    }),
  )('[WO41] lacking: $kind says the work, the day and $words', ({ one, words }) => {
    const said = prerequisiteSentences({ ...one, workKind: 'bucking', days: [day] }, names)
    for (const sentence of said) expectSentence(sentence)
    for (const word of ['bucking', DAY, ...words]) expect(said.join(' ')).toContain(word)
  })

  it.each([
    ['no-items', 'no log or tree'],
    ['no-trainers', 'nobody on the staff'],
  ] as const)('[WO41] a place that opens nothing: %s', (kind, words) => {
    const nothing = { kind, seat: 's', person: 'p-1', workKind: 'bucking', days: [day] } as const
    expectSays(nothingAssignedSentence(nothing, names), 'Ada Brandt', DAY, 'bucking', words)
  })
})

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
