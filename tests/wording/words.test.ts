import { describe, expect, it } from 'vitest'
import type { CompanyDays, Work } from '../../lib/core/authority/answer.ts'
import { dateOf } from '../../lib/core/calendar/dates.ts'
import { readInstant } from '../../lib/core/calendar/instants.ts'
import type { Inches } from '../../lib/core/kernel/measures.ts'
import { companySentences, memberSentences, type MemberDays } from '../../lib/wording/companies.ts'
import {
  dayText,
  daysText,
  momentText,
  onDays,
  spansText,
  spanText,
  throughText,
} from '../../lib/wording/days.ts'
import { aLevel } from '../../lib/wording/levels.ts'
import { capitalised, joinedByAnd, joinedByOr } from '../../lib/wording/lists.ts'
import {
  AUTHORITY_IS_NOT_SAFETY,
  INVENTED,
  LOCAL_RULES_FIRST,
  NO_PUBLISHED_RATING,
} from '../../lib/wording/notice.ts'
import { namesOf } from '../../lib/wording/names.ts'
import type { Standing } from '../../lib/core/rulebooks/standing.ts'
import { person } from '../builders/people.ts'
import { records } from '../builders/records.ts'
import { questionSentence } from '../../lib/wording/questions.ts'
import { standingText } from '../../lib/wording/standings.ts'
import { expectSentence, someNames } from './sentence-checks.ts'

const names = someNames()
const span = (first: string, last: string) => ({ first: dateOf(first), last: dateOf(last) })

describe('days', () => {
  it.each([
    ['2027-05-03', '2027-05-03', '3 May 2027', 'on 3 May 2027'],
    ['2027-07-08', '2027-07-15', '8 to 15 July 2027', 'from 8 to 15 July 2027'],
    ['2027-06-28', '2027-07-03', '28 June to 3 July 2027', 'from 28 June to 3 July 2027'],
    [
      '2027-12-28',
      '2028-01-03',
      '28 December 2027 to 3 January 2028',
      'from 28 December 2027 to 3 January 2028',
    ],
    ['2027-07-08', '2028-07-15', '8 July 2027 to 15 July 2028', 'from 8 July 2027 to 15 July 2028'],
  ])('[WO10] %s to %s is %s', (first, last, text, on) => {
    expect(spanText(span(first, last))).toBe(text)
    expect(onDays(span(first, last))).toBe(on)
  })

  it('[WO10] through a day, with no end, several spans, a moment, a number of days', () => {
    expect(throughText(dateOf('2027-07-11'), 'none')).toBe(', through 11 July 2027')
    expect(throughText('open', 'independent')).toBe(', with no end on record in the next ten years')
    expect(throughText('open', 'none')).toBe(', and nothing on record ends it')
    expect(throughText('open', 'unknown')).toContain('nothing on record settles it')
    expect(spansText([span('2027-07-08', '2027-07-08'), span('2027-07-10', '2027-07-12')])).toBe(
      '8 July 2027 and 10 to 12 July 2027',
    )
    const moment = readInstant('2027-04-14T16:40:00Z')!
    expect(momentText(moment)).toBe('14 April 2027, 16:40 UTC')
    expect(momentText(moment, 'UTC')).toBe('14 April 2027, 16:40 UTC')
    expect(momentText(moment, 'America/Denver')).toBe(
      '14 April 2027, 16:40 UTC, which is 10:40 in America/Denver',
    )
    expect(momentText(readInstant('2027-04-15T03:40:00Z')!, 'America/Denver')).toBe(
      '15 April 2027, 03:40 UTC, which is 14 April 2027, 21:40 in America/Denver',
    )
    expect([daysText(1), daysText(8)]).toEqual(['1 day', '8 days'])
    expect(dayText(dateOf('1900-01-01'))).toBe('1 January 1900')
  })
})

