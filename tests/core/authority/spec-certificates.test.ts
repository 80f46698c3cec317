import { describe, expect, it } from 'vitest'
import type { Certificate } from '../../../lib/core/people/people.schema.ts'
import type { Edition } from '../../../lib/core/rulebooks/books.schema.ts'
import type { Rule } from '../../../lib/core/rulebooks/rules.schema.ts'
import { card } from '../../builders/cards.ts'
import { adult, certificate } from '../../builders/people.ts'
import { records, withSection, type Part } from '../../builders/records.ts'
import { question, work } from '../../builders/work.ts'
import { answerAbout, answerTo, expectRow, notesOf, toldOf, type Row } from './told.ts'

type Said = NonNullable<Parameters<typeof certificate>[2]>

/** A B with first aid and the CPR records that a case says. */
function holder(cpr: readonly Said[], level = 'B'): Part {
  const named = cpr.map((said, index) => certificate('p-1', 'cpr', { id: `cpr-${index + 1}`, ...said }))
  return adult('p-1', {
    certificates: [certificate('p-1', 'first-aid'), ...named],
    cards: [card('p-1', level)],
  })
}

/** A CPR record of which the days that are not said are not known. */
function undated(days: { firstDay?: string; lastDay?: string }): Part {
  const { firstDay, lastDay, ...rest } = certificate('p-1', 'cpr', { id: 'open', ...days })
  const one: Certificate = {
    ...rest,
    ...(days.firstDay === undefined || firstDay === undefined ? {} : { firstDay }),
    ...(days.lastDay === undefined || lastDay === undefined ? {} : { lastDay }),
  }
  return { certificates: [one] }
}

const NOT_ON_RECORD = 'certificate-not-on-record subject=cpr | certificate.cpr | unknown'
const NOT_SEEN = 'certificate-not-seen subject=cpr | certificate.seen | unknown'
const DELIVERY = 'certificate-delivery subject=cpr | certificate.delivery | none'
const lapsed = (lastDay: string) =>
  `certificate-lapsed lastDay=${lastDay} subject=cpr | certificate.cpr | none`

const ONLINE: Said = { delivery: 'online', firstDay: '2027-03-01', lastDay: '2029-02-28' }

describe('one subject on one day', () => {
  const rows: Row[] = [
    {
      name: 'met through its last day, lapsed the day after',
      facts: [holder([{ lastDay: '2027-07-08' }])],
      last: '2027-07-09',
      standing: 'none',
      spans: ['independent 2027-07-08 2027-07-08', 'none 2027-07-09 2027-07-09'],
      findings: [lapsed('2027-07-08')],
    },
    {
      name: 'not on record before its first day, met from it on',
      facts: [holder([{ firstDay: '2027-07-09' }])],
      last: '2027-07-09',
      standing: 'unknown',
      spans: ['unknown 2027-07-08 2027-07-08', 'independent 2027-07-09 2027-07-09'],
      findings: [NOT_ON_RECORD],
    },
    { name: 'none on record', facts: [holder([])], standing: 'unknown', findings: [NOT_ON_RECORD] },
    { name: 'self-stated', facts: [holder([{ seen: false }])], standing: 'unknown', findings: [NOT_SEEN] },
    {
      name: 'self-stated beside one that has ended: not seen comes first',
      facts: [holder([{ seen: false }, { lastDay: '2027-07-07' }])],
      standing: 'unknown',
      findings: [NOT_SEEN],
    },
    {
      name: 'self-stated beside one that counts',
      facts: [holder([{ seen: false }, {}])],
      standing: 'independent',
      findings: [],
    },
    {
      name: 'online only beside a self-stated online one: not seen comes first',
      facts: [holder([ONLINE, { ...ONLINE, seen: false }])],
      standing: 'unknown',
      findings: [NOT_SEEN],
    },
    {
      name: 'no last day: may cover',
      facts: [holder([]), undated({ firstDay: '2027-07-08' })],
      standing: 'unknown',
      findings: [NOT_ON_RECORD],
    },
    {
      name: 'no first day: may cover',
      facts: [holder([]), undated({ lastDay: '2027-07-08' })],
      standing: 'unknown',
      findings: [NOT_ON_RECORD],
    },
    {
      name: 'no first day, ended the day before',
      facts: [holder([]), undated({ lastDay: '2027-07-07' })],
      standing: 'none',
      findings: [lapsed('2027-07-07')],
    },
    {
      name: 'no days beside one that has ended: may cover comes first',
      facts: [holder([{ lastDay: '2027-07-07' }]), undated({})],
      standing: 'unknown',
      findings: [NOT_ON_RECORD],
    },
    {
      name: 'no days beside an online one without a skills check: may cover comes first',
      facts: [holder([ONLINE]), undated({})],
      standing: 'unknown',
      findings: [NOT_ON_RECORD],
    },
    { name: 'online only', facts: [holder([ONLINE])], standing: 'none', findings: [DELIVERY] },
    {
      name: 'online only beside one that has ended after it began: delivery comes first',
      facts: [holder([ONLINE, { firstDay: '2027-03-02', lastDay: '2027-07-07' }])],
      standing: 'none',
      findings: [DELIVERY],
    },
    {
      name: 'online after one in person',
      facts: [holder([ONLINE, { firstDay: '2023-01-01', lastDay: '2024-12-31' }])],
      standing: 'independent',
      findings: [],
    },
    {
      name: 'online after a blended one taken on the same day',
      facts: [holder([ONLINE, { delivery: 'blended', firstDay: '2027-03-01', lastDay: '2027-03-31' }])],
      standing: 'independent',
      findings: [],
    },
    {
      name: 'online, the one in person taken a day later',
      facts: [holder([ONLINE, { firstDay: '2027-03-02', lastDay: '2027-03-31' }])],
      standing: 'none',
      findings: [DELIVERY],
    },
    {
      name: 'online after one in person that is self-stated',
      facts: [holder([ONLINE, { firstDay: '2023-01-01', lastDay: '2024-12-31', seen: false }])],
      standing: 'independent',
      findings: [],
    },
    {
      name: 'online after one whose delivery is not stated',
      facts: [holder([ONLINE, { delivery: 'not-stated', firstDay: '2023-01-01', lastDay: '2024-12-31' }])],
      standing: 'none',
      findings: [DELIVERY],
    },
    {
      name: 'lapsed with the latest last day',
      facts: [holder([{ lastDay: '2027-06-30' }, { lastDay: '2027-07-01' }, { lastDay: '2026-07-01' }])],
      standing: 'none',
      findings: [lapsed('2027-07-01')],
    },
  ]
  it.each(rows)('[AU49] $name', expectRow)

  it('[AU49] only what lapsed last is named as the record, and all of it', () => {
    const facts = [holder([{ lastDay: '2027-07-01' }, { lastDay: '2026-07-01' }, { lastDay: '2027-07-01' }])]
    const found = answerTo({ facts }).findings.find(({ kind }) => kind === 'certificate-lapsed')
    expect(found?.records).toEqual(['cpr-1', 'cpr-3'])
  })

  it('[AU49] in person for first aid is no skills check for CPR', () => {
    const facts = [holder([ONLINE])]
    expect(toldOf(answerTo({ facts }))).toEqual([DELIVERY])
  })
})

