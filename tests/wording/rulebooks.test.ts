import { describe, expect, it } from 'vitest'
import type { CalendarDate } from '../../lib/core/calendar/dates.ts'
import type { Rule } from '../../lib/core/rulebooks/rules.schema.ts'
import { MARKS } from '../../lib/core/rulebooks/words.ts'
import {
  confirmedSentence,
  governsSentences,
  inForceSentence,
  MARK_EXPLANATIONS,
  successorSentence,
  supportText,
  unconfirmedSentence,
} from '../../lib/wording/book-pages.ts'
import { agoText } from '../../lib/wording/days.ts'
import { eventSentence } from '../../lib/wording/events.ts'
import { ruleFigures, type FigureNames } from '../../lib/wording/rule-figures.ts'
import { shippedBooks } from '../builders/shipped-books.ts'
import { expectSays, expectSentence } from './sentence-checks.ts'

const day = (text: string) => text as CalendarDate

const names: FigureNames = {
  book: (id) => `the book ${id}`,
  subject: (id) => `the subject ${id}`,
  caution: (id) => `the caution ${id}`,
}

const rules = shippedBooks().editions.flatMap((edition) => edition.rules)

function ruleOf(edition: string, id: string): Rule {
  const rule = shippedBooks()
    .editions.find((one) => one.id === edition)
    ?.rules.find((one) => one.id === id)
  if (rule === undefined) throw new Error(`${edition} has no rule ${id}`)
  return rule
}

