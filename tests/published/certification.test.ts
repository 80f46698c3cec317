import { describe, it } from 'vitest'
import { lastDayOfTerm } from '../../lib/core/calendar/anniversaries.ts'
import { dateOf } from '../../lib/core/calendar/dates.ts'
import { card, ending, extension, lift, suspension } from '../builders/cards.ts'
import { adult, certificate } from '../builders/people.ts'
import { shippedBooks } from '../builders/shipped-books.ts'
import type { Part } from '../builders/records.ts'
import { expectPublished, type AuthorityRow } from './authority-row.ts'

type CardSaid = NonNullable<Parameters<typeof card>[2]>

/** First aid and CPR that hold over every day asked here. */
const held = ['first-aid', 'cpr'].map((subject) =>
  certificate('p-1', subject, { firstDay: '2015-01-01', lastDay: '2040-12-31' }),
)

function holder(level: string, said: CardSaid = {}): Part {
  return adult('p-1', { certificates: held, cards: [card('p-1', level, said)] })
}

/** A card from its effective day through the last day that the term of its book proposes. */
function byTerm(book: string, level: string, effectiveDay: string): Part {
  const edition = shippedBooks().editions.find((one) => one.book === book)
  const rule = edition?.rules.find((one) => one.kind === 'term' && one.levels.includes(level))
  if (rule?.kind !== 'term') throw new Error(`${book} states no term for ${level}`)
  return holder(level, {
    book,
    effectiveDay,
    lastDay: lastDayOfTerm(dateOf(effectiveDay), rule.term, rule.end),
  })
}

const INTERIM = 'FS interim directive to FSM 2350 and 2358, effective 2021-10-08'
const SCHEME = 'Cooperator saw programme pages (A every year, B every two, C every three, bucking only)'
const MANUAL = 'FSM 2358 (2016), as reported at its release'

const CERTIFICATE_LIFE: AuthorityRow[] = [
  {
    source: 'FSM 2358.21',
    fact: 'certified 14 May 2023: good on 13 May 2026',
    facts: [byTerm('federal-crosscut', 'B', '2023-05-14')],
    day: '2026-05-13',
    standing: 'independent',
    findings: [],
  },
  {
    source: 'FSM 2358.21, the stricter reading',
    fact: 'and not on 14 May 2026',
    facts: [byTerm('federal-crosscut', 'B', '2023-05-14')],
    day: '2026-05-14',
    standing: 'none',
    findings: ['card-no-longer-valid'],
  },
  {
    source: 'FSM 2358.21',
    fact: 'certified 29 February 2024: good on 27 February 2027',
    facts: [byTerm('federal-crosscut', 'B', '2024-02-29')],
    day: '2027-02-27',
    standing: 'independent',
    findings: [],
  },
  {
    source: 'FSM 2358.21, clamped, the stricter reading',
    fact: 'and not on 28 February 2027',
    facts: [byTerm('federal-crosscut', 'B', '2024-02-29')],
    day: '2027-02-28',
    standing: 'none',
    findings: ['card-no-longer-valid'],
  },
  {
    source: SCHEME,
    fact: 'a cooperator A of 10 June 2025: good on 9 June 2026',
    facts: [byTerm('cooperator-crosscut', 'A', '2025-06-10'), { book: 'cooperator-crosscut' }],
    day: '2026-06-09',
    standing: 'own-level',
    findings: ['needs-supervisor'],
  },
  {
    source: SCHEME,
    fact: 'and not on 10 June 2026',
    facts: [byTerm('cooperator-crosscut', 'A', '2025-06-10'), { book: 'cooperator-crosscut' }],
    day: '2026-06-10',
    standing: 'none',
    findings: ['card-no-longer-valid', 'needs-supervisor'],
  },
  {
    source: 'FSM 2358, from memory: no grace was found',
    fact: 'a card that ended the day before',
    facts: [holder('B', { lastDay: '2027-07-07' })],
    standing: 'none',
    findings: ['card-no-longer-valid'],
  },
  {
    source: MANUAL,
    fact: 'cards valid on 19 July 2016 stay valid until their own last day',
    facts: [holder('B', { effectiveDay: '2014-05-01', lastDay: '2017-04-30' })],
    day: '2017-04-30',
    standing: 'independent',
    findings: [],
  },
  {
    source: MANUAL,
    fact: 'the directive is in force from 19 July 2016',
    facts: [holder('B', { effectiveDay: '2014-05-01', lastDay: '2017-04-30' })],
    day: '2016-07-19',
    standing: 'independent',
    findings: [],
  },
  {
    source: MANUAL,
    fact: 'and says nothing of 18 July 2016',
    facts: [holder('B', { effectiveDay: '2014-05-01', lastDay: '2017-04-30' })],
    day: '2016-07-18',
    standing: 'unknown',
    findings: ['no-edition'],
  },
]

