import { describe, expect, it } from 'vitest'
import type { Edition } from '../../../lib/core/rulebooks/books.schema.ts'
import { confirmationSchema } from '../../../lib/core/rulebooks/books.schema.ts'
import type { Rule } from '../../../lib/core/rulebooks/rules.schema.ts'
import { card } from '../../builders/cards.ts'
import { adult, certificate } from '../../builders/people.ts'
import { asKnownAt, records, withSection, type Part } from '../../builders/records.ts'
import { place, question, work, type WorkSaid } from '../../builders/work.ts'
import { answerAbout, answerTo, notesOf } from './told.ts'

const BOTH: ('bucking' | 'felling')[] = ['bucking', 'felling']
const DAY = '2027-07-08/2027-07-08'
const holder = (level = 'B', said: Parameters<typeof card>[2] = {}) =>
  adult('p-1', { cards: [card('p-1', level, { workKinds: BOTH, ...said })] })

describe('rules that are not confirmed', () => {
  const felling: WorkSaid = { workKind: 'felling' }
  const unconfirmed = (rule: string) => `rule-not-confirmed | ${rule} | ${DAY}`

  it.each<[string, Part[], WorkSaid, string[]]>([
    ['the grant of the deciding card, met', [holder()], felling, [unconfirmed('grant.felling.B')]],
    ['and not met', [holder()], { ...felling, complexity: 'high' }, [unconfirmed('grant.felling.B')]],
    ['not a grant that was read', [holder()], {}, []],
    [
      'not the other rules from memory, as that of the days of a card',
      [holder('B', { lastDay: '2027-07-07' })],
      {},
      [],
    ],
    ['not without a card that names the work', [adult('p-1')], felling, []],
    [
      'and the least age',
      [
        holder('advanced', { book: 'interagency-faller', sawKinds: ['chain-saw'] }),
        { book: 'interagency-faller', certificates: [certificate('p-1', 'annual-refresher')] },
      ],
      { sawKind: 'chain-saw' },
      [unconfirmed('age.least'), unconfirmed('grant.bucking.advanced')],
    ],
  ])('[AU61] %s', (_name, facts, said, notes) => {
    expect(notesOf(answerTo({ facts, work: said }))).toEqual(notes)
  })

  const confirmation = (edition: string, rule: string) =>
    confirmationSchema.parse({
      id: `read-${rule.toLowerCase().replaceAll('.', '-')}`,
      recordedIn: 5,
      edition,
      rule,
      by: 'Invented Manager',
      day: '2027-06-01',
      read: 'Invented pages',
    })

  it.each([
    ['federal-crosscut-2016', 'grant.felling.B', 5, true],
    ['federal-crosscut-2016', 'grant.felling.B', 4, false],
    ['federal-crosscut-2016', 'grant.felling.C', 5, false],
    ['another-edition', 'grant.felling.B', 5, false],
  ])('[AU61] confirmed in %s, %s, as known at %i: %s', (edition, rule, n, isConfirmed) => {
    const base = records(holder(), { confirmations: [confirmation(edition, rule)] })
    const answer = answerAbout(asKnownAt(base, n), question(work(felling), '2027-07-08'))
    expect(answer.standing).toBe('independent')
    expect(notesOf(answer)).toEqual(isConfirmed ? [] : [unconfirmed('grant.felling.B')])
  })
})

describe('the successor and disagreeing sources', () => {
  it.each([
    ['2023-03-06', '2023-03-06', undefined],
    ['2023-03-07', '2023-03-07', '2023-03-07'],
    ['2023-03-01', '2023-03-31', '2023-03-07'],
  ])('[AU62] asked from %s through %s', (first, last, noted) => {
    const { notes } = answerTo({ facts: [holder()], first, last })
    const successors = notes.filter(({ kind }) => kind === 'successor-not-held')
    expect(successors.map(({ days }) => days)).toEqual(noted === undefined ? [] : [[{ first: noted, last }]])
  })

  /** The federal book with a source that disagrees beside one rule. */
  function disagreeing(rule: string, facts: Part): ReturnType<typeof records> {
    const base = records(facts)
    const editions = base.editions.map((edition): Edition => ({
      ...edition,
      rules: edition.rules.map((one): Rule =>
        one.id === rule ? { ...one, disagrees: 'Another page' } : one,
      ),
    }))
    return withSection(base, 'editions', editions)
  }

  const lapsing = adult('p-1', {
    certificates: [certificate('p-1', 'first-aid'), certificate('p-1', 'cpr', { lastDay: '2027-07-09' })],
    cards: [card('p-1', 'B')],
  })

  it.each([
    ['grant.bucking.B', '2027-07-08/2027-07-11'],
    ['age.least', '2027-07-08/2027-07-11'],
    ['certificate.cpr', '2027-07-10/2027-07-11'],
    ['certificate.first-aid', undefined],
    ['grant.bucking.A', undefined],
  ])('[AU63] beside %s: on %s', (rule, days) => {
    const answer = answerAbout(disagreeing(rule, lapsing), question(work(), '2027-07-08', '2027-07-11'))
    const expected = days === undefined ? [] : [`sources-disagree other=Another page | ${rule} | ${days}`]
    expect(notesOf(answer)).toEqual(expected)
  })
})