describe('a subject that serves for another', () => {
  const base = records(
    adult('p-1', { certificates: [certificate('p-1', 'first-aid')], cards: [card('p-1', 'B')] }),
  )
  const editions = base.editions.map((edition): Edition => ({
    ...edition,
    rules: edition.rules.map((rule): Rule =>
      rule.kind === 'certificate' && rule.subject === 'cpr' ? { ...rule, servedBy: ['wilderness'] } : rule,
    ),
  }))
  const asked = question(work(), '2027-07-08')
  const answerWith = (...said: readonly [string, Said][]) =>
    answerAbout(
      {
        ...withSection(base, 'editions', editions),
        certificates: [
          ...base.certificates,
          ...said.map(([subject, one], index) => certificate('p-1', subject, { id: `c-${index}`, ...one })),
        ],
      },
      asked,
    )

  it.each<{ name: string; said: [string, Said][]; findings: string[] }>([
    { name: 'counts as one of it', said: [['wilderness', {}]], findings: [] },
    { name: 'another subject does not', said: [['swimming', {}]], findings: [NOT_ON_RECORD] },
    { name: 'self-stated, it is not seen', said: [['wilderness', { seen: false }]], findings: [NOT_SEEN] },
    {
      name: 'online, the skills check is asked of its own subject',
      said: [
        ['wilderness', ONLINE],
        ['cpr', { firstDay: '2023-01-01', lastDay: '2024-12-31' }],
      ],
      findings: [DELIVERY],
    },
    {
      name: 'online, after one of its own subject in person',
      said: [
        ['wilderness', ONLINE],
        ['wilderness', { firstDay: '2023-01-01', lastDay: '2024-12-31', seen: false }],
      ],
      findings: [],
    },
  ])('[AU50] $name', ({ said, findings }) => {
    expect(toldOf(answerWith(...said))).toEqual(findings)
  })
})

describe('delivery and supervised work', () => {
  it('[AU51] not stated counts, with a note on the days that nothing else covers', () => {
    const facts = [holder([{ delivery: 'not-stated' }, { firstDay: '2027-07-10', lastDay: '2027-07-11' }])]
    const answer = answerTo({ facts, last: '2027-07-13' })
    expect(answer.standing).toBe('independent')
    expect(answer.spans).toHaveLength(1)
    expect(notesOf(answer)).toEqual([
      'delivery-not-stated subject=cpr | certificate.cpr | 2027-07-08/2027-07-09 2027-07-12/2027-07-13',
    ])
  })

  it('[AU51] the note stands once for each subject', () => {
    const facts = [
      adult('p-1', {
        certificates: ['first-aid', 'cpr'].map((subject) =>
          certificate('p-1', subject, { delivery: 'not-stated' }),
        ),
        cards: [card('p-1', 'B')],
      }),
    ]
    expect(notesOf(answerTo({ facts }))).toEqual([
      'delivery-not-stated subject=cpr | certificate.cpr | 2027-07-08/2027-07-08',
      'delivery-not-stated subject=first-aid | certificate.first-aid | 2027-07-08/2027-07-08',
    ])
  })

  it.each([
    ['own-level', 'least', 'needs-supervisor supervisor=B | grant.bucking.A | own-level'],
    ['training', 'moderate', 'training-only level=A supervisor=B | grant.bucking.A | training'],
  ] as const)('[AU52] they bind %s work', (standing, complexity, found) => {
    expectRow({
      name: '',
      facts: [holder([{ lastDay: '2027-07-08' }], 'A')],
      work: { complexity },
      last: '2027-07-09',
      standing: 'none',
      spans: [`${standing} 2027-07-08 2027-07-08`, 'none 2027-07-09 2027-07-09'],
      findings: [found, lapsed('2027-07-08')],
    })
  })
})
