import { describe, expect, it } from 'vitest'
import { lastDayOfTerm } from '../../lib/core/calendar/anniversaries.ts'
import { dateOf } from '../../lib/core/calendar/dates.ts'
import type { Rule, RuleKind } from '../../lib/core/rulebooks/rules.schema.ts'
import { shippedBookFiles } from '../builders/shipped-book-files.ts'
import { printFigure } from '../figures.ts'
import { COURSE_ROWS } from './course-rows.ts'
import { CUT_ROWS } from './cut-book-rows.ts'
import { FEDERAL_ROWS } from './federal-book-rows.ts'
import { SCHEME_ROWS } from './scheme-book-rows.ts'

const BOOK_ROWS = [...FEDERAL_ROWS, ...CUT_ROWS, ...SCHEME_ROWS, ...COURSE_ROWS]
const files = shippedBookFiles()
const editions = files.flatMap((file) => file.editions)

function editionOf(id: string) {
  const found = editions.find((known) => known.id === id)
  if (found === undefined) throw new Error(`no edition ${id} ships`)
  return found
}

function ruleOf(edition: string, id: string): Rule {
  const found = editionOf(edition).rules.find((known) => known.id === id)
  if (found === undefined) throw new Error(`${edition} has no rule ${id}`)
  return found
}

describe('values of the sources that a book holds', () => {
  it.each(BOOK_ROWS)('$source: $fact ($edition $rule)', ({ edition, rule, source, mark, figures }) => {
    const held = ruleOf(edition, rule)
    expect(held).toMatchObject({ mark, ...figures })
    expect(held.source).toContain(source)
  })
})

describe('FSM 2358: days of the book', () => {
  const federal = files.find(({ book }) => book.id === 'federal-crosscut')

  it('FSM 2358 (81 FR 46890): in force from 19 July 2016 on, open-ended', () => {
    const edition = editionOf('federal-crosscut-2016')
    expect(edition.firstDay).toBe('2016-07-19')
    expect(edition).not.toHaveProperty('lastDay')
  })

  it('FSM 2358 as amended, published 6 March 2023: named and not held', () => {
    expect(editionOf('federal-crosscut-2016').successor?.day).toBe('2023-03-06')
  })

  it('Interim directive effective 8 October 2021: 1 October 2019 through 31 December 2022 run to its end', () => {
    expect(federal?.extensions).toMatchObject([
      {
        effectiveDay: '2021-10-08',
        runsTo: '2022-12-31',
        of: { kind: 'window', firstDay: '2019-10-01', lastDay: '2022-12-31' },
      },
    ])
  })

  it('FSM 2358: levels in the order trainee, A, B, C', () => {
    const levels = editionOf('federal-crosscut-2016').levels
    const byRank = [...levels].sort((left, right) => left.rank - right.rank)
    expect(byRank.map(({ level, rank }) => [level, rank])).toEqual([
      ['trainee', 0],
      ['A', 1],
      ['B', 2],
      ['C', 3],
    ])
  })
})

describe('last days that the books compute', () => {
  it.each([
    {
      source: 'FSM 2358.21',
      fact: 'three years from 14 May 2023, the stricter reading',
      edition: 'federal-crosscut-2016',
      rule: 'term.sawyer',
      from: '2023-05-14',
      last: '2026-05-13',
    },
    {
      source: 'FSM 2358.21',
      fact: 'three years from 29 February 2024, clamped',
      edition: 'federal-crosscut-2016',
      rule: 'term.sawyer',
      from: '2024-02-29',
      last: '2027-02-27',
    },
    {
      source: 'Back Country Horsemen of Washington',
      fact: 'an A from 10 June 2025, one year',
      edition: 'cooperator-crosscut-1',
      rule: 'term.A',
      from: '2025-06-10',
      last: '2026-06-09',
    },
    {
      source: 'Back Country Horsemen of Washington',
      fact: 'a B from 10 June 2025, two years',
      edition: 'cooperator-crosscut-1',
      rule: 'term.B',
      from: '2025-06-10',
      last: '2027-06-09',
    },
    {
      source: 'Back Country Horsemen of Washington',
      fact: 'a C from 10 June 2025, three years',
      edition: 'cooperator-crosscut-1',
      rule: 'term.C',
      from: '2025-06-10',
      last: '2028-06-09',
    },
  ])('$source: $fact', ({ edition, rule, from, last }) => {
    const held = ruleOf(edition, rule)
    if (held.kind !== 'term') throw new Error(`${rule} is no term`)
    expect(lastDayOfTerm(dateOf(from), held.term, held.end)).toBe(last)
  })
})