describe('standings', () => {
  it.each([
    ['independent', 'on their own'],
    ['own-level', 'under a B or C'],
    ['training', 'in training, under a designated B or C'],
    ['unknown', 'not on record'],
    ['none', 'no'],
  ] as const)('[WO11] %s is %s', (standing, text) => {
    expect(standingText(standing, ['B', 'C'])).toBe(text)
  })

  it('[WO11] without levels it names none, and the article fits the level', () => {
    expect(standingText('own-level')).toBe('under a supervisor')
    expect(standingText('training')).toBe('in training, under a designated trainer')
    expect(aLevel(['A', 'B', 'C'])).toBe('an A, B or C')
    expect(aLevel(['FAL2'])).toBe('a FAL2')
    expect(aLevel([])).toContain('nobody')
  })
})

describe('names', () => {
  it('[WO9] people of one name are told apart, others are not', () => {
    expect(names.person('p-1')).toBe('Ada Brandt')
    expect([names.person('p-2'), names.person('p-3')]).toEqual(['Bo Marsh (p-2)', 'Bo Marsh (p-3)'])
    expect(names.person('p-9')).toBe('p-9')
  })

  it('[WO9] so are people whose names read alike, however they are written', () => {
    const names = namesOf(
      records({ people: [person('p-1', { name: 'Ada Brandt' }), person('p-2', { name: 'ADA  brandt' })] }),
    )
    expect([names.person('p-1'), names.person('p-2')]).toEqual(['Ada Brandt (p-1)', 'ADA  brandt (p-2)'])
  })

  it('[WO9] a card is called by its number, and by its line where there are several', () => {
    expect(names.card('card-p-1')).toBe('card K-1')
    expect(names.card('card-p-2b')).toBe('card K-2, line 2')
    expect(names.card('nothing')).toBe('card nothing')
  })

  it('[WO9] subjects, books, editions and organisations have names; levels go up from one', () => {
    expect([names.subject('cpr'), names.subject('tree-climbing')]).toEqual(['CPR', 'tree climbing'])
    expect(names.book('federal-crosscut')).toBe('Federal crosscut book')
    expect(names.edition('federal-crosscut-2016')).toContain('FSM 2358')
    expect(names.organisation('org-1')).toBe('Invented Volunteers')
    expect(names.levelsFrom('federal-crosscut-2016', 'B')).toEqual(['B', 'C'])
    expect(names.levelsFrom('', 'B')).toEqual(['B'])
  })

  it('[WO9] lists read as speech, and a first letter may be large in any script', () => {
    expect([
      joinedByAnd([]),
      joinedByAnd(['a']),
      joinedByAnd(['a', 'b']),
      joinedByOr(['a', 'b', 'c']),
    ]).toEqual(['', 'a', 'a and b', 'a, b or c'])
    expect([capitalised(''), capitalised('ł'), capitalised('𐐨x')]).toEqual(['', 'Ł', '𐐀x'])
  })
})

describe('the question', () => {
  const work: Work = {
    workKind: 'felling',
    sawKind: 'crosscut',
    diameter: 22.5 as Inches,
    complexity: 'moderate',
    hands: 'two',
    species: 'tall fir',
    place: 'north-end',
  }

  it('[WO13] is one sentence with its figures', () => {
    const sentence = questionSentence(work, span('2027-07-08', '2027-07-15'), names)
    expect(sentence).toBe(
      'Who may fell a tree, 22 1/2 in across, moderately complex, two-person, tall fir, with a crosscut saw, from 8 to 15 July 2027, at North End?',
    )
  })

  it('[WO13] names those who are asked about, and the item', () => {
    const { complexity: _complexity, place: _place, ...rest } = work
    const sentence = questionSentence({ ...rest, item: 'log-1' }, span('2027-07-08', '2027-07-08'), names, [
      'p-1',
      'p-4',
    ])
    expectSentence(sentence)
    expect(sentence).toContain('May Ada Brandt and Cy Orrin fell a tree (Log at the ford)')
    expect(sentence).toContain('as its ratings say')
    expect(
      questionSentence({ ...work, complexity: 'not-rated' }, span('2027-07-08', '2027-07-08'), names),
    ).toContain('not rated')
  })
})

