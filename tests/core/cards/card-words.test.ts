import { describe, expect, it } from 'vitest'
import { toEpochDay, dateOf } from '../../../lib/core/calendar/dates.ts'
import { BEFORE_ALL } from '../../../lib/core/calendar/spans.ts'
import {
  indexCard,
  namesWork,
  recognisedLevel,
  type CardRecords,
} from '../../../lib/core/cards/card-index.ts'
import { judgeRestrictions, type RestrictedWork } from '../../../lib/core/cards/restrictions.ts'
import { indexSuspension } from '../../../lib/core/cards/suspensions.ts'
import { EditionIndex } from '../../../lib/core/rulebooks/edition-index.ts'
import { INDEPENDENT, NONE } from '../../../lib/core/rulebooks/standing.ts'
import { isInches } from '../../../lib/core/kernel/measures.ts'
import { card, lift, resolution, suspension } from '../../builders/cards.ts'
import { shippedBooks } from '../../builders/shipped-books.ts'

const nothing: CardRecords = { endings: [], extensions: [], resolutions: [], suspensions: [] }

function edition(book: string): EditionIndex {
  const found = shippedBooks().editions.find((one) => one.book === book)
  if (found === undefined) throw new Error(`no edition of ${book}`)
  return new EditionIndex(found)
}

function workOf(said: Partial<RestrictedWork>): RestrictedWork {
  const diameter = 20
  if (!isInches(diameter)) throw new Error('twenty is a measure')
  return {
    workKind: 'bucking',
    sawKind: 'crosscut',
    diameter,
    hands: undefined,
    species: undefined,
    places: undefined,
    complexity: 'least',
    ...said,
  }
}

describe('recognition and words', () => {
  it('[CD10] a card names what is on it; one that states no work kinds may name any', () => {
    const named = indexCard(card('p-1', 'B'), nothing)
    expect(namesWork(named, 'bucking', 'crosscut')).toBe(true)
    expect(namesWork(named, 'felling', 'crosscut')).toBe(false)
    expect(namesWork(named, 'bucking', 'chain-saw')).toBe(false)
    const unsaid = indexCard(card('p-1', 'B', { workKinds: 'not-stated' }), nothing)
    expect(namesWork(unsaid, 'felling', 'crosscut')).toBe(true)
    expect(namesWork(unsaid, 'felling', 'chain-saw')).toBe(false)
  })

  it.each([
    ['federal-crosscut', 'federal-crosscut', 'B', 'felling', 'B'],
    ['federal-crosscut', 'federal-crosscut', 'Z', 'bucking', undefined],
    ['cooperator-crosscut', 'federal-crosscut', 'C', 'bucking', 'C'],
    ['cooperator-crosscut', 'federal-crosscut', 'C', 'felling', undefined],
    ['federal-crosscut', 'cooperator-crosscut', 'C', 'bucking', undefined],
    ['interagency-faller', 'federal-crosscut', 'C', 'bucking', undefined],
  ] as const)(
    '[CD11] under %s a card of %s, level %s, for %s counts as %s',
    (governing, book, level, workKind, counts) => {
      expect(recognisedLevel(edition(governing), { book, level }, workKind, 'crosscut')).toBe(counts)
    },
  )

  it('[CD12] every resolution of the words binds, within the work kinds that the words named', () => {
    const words = card('p-1', 'B', {
      restrictions: [{ id: 'w', kind: 'words', text: 'invented words', workKinds: ['bucking'] }],
    })
    const resolutions = [
      resolution('card-p-1', 'w', { id: 'one', into: [{ id: 'd', kind: 'greatest-diameter', inches: 18 }] }),
      resolution('card-p-1', 'w', {
        id: 'two',
        into: [{ id: 'n', kind: 'no-felling', workKinds: ['felling'] }],
      }),
    ]
    const { restrictions } = indexCard(words, { ...nothing, resolutions })
    expect(
      restrictions.map(({ restriction, resolution: by }) => [restriction.kind, restriction.workKinds, by]),
    ).toEqual([
      ['greatest-diameter', ['bucking'], 'one'],
      ['no-felling', ['felling'], 'two'],
    ])
  })

  it.each([
    ['Grey Fir', 'grey fir', INDEPENDENT],
    ['Sérac pine', 'Se\u0301rac pine', INDEPENDENT],
    ['Grey Fir', 'grey firs', NONE],
  ])('[CD13] a card for %s and a log of %s', (allowed, species, rank) => {
    const restricted = card('p-1', 'B', { restrictions: [{ id: 's', kind: 'species', species: [allowed] }] })
    const judged = judgeRestrictions(
      edition('federal-crosscut'),
      indexCard(restricted, nothing),
      workOf({ species }),
      undefined,
    )
    expect(judged.rank).toBe(rank)
  })
})

describe('suspensions', () => {
  const day = (text: string) => toEpochDay(dateOf(text))

  it('[CD14] the earliest lift ends it the day before; on the first day nothing is left', () => {
    const stop = suspension('s-1')
    const { days } = indexSuspension(
      stop,
      [lift('s-1', '2027-08-01', { id: 'late' }), lift('s-1', '2027-07-20', { id: 'early' })],
      'America/Denver',
    )
    expect(days).toEqual({ first: day('2027-07-09'), last: day('2027-07-19') })
    const gone = indexSuspension(stop, [lift('s-1', '2027-07-09')], 'America/Denver')
    expect(gone.days.last).toBeLessThan(gone.days.first)
    expect(gone.days.last).toBeGreaterThan(BEFORE_ALL)
  })

  it('[CD15] notices are days in the zone of the program, the earliest of several', () => {
    const notices = [
      { person: 'p-1', at: '2027-07-10T05:59:59.999Z' },
      { person: 'p-1', at: '2027-07-12T12:00:00Z' },
      { person: 'p-2', at: '2027-07-10T06:00:00Z' },
    ]
    const { noticeDays } = indexSuspension(suspension('s-1', { notices }), [], 'America/Denver')
    expect(noticeDays.get('p-1')).toBe(day('2027-07-09'))
    expect(noticeDays.get('p-2')).toBe(day('2027-07-10'))
  })
})
