import { describe, expect, it } from 'vitest'
import { dateOf } from '../../../lib/core/calendar/dates.ts'
import type { Edition } from '../../../lib/core/rulebooks/books.schema.ts'
import type { Rule } from '../../../lib/core/rulebooks/rules.schema.ts'
import { card } from '../../builders/cards.ts'
import { adult, certificate } from '../../builders/people.ts'
import { emptyRecords, records, withParts, withSection, type Part } from '../../builders/records.ts'
import { shippedBooks } from '../../builders/shipped-books.ts'
import { place, question, work } from '../../builders/work.ts'
import { answerAbout, expectRow, spansOf, toldOf, type Row } from './told.ts'

const NO_CARD = 'no-card sawKind=crosscut workKind=bucking | card.needed | none'
const notRecognised = (book: string, level: string) =>
  `book-does-not-recognise book=${book} level=${level} | recognition | none`

function edition(book: string, change: (whole: Edition) => Partial<Edition>): Edition {
  const whole = shippedBooks().editions.find((one) => one.book === book)
  if (whole === undefined) throw new Error(`no edition of ${book}`)
  return { ...whole, ...change(whole) }
}

/** Records under the federal book of one edition. */
function under(only: Edition, ...facts: Parameters<typeof withParts>[1][]) {
  return withParts(emptyRecords(), { editions: [only] }, ...facts)
}

describe('the book that governs', () => {
  const places = [
    place('ashlar', { kind: 'program' }),
    place('quill', {
      kind: 'unit',
      parent: 'ashlar',
      books: [{ book: 'interagency-faller', firstDay: '2027-07-10', lastDay: '2027-07-12' }],
    }),
    place('gate', {
      parent: 'quill',
      books: [{ book: 'federal-crosscut', firstDay: '2027-07-12' }],
    }),
    place('ford', { parent: 'quill' }),
  ]
  const facts = [
    adult('p-1', { cards: [card('p-1', 'B')] }),
    { places, certificates: [certificate('p-1', 'annual-refresher')] },
  ]
  const unrecognised = notRecognised('federal-crosscut', 'B')

  const rows: Row[] = [
    {
      name: 'the next place upwards that names one, on its days',
      facts,
      work: { place: 'ford' },
      last: '2027-07-14',
      standing: 'none',
      spans: [
        'independent 2027-07-08 2027-07-09',
        'none 2027-07-10 2027-07-12',
        'independent 2027-07-13 2027-07-14',
      ],
      findings: [unrecognised],
    },
    {
      name: 'the nearest first',
      facts,
      work: { place: 'gate' },
      last: '2027-07-14',
      standing: 'none',
      spans: [
        'independent 2027-07-08 2027-07-09',
        'none 2027-07-10 2027-07-11',
        'independent 2027-07-12 2027-07-14',
      ],
      findings: [unrecognised],
    },
    { name: "no place: the program's", facts, last: '2027-07-14', standing: 'independent', findings: [] },
    {
      name: "nobody names one: the program's, which may be another",
      facts: [...facts, { book: 'interagency-faller' }],
      work: { place: 'ashlar' },
      standing: 'none',
      findings: [unrecognised],
    },
  ]

  it.each(rows)('[AU14] $name', expectRow)

  it('[AU15] days before the first edition are unknown, with nothing else said', () => {
    const base = records(adult('p-1'))
    const answer = answerAbout(base, question(work(), '2016-07-17', '2016-07-19'))
    expect(spansOf(answer)).toEqual(['unknown 2016-07-17 2016-07-18', 'none 2016-07-19 2016-07-19'])
    const [before] = answer.spans
    expect(before?.findings).toMatchObject([
      { kind: 'no-edition', book: 'federal-crosscut', allows: 'unknown' },
    ])
    expect(before?.findings[0]).not.toHaveProperty('rule')
  })

  it('[AU15] so are days after the last edition', () => {
    const closed = edition('federal-crosscut', () => ({ lastDay: dateOf('2027-07-09') }))
    const base = under(closed, adult('p-1', { cards: [card('p-1', 'B')] }))
    const answer = answerAbout(base, question(work(), '2027-07-08', '2027-07-11'))
    expect(spansOf(answer)).toEqual(['independent 2027-07-08 2027-07-09', 'unknown 2027-07-10 2027-07-11'])
    expect(answer.findings.map(({ kind }) => kind)).toEqual(['no-edition'])
  })
})