describe('a company', () => {
  const days = span('2027-07-08', '2027-07-09')
  const say = (part: Partial<CompanyDays>, members: readonly MemberDays[] = []) =>
    companySentences({ ...days, learners: [], pairs: [], feasible: true, ...part }, names, members)
  const member = (person: string, standing: Standing, on = days): MemberDays => ({
    person,
    spans: [{ ...on, standing, findings: [] }],
  })

  it('[WO14] says that nobody needs a supervisor only where everybody is on their own', () => {
    expect(say({}, [member('p-1', 'independent'), member('p-4', 'independent')])).toEqual([
      'From 8 to 9 July 2027: nobody needs a supervisor.',
    ])
    expect(say({}, [member('p-1', 'independent'), member('p-2', 'none'), member('p-4', 'unknown')])).toEqual([
      'From 8 to 9 July 2027: nobody is given a supervisor; the answer is not on record for Cy Orrin, and no for Bo Marsh (p-2).',
    ])
    expect(say({})).toEqual(['From 8 to 9 July 2027: nobody is given a supervisor.'])
  })

  it('[WO14] opens with everybody and their standing, by days where they differ', () => {
    const both: MemberDays = {
      person: 'p-1',
      spans: [
        ...member('p-1', 'independent', span('2027-07-08', '2027-07-08')).spans,
        ...member('p-1', 'none', span('2027-07-09', '2027-07-09')).spans,
      ],
    }
    expect(memberSentences([both, member('p-4', 'training'), member('p-2', 'unknown')], days, names)).toEqual(
      [
        'On their own: Ada Brandt (8 July 2027).',
        'Under supervision: Cy Orrin (in training).',
        'Not on record: Bo Marsh (p-2).',
        'No: Ada Brandt (9 July 2027).',
      ],
    )
    expect(memberSentences([member('p-1', 'none')], days, names)[0]).toBe(
      'On their own: nobody in this company.',
    )
  })

  it('[WO14] says who supervises whom, who is without, and what is short', () => {
    const sentences = say({
      learners: [
        { person: 'p-1', standing: 'own-level', may: ['p-4'] },
        { person: 'p-2', standing: 'own-level', may: ['p-4'] },
      ],
      pairs: [{ learner: 'p-1', supervisor: 'p-4' }],
      feasible: false,
      short: { learners: ['p-1', 'p-2'], supervisors: ['p-4'], places: 1 },
    })
    sentences.forEach(expectSentence)
    expect(sentences[0]).toContain('Cy Orrin supervises Ada Brandt')
    expect(sentences[1]).toContain('Bo Marsh (p-2) is without a supervisor; Cy Orrin could')
    expect(sentences[2]).toContain('short by 1: Ada Brandt and Bo Marsh (p-2) together need 2 supervisors')
  })

  it('[WO14] tells how many are short in all where the smallest proof shows fewer', () => {
    const learner = (person: string) => ({ person, standing: 'own-level' as const, may: ['p-4'] })
    const sentences = say({
      learners: [learner('p-1'), learner('p-2'), learner('p-3')],
      pairs: [{ learner: 'p-1', supervisor: 'p-4' }],
      feasible: false,
      short: { learners: ['p-1', 'p-2'], supervisors: ['p-4'], places: 1 },
    })
    expect(sentences.at(-1)).toContain('short by 2 in all, of these by 1: Ada Brandt')
  })

  it.each([
    ['absent', 'is not there', 'short by 1: Ada Brandt is absent.'],
    ['none', 'the answer is no', 'short by 1: Ada Brandt may not.'],
    ['unknown', 'the answer is not on record', 'short by 1: for Ada Brandt the answer is not on record.'],
    ['training', 'nobody in the company may supervise', 'needs a supervisor, and nobody here may supervise.'],
  ] as const)('[WO14] a learner who is %s', (standing, words, short) => {
    const sentences = say({
      learners: [{ person: 'p-1', standing, may: [] }],
      feasible: false,
      short: { learners: ['p-1'], supervisors: [], places: 0 },
    })
    sentences.forEach(expectSentence)
    expect(sentences[0]).toContain(words)
    expect(sentences[1]).toContain(short)
  })
})

describe('notices', () => {
  it('[WO16] the lines that stand by every answer', () => {
    expect(AUTHORITY_IS_NOT_SAFETY).toBe(
      'Authority is not safety. This says who may, not that anything should be cut.',
    )
    for (const line of [LOCAL_RULES_FIRST, INVENTED, NO_PUBLISHED_RATING]) expectSentence(line)
    expect(NO_PUBLISHED_RATING).toContain('overrules')
  })
})