describe('cards longer than their term', () => {
  const carriedIn = { issuer: 'Invented Agency' }
  const longer = (lastDay: string, termLastDay: string, day: string) => [
    `longer-than-term lastDay=${lastDay} termLastDay=${termLastDay} | term.sawyer | ${day}/${day}`,
    expect.stringMatching(
      new RegExp(
        `^sources-disagree other=The source says three years.* \\| term\\.sawyer \\| ${day}/${day}$`,
      ),
    ) as string,
  ]

  it.each<[string, Part[], WorkSaid, string, string[]]>([
    ['the last day of the term', [holder('B', { carriedIn })], {}, '2027-07-08', []],
    [
      'a day longer',
      [holder('B', { carriedIn, lastDay: '2028-04-14' })],
      {},
      '2027-07-08',
      longer('2028-04-14', '2028-04-13', '2027-07-08'),
    ],
    ['a day longer, issued here', [holder('B', { lastDay: '2028-04-14' })], {}, '2027-07-08', []],
    [
      'by the earliest edition, where none was in force on its effective day',
      [
        adult('p-1', {
          certificates: ['first-aid', 'cpr'].map((subject) =>
            certificate('p-1', subject, { firstDay: '2014-01-01' }),
          ),
          cards: [card('p-1', 'B', { carriedIn, effectiveDay: '2016-07-18', lastDay: '2019-07-18' })],
        }),
      ],
      {},
      '2017-07-08',
      longer('2019-07-18', '2019-07-17', '2017-07-08'),
    ],
    [
      'by the term of its own book',
      [
        adult('p-1', {
          cards: [card('p-1', 'B', { carriedIn, lastDay: '2028-04-14' })],
        }),
        { places: [place('creek', { books: [{ book: 'cooperator-crosscut', firstDay: '2027-01-01' }] })] },
      ],
      { place: 'creek' },
      '2027-07-08',
      longer('2028-04-14', '2028-04-13', '2027-07-08'),
    ],
  ])('[AU63] [AU64] %s', (_name, facts, said, day, notes) => {
    expect(notesOf(answerTo({ facts, work: said, first: day }))).toEqual(notes)
  })
})

describe('the days of a note', () => {
  const unstated = (id: string, firstDay: string, lastDay: string) =>
    certificate('p-1', 'cpr', { id, delivery: 'not-stated', firstDay, lastDay })

  it('[AU65] are joined where they touch, and apart where they do not', () => {
    const facts = [
      adult('p-1', {
        certificates: [
          certificate('p-1', 'first-aid'),
          unstated('one', '2027-07-01', '2027-07-09'),
          unstated('two', '2027-07-10', '2027-07-11'),
          certificate('p-1', 'cpr', { id: 'stated', firstDay: '2027-07-12', lastDay: '2027-07-12' }),
          unstated('three', '2027-07-13', '2027-07-31'),
        ],
        cards: [card('p-1', 'B')],
      }),
    ]
    const answer = answerTo({ facts, last: '2027-07-15' })
    expect(notesOf(answer)).toEqual([
      'delivery-not-stated subject=cpr | certificate.cpr | 2027-07-08/2027-07-11 2027-07-13/2027-07-15',
    ])
    const note = answer.notes.find(({ kind }) => kind === 'delivery-not-stated')
    expect(note?.records).toEqual(['one', 'three', 'two'])
  })
})
