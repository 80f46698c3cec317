import { describe, expect, it } from 'vitest'
import type { Card } from '../../../lib/core/cards/cards.schema.ts'
import { longerThanTerm } from '../../../lib/core/cards/terms.ts'
import { dateOf } from '../../../lib/core/calendar/dates.ts'
import { EditionIndex } from '../../../lib/core/rulebooks/edition-index.ts'
import { card } from '../../builders/cards.ts'
import { edition, rule } from '../rulebooks/sample-edition.ts'

/** An edition with one term for its level `helper`, alias `hand`. */
function termOf(years: number, said: Record<string, unknown> = {}): EditionIndex {
  const term = rule('term', { levels: ['helper'], term: { years }, end: 'day-before-anniversary' })
  return new EditionIndex({ ...edition([term], said), recordedIn: 1 })
}

/** A card carried in, of the level `helper`, from 10 June 2025. */
function carried(lastDay: string, said: Partial<Card> = {}): Card {
  const issued = card('p-1', 'helper', { book: 'invented', effectiveDay: '2025-06-10', lastDay })
  return { ...issued, carriedIn: { issuer: 'Invented issuer' }, ...said }
}

const longer = (lastDay: string, termLastDay: string, by = 'invented-1') => ({
  lastDay,
  termLastDay,
  rule: { edition: by, rule: 'term', source: 'Invented source', mark: 'program-default' },
})

describe('a card carried in beside the term of its book', () => {
  it.each([
    ['on the last day of the term', '2027-06-09', undefined],
    ['a day longer', '2027-06-10', longer('2027-06-10', '2027-06-09')],
  ])('[CD16] %s', (_name, lastDay, told) => {
    expect(longerThanTerm(carried(lastDay), [termOf(2)])).toEqual(told)
  })

  it('[CD16] by the edition in force on its effective day, wherever that stands', () => {
    const before = termOf(1, { lastDay: '2025-06-09' })
    const after = termOf(2, { id: 'invented-2', firstDay: '2025-06-10' })
    for (const editions of [
      [before, after],
      [after, before],
    ])
      expect(longerThanTerm(carried('2027-06-10'), editions)).toEqual(
        longer('2027-06-10', '2027-06-09', 'invented-2'),
      )
  })

  it('[CD16] by the earliest edition, where none was in force yet', () => {
    const earliest = termOf(1, { firstDay: '2026-01-01', lastDay: '2026-12-31' })
    const later = termOf(3, { id: 'invented-2', firstDay: '2027-01-01' })
    expect(longerThanTerm(carried('2026-06-10'), [later, earliest])).toEqual(
      longer('2026-06-10', '2026-06-09'),
    )
  })

  it('[CD16] what a source says otherwise of the term stands beside', () => {
    const term = rule('term', {
      levels: ['helper'],
      term: { years: 2 },
      end: 'day-before-anniversary',
      disagrees: 'Another page',
    })
    const disagreed = new EditionIndex({ ...edition([term]), recordedIn: 1 })
    expect(longerThanTerm(carried('2027-06-10'), [disagreed])).toEqual({
      ...longer('2027-06-10', '2027-06-09'),
      disagrees: 'Another page',
    })
  })

  it('[CD16] its level is read by an alias too', () => {
    expect(longerThanTerm(carried('2027-06-10', { level: 'hand' }), [termOf(2)])).toBeDefined()
  })

  it.each<[string, Partial<Card>, EditionIndex[]]>([
    ['a level without a term', { level: 'master' }, [termOf(2)]],
    ['a level that the book lacks', { level: 'boss' }, [termOf(2)]],
    ['a book without editions', {}, []],
  ])('[CD16] never longer: %s', (_name, said, editions) => {
    expect(longerThanTerm(carried('2099-12-31', said), editions)).toBeUndefined()
  })

  it('[CD16] never longer: a card decided here, and one without a last day', () => {
    const { carriedIn: _issuer, ...decided } = carried('2099-12-31')
    const { lastDay: _day, ...open } = carried('2099-12-31')
    expect(longerThanTerm({ ...decided, effectiveDay: dateOf('2025-06-10') }, [termOf(2)])).toBeUndefined()
    expect(longerThanTerm(open, [termOf(2)])).toBeUndefined()
  })
})