describe('what the books do not hold', () => {
  it('Back Country Horsemen of Washington: no felling is granted', () => {
    const grants = editionOf('cooperator-crosscut-1').rules.filter((rule) => rule.kind === 'grant')
    expect(grants.map(({ workKind }) => workKind)).toEqual(['bucking', 'bucking', 'bucking'])
  })

  it('National Wildfire Coordinating Group: nothing is said of a crosscut saw', () => {
    const { rules } = editionOf('interagency-faller-1')
    const sawKinds = rules.flatMap((rule) => ('sawKind' in rule ? [rule.sawKind] : []))
    expect([...new Set(sawKinds)]).toEqual(['chain-saw'])
  })

  it('Practitioners, no published numeric rating: every factor and stacking is a program default and says so', () => {
    const rules = editions.flatMap((known) => known.rules)
    const ofWorksheet = rules.filter(({ kind }) => kind.startsWith('worksheet.'))
    expect(ofWorksheet.length).toBeGreaterThan(20)
    for (const { mark, source } of ofWorksheet) {
      expect(mark).toBe('program-default')
      expect(source).toContain('No published numeric rating')
    }
  })
})

describe('every rule of every book', () => {
  const remembered = editions.flatMap(({ id, rules }) =>
    rules.filter(({ mark }) => mark === 'from-memory').map((rule) => `${id} ${rule.id}`),
  )

  it('FSM 2358 and the others: a rule that no row here names is a program default or repeats one that is named', () => {
    const named = new Set(BOOK_ROWS.map(({ edition, rule }) => `${edition} ${rule}`))
    const sources = new Set(BOOK_ROWS.map(({ edition, rule }) => ruleOf(edition, rule).source))
    for (const { id, rules } of editions) {
      for (const rule of rules) {
        if (named.has(`${id} ${rule.id}`) || rule.mark === 'program-default') continue
        expect(sources, `${id} ${rule.id}`).toContain(rule.source)
      }
    }
    const counts = editions.map(({ id, rules }) => `${id} ${rules.length}`).join(', ')
    printFigure(`rules of the books: ${counts}; ${remembered.length} from memory: ${remembered.join(', ')}`)
  })

  it('FSM 2358 and the others: a source that says "memory" is marked so', () => {
    for (const { rules } of editions) {
      for (const { id, mark, source, kind } of rules) {
        if (kind === 'worksheet.factor' || !/from memory|only in summary/iu.test(source)) continue
        // That a student counts as an employee is ours, whatever the regulation says of employees.
        expect(id === 'age.student' ? 'from-memory' : mark, id).toBe('from-memory')
      }
    }
  })

  it('FSM 2358 and the others: each kind of rule stands in some book', () => {
    const kinds: readonly RuleKind[] = [
      'age.least',
      'age.capacity',
      'capacity.outside',
      'agreement',
      'certificate',
      'certificate.delivery',
      'certificate.seen',
      'assignment',
      'evaluator',
      'decider',
      'grant',
      'card.needed',
      'card.days',
      'card.reconciled',
      'restriction',
      'restriction.words',
      'suspension',
      'term',
      'recognition',
      'supervision',
      'supervision.partner',
      'supervision.trainer',
      'complexity.rated',
      'complexity.provisional',
      'worksheet.factor',
      'worksheet.stacking',
      'cautions.shown',
      'cut.share',
      'cut.angle',
      'cut.back-cut',
      'cut.length',
      'log.order',
      'log.offset',
      'log.wedges',
      'course.size',
      'course.field-days',
      'course.field-groups',
      'course.module',
      'course.prerequisite',
      'course.share',
      'training-record',
      'training-record.kept',
    ]
    const standing = new Set(editions.flatMap(({ rules }) => rules.map(({ kind }) => kind)))
    expect([...standing].sort()).toEqual([...kinds].sort())
  })
})