describe('the figures of rules', () => {
  it.each(rules)('[WO23] $kind $id has names and values without a hole', (rule) => {
    for (const { name, value } of ruleFigures(rule, names)) {
      for (const text of [name, value]) {
        expect(text).not.toMatch(/undefined|NaN|\[object|true|false| {2}/)
        expect(text).toMatch(/\S/)
      }
    }
  })

  it.each([
    [
      'federal-crosscut-2016',
      'term.sawyer',
      ['Levels: A, B and C', 'Term: 3 years', 'Last day: the day before the anniversary'],
    ],
    ['federal-crosscut-2016', 'term.trainee', ['Levels: trainee', 'Term: 12 months']],
    ['federal-crosscut-2016', 'recognition', ['Books recognised: none']],
    [
      'cooperator-crosscut-1',
      'recognition',
      ['the book federal-crosscut: for bucking with a crosscut saw: its A counts as an A'],
    ],
    ['federal-crosscut-2016', 'supervision', ['Cuts at once for each supervisor: 1', '18 and over']],
    [
      'federal-crosscut-2016',
      'age.volunteer.bucking',
      [
        'At the age: from 16, under 18',
        'At most: under supervision',
        'Guardian’s permission: must be on record',
      ],
    ],
    ['federal-crosscut-2016', 'age.employed', ['At the age: under 18', 'At most: no work']],
    ['federal-crosscut-2016', 'certificate.cpr', ['Subject: the subject cpr']],
    ['federal-crosscut-2016', 'evaluator.C', ['An evaluator who holds: C', 'May recommend: A, B and C']],
    ['federal-crosscut-2016', 'evaluator.A', ['May recommend: no level']],
    ['federal-crosscut-2016', 'decider', ['Has not taught within: 24 months']],
    ['federal-crosscut-2016', 'worksheet.stacking', ['3 that are moderately complex: make highly complex']],
    [
      'federal-crosscut-2016',
      'worksheet.bucking.bind',
      ['no bind: least complex', 'bottom bind: moderately complex, or more'],
    ],
    ['federal-crosscut-2016', 'cautions.always', ['Shown, in this order: the caution walk-away']],
    [
      'federal-crosscut-2016',
      'course.size.per-trainer',
      ['Candidates for each trainer in the field, at most: 6', 'trainer: instructor or evaluator'],
    ],
    ['federal-crosscut-2016', 'course.size.per-item.felling', ['in turn at one log or tree, at most: 2']],
    ['federal-crosscut-2016', 'course.field-groups', ['in one field group: bucking and felling']],
    ['federal-crosscut-2016', 'course.module.course-information', ['Suggested time: 2 hours']],
    [
      'federal-crosscut-2016',
      'course.prerequisite.refresher',
      ['In: a refresher', 'Card: an A, B or C in force, or ended no more than 12 months before'],
    ],
    [
      'federal-crosscut-2016',
      'course.prerequisite.modules',
      ['Modules attended: safety, protective equipment and saws'],
    ],
    [
      'federal-crosscut-2016',
      'course.share.felling.B',
      ['Level asked for: B', 'Logs or trees that are moderately complex: 1'],
    ],
    [
      'federal-crosscut-2016',
      'training-record.prior',
      [
        'Of: training had before',
        'the day on which it was judged adequate',
        'by: the trainer or the employer',
      ],
    ],
    ['federal-crosscut-2016', 'training-record.kept', ['Kept: the latest certification']],
    ['federal-crosscut-2016', 'card.days', []],
  ])('%s %s says %j', (edition, id, wanted) => {
    const said = ruleFigures(ruleOf(edition, id), names).map(({ name, value }) => `${name}: ${value}`)
    for (const words of wanted) expect(said.join(' | ')).toContain(words)
    if (wanted.length === 0) expect(said).toEqual([])
  })
})

describe('what a book says of itself', () => {
  it.each([
    [unconfirmedSentence({ fromMemory: 0, unconfirmed: 0 }), 'No rule'],
    [unconfirmedSentence({ fromMemory: 3, unconfirmed: 0 }), 'Every rule from memory is confirmed'],
    [unconfirmedSentence({ fromMemory: 3, unconfirmed: 1 }), 'One rule'],
    [unconfirmedSentence({ fromMemory: 8, unconfirmed: 7 }), '7 rules'],
    [inForceSentence({ firstDay: day('2016-07-19') }), 'from 19 July 2016 until another edition is adopted'],
    [inForceSentence({ firstDay: day('2012-02-15'), lastDay: day('2016-07-18') }), 'through 18 July 2016'],
    [successorSentence({ name: 'The next', day: day('2023-03-06') }), '“The next” of 6 March 2023'],
    [
      confirmedSentence({ by: 'Ada Brandt', day: day('2027-05-03') }),
      'Ada Brandt read the source on 3 May 2027',
    ],
  ])('[WO24] [WO8] %s', (sentence, words) => {
    expectSays(sentence, words)
  })

  it('[WO24] each mark is explained, and only what is from memory can be confirmed', () => {
    for (const mark of MARKS) expectSentence(MARK_EXPLANATIONS[mark])
    expect(MARKS.map((mark) => supportText(mark, false))).toEqual([
      'Published',
      'Common practice, no source',
      'From memory, not confirmed',
      'Program default',
    ])
    expect(supportText('from-memory', true)).toBe('From memory, confirmed')
  })

  it('[WO24] it governs everywhere else, at the places that name it on their days, or nowhere', () => {
    const place = (name: string, firstDay: string, lastDay?: string) => ({
      name,
      firstDay: day(firstDay),
      ...(lastDay === undefined ? {} : { lastDay: day(lastDay) }),
    })
    expect(governsSentences(true, [])).toEqual(['It governs wherever no place names another book.'])
    expect(
      governsSentences(false, [
        place('North End', '2026-06-13', '2026-08-14'),
        place('South End', '2026-07-01'),
        place('North End', '2027-06-12', '2027-08-13'),
      ]),
    ).toEqual([
      'It governs at North End from 13 June to 14 August 2026 and from 12 June to 13 August 2027.',
      'It governs at South End from 1 July 2026 on.',
    ])
    for (const sentence of governsSentences(false, [])) expectSentence(sentence)
  })
})

describe('what the journal says was done', () => {
  it.each([
    [
      'rule-confirmed',
      { rule: 'card.days', edition: 'an-edition' },
      'the rule card.days of the edition an-edition',
    ],
    ['rule-confirmed', {}, 'a rule from memory'],
    ['program-file-brought-in', { facts: 1 }, '1 fact of a program file'],
    ['program-file-brought-in', { facts: 12 }, '12 facts of a program file'],
    ['demo-accounts-opened', { accounts: 6 }, '6 accounts'],
  ] as const)('[WO25] %s %j says %s', (kind, said, words) => {
    expect(eventSentence(kind, said)).toContain(words)
  })

  it.each([
    [0, 'less than a minute ago'],
    [1, '1 minute ago'],
    [59, '59 minutes ago'],
    [60, '1 hour ago'],
    [119, '1 hour ago'],
    [720, '12 hours ago'],
  ])('[WO25] %d minutes are %s', (minutes, words) => {
    expect(agoText(minutes)).toBe(words)
  })
})
