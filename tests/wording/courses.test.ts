import { describe, expect, it } from 'vitest'
import { dateOf } from '../../lib/core/calendar/dates.ts'
import type { Lack } from '../../lib/core/courses/prerequisites.ts'
import type { RosterLimit } from '../../lib/core/courses/roster-limit.ts'
import type { SeatState } from '../../lib/core/courses/roster.ts'
import type { MayNotEvaluate, StaffProblem } from '../../lib/core/courses/staff-authority.ts'
import type { RuleOf } from '../../lib/core/rulebooks/rules.schema.ts'
import {
  mayNotEvaluateSentence,
  nothingAssignedSentence,
  prerequisiteSentences,
  rosterLimitSentence,
  seatSentence,
  staffProblemSentences,
} from '../../lib/wording/courses.ts'
import { expectSays, expectSentence, RULE } from './sentence-checks.ts'
import { names, day, DAY, lapsed, LAPSED, rows } from './course-samples.ts'

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