/** Three years that end on the day. */
const ending3 = (lastDay: string): Part =>
  holder('B', { effectiveDay: `${Number(lastDay.slice(0, 4)) - 3}${lastDay.slice(4)}`, lastDay })

const EXTENSION: AuthorityRow[] = [
  {
    source: INTERIM,
    fact: 'a card that ended on 1 October 2019 ran to 31 December 2022',
    facts: [ending3('2019-10-01')],
    day: '2022-12-31',
    standing: 'independent',
    findings: [],
  },
  {
    source: INTERIM,
    fact: 'and not a day longer',
    facts: [ending3('2019-10-01')],
    day: '2023-01-01',
    standing: 'none',
    findings: ['card-no-longer-valid'],
  },
  {
    source: INTERIM,
    fact: 'a card that ended the day before the window did not',
    facts: [ending3('2019-09-30')],
    day: '2019-10-01',
    standing: 'none',
    findings: ['card-no-longer-valid'],
  },
  {
    source: INTERIM,
    fact: 'a card that would end on 31 December 2022 ends there',
    facts: [ending3('2022-12-31')],
    day: '2023-01-01',
    standing: 'none',
    findings: ['card-no-longer-valid'],
  },
  {
    source: INTERIM,
    fact: 'a card that ends on 1 January 2023 is outside and good that day',
    facts: [ending3('2023-01-01')],
    day: '2023-01-01',
    standing: 'independent',
    findings: [],
  },
  {
    source: INTERIM,
    fact: 'and not the day after',
    facts: [ending3('2023-01-01')],
    day: '2023-01-02',
    standing: 'none',
    findings: ['card-no-longer-valid'],
  },
  {
    source: 'FS interim directive of 2021: a dated order, not an edit of the last day',
    fact: 'it revives nothing that was withdrawn',
    facts: [ending3('2020-05-01'), { endings: [ending('card-p-1', '2020-03-01')] }],
    day: '2021-12-01',
    standing: 'none',
    findings: ['card-no-longer-valid'],
  },
  {
    source: 'common practice, no source',
    fact: 'an extension of one card is a dated record beside it',
    facts: [
      holder('B', { lastDay: '2027-06-30' }),
      { extensions: [extension('one', { runsTo: '2027-07-08', of: { kind: 'card', card: 'card-p-1' } })] },
    ],
    standing: 'independent',
    findings: [],
  },
]

const SUSPENSION: AuthorityRow[] = [
  {
    source: 'FSM 2358, withdrawal for unsafe acts: from memory',
    fact: 'withdrawn for an unsafe act, on that day',
    facts: [holder('B'), { endings: [ending('card-p-1', '2027-07-08')] }],
    standing: 'none',
    findings: ['card-no-longer-valid'],
  },
  {
    source: 'FSM 2358, withdrawal for unsafe acts: from memory',
    fact: 'and good the day before',
    facts: [holder('B'), { endings: [ending('card-p-1', '2027-07-08')] }],
    day: '2027-07-07',
    standing: 'independent',
    findings: [],
  },
  {
    source: 'Saw operations guide, chapter on accidents and near misses: from memory',
    fact: 'after an incident no sawing before a review',
    facts: [holder('B'), { suspensions: [suspension('stop', { kind: 'incident' })] }],
    day: '2027-08-31',
    standing: 'none',
    findings: ['suspended'],
  },
  {
    source: 'Saw operations guide, chapter on accidents and near misses: from memory',
    fact: 'and from the day of the lifting on again',
    facts: [
      holder('B'),
      { suspensions: [suspension('stop', { kind: 'incident' })], lifts: [lift('stop', '2027-08-31')] },
    ],
    day: '2027-08-31',
    standing: 'independent',
    findings: [],
  },
]

describe('life of a certificate', () => {
  it.each(CERTIFICATE_LIFE)('$source: $fact', expectPublished)
})
describe('extensions', () => {
  it.each(EXTENSION)('$source: $fact', expectPublished)
})
describe('suspension and withdrawal', () => {
  it.each(SUSPENSION)('$source: $fact', expectPublished)
})