describe('the level as which a card counts', () => {
  const renamed = edition('federal-crosscut', (whole) => ({
    id: 'federal-next',
    levels: whole.levels.map((level) =>
      level.level === 'B' ? { ...level, level: 'B-2', aliases: ['B'] } : level,
    ),
    rules: whole.rules.map((rule): Rule =>
      rule.kind === 'grant' && rule.level === 'B' ? { ...rule, id: `${rule.id}-2`, level: 'B-2' } : rule,
    ),
  }))

  it('[AU16] by the alias that a level has from an earlier edition', () => {
    const base = under(renamed, adult('p-1', { cards: [card('p-1', 'B')] }))
    expect(answerAbout(base, question(work(), '2027-07-08')).standing).toBe('independent')
    const high = answerAbout(base, question(work({ complexity: 'high' }), '2027-07-08'))
    expect(toldOf(high)).toEqual(['training-only level=B-2 supervisor=C | grant.bucking.B-2 | training'])
  })

  const cooperatorPlace = place('creek', { books: [{ book: 'cooperator-crosscut', firstDay: '2027-01-01' }] })
  const here = { places: [cooperatorPlace] }
  const federal = (level: string, said: Parameters<typeof card>[2] = {}) =>
    adult('p-1', { cards: [card('p-1', level, { workKinds: ['bucking', 'felling'], ...said })] })

  const recognised: Row[] = [
    {
      name: "federal B at a cooperator's place",
      facts: [federal('B'), here],
      work: { place: 'creek', complexity: 'moderate' },
      standing: 'independent',
      findings: [],
    },
    {
      name: "with the cooperator's own cells",
      facts: [federal('B'), here],
      work: { place: 'creek', complexity: 'high' },
      standing: 'none',
      findings: ['level-too-low complexity=high level=B | grant.bucking.B | none'],
    },
    {
      name: "with the card's own restrictions",
      facts: [federal('B', { restrictions: [{ id: 'width', kind: 'greatest-diameter', inches: 18 }] }), here],
      work: { place: 'creek' },
      standing: 'none',
      findings: ['over-diameter diameter=20 limit=18 | restriction | none'],
    },
    {
      name: "with the card's own days",
      facts: [federal('B', { lastDay: '2027-07-07' }), here],
      work: { place: 'creek' },
      standing: 'none',
      findings: ['card-no-longer-valid lastDay=2027-07-07 | card.days | none'],
    },
    {
      name: 'a level that the recognition leaves out',
      facts: [federal('trainee'), here],
      work: { place: 'creek' },
      standing: 'none',
      findings: [notRecognised('federal-crosscut', 'trainee')],
    },
  ]

  it.each(recognised)('[AU16] $name', expectRow)

  it('[AU16] recognition is not passed on', () => {
    const third = edition('cooperator-crosscut', (whole) => ({
      id: 'third-1',
      book: 'third-crosscut',
      rules: whole.rules.map((rule): Rule =>
        rule.kind === 'recognition'
          ? {
              ...rule,
              books: [
                {
                  book: 'cooperator-crosscut',
                  workKinds: ['bucking'],
                  sawKinds: ['crosscut'],
                  levels: [{ theirs: 'B', ours: 'B' }],
                },
              ],
            }
          : rule,
      ),
    }))
    const base = withParts(records(federal('B')), { editions: [third], book: 'third-crosscut' })
    const answer = answerAbout(base, question(work(), '2027-07-08'))
    expect(toldOf(answer)).toEqual([notRecognised('federal-crosscut', 'B')])
  })
})

describe('a book that does not recognise the card', () => {
  const cooperator = (said: Parameters<typeof card>[2] = {}) =>
    card('p-1', 'B', { book: 'cooperator-crosscut', ...said })
  const interagency: Part = {
    book: 'interagency-faller',
    certificates: [certificate('p-1', 'annual-refresher')],
  }
  const rows: Row[] = [
    {
      name: "a cooperator's card under the federal book: neither its level nor its restrictions are judged",
      facts: [
        adult('p-1', {
          cards: [cooperator({ restrictions: [{ id: 'width', kind: 'greatest-diameter', inches: 18 }] })],
        }),
      ],
      work: { complexity: 'high' },
      standing: 'none',
      findings: [notRecognised('cooperator-crosscut', 'B')],
    },
    {
      name: 'a card that names another work kind is no card, and not unrecognised',
      facts: [adult('p-1', { cards: [cooperator()] })],
      work: { workKind: 'felling' },
      standing: 'none',
      findings: ['no-card sawKind=crosscut workKind=felling | card.needed | none'],
    },
    {
      name: 'a level that the book does not know',
      facts: [adult('p-1', { cards: [card('p-1', 'D')] })],
      standing: 'none',
      findings: [notRecognised('federal-crosscut', 'D')],
    },
    {
      name: 'a crosscut card under the interagency book, which grants nothing with a crosscut saw',
      facts: [adult('p-1', { cards: [card('p-1', 'C')] }), interagency],
      standing: 'none',
      findings: [notRecognised('federal-crosscut', 'C')],
    },
    {
      name: 'under the interagency book without any card',
      facts: [adult('p-1'), interagency],
      standing: 'none',
      findings: [NO_CARD],
    },
    {
      name: 'a federal card that names felling, under the cooperator book, which grants none',
      facts: [
        adult('p-1', { cards: [card('p-1', 'C', { workKinds: ['bucking', 'felling'] })] }),
        { book: 'cooperator-crosscut' },
      ],
      work: { workKind: 'felling' },
      standing: 'none',
      findings: [notRecognised('federal-crosscut', 'C')],
    },
  ]

  it.each(rows)('[AU17] $name', expectRow)

  it('[AU18] a cell that the book does not state is none', () => {
    const silent = edition('federal-crosscut', (whole) => ({
      rules: whole.rules.filter(({ id }) => id !== 'grant.bucking.B'),
    }))
    const base = under(silent, adult('p-1', { cards: [card('p-1', 'B')] }))
    const answer = answerAbout(base, question(work(), '2027-07-08'))
    expect(answer.standing).toBe('none')
    expect(answer.findings).toMatchObject([
      { kind: 'level-too-low', level: 'B', complexity: 'least', allows: 'none' },
    ])
  })

  it('[AU18] though another level of the book is given it', () => {
    const silent = edition('federal-crosscut', (whole) => ({
      rules: whole.rules.filter(({ id }) => id !== 'grant.bucking.B'),
    }))
    const base = withSection(under(silent, adult('p-1')), 'cards', [card('p-1', 'C')])
    expect(answerAbout(base, question(work(), '2027-07-08')).standing).toBe('independent')
  })
})
