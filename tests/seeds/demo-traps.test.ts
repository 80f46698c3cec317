import { describe, expect, it } from 'vitest'
import type { Answer, Work } from '../../lib/core/authority/answer.ts'
import { cardTraps } from './card-traps.ts'
import { answerOf, companyOf, day, demo, everybody, item, onTheirOwn, work } from './demo.ts'
import { personTraps } from './person-traps.ts'
import { FELL, HIGH, JULY, LEAST, MODERATE } from './trap.ts'

const ENTRY_OF = (text: string) => demo.entries.find(({ event }) => event.includes(text))?.n ?? 0
const kinds = ({ findings }: Answer) => findings.map(({ kind }) => kind).sort()
const days = (first: string, last: string) => ({ first: day(first), last: day(last) })

function tell({ spans }: Answer): unknown[] {
  return spans.map(({ last, standing, findings }) => [
    last,
    standing,
    ...findings.map((finding) =>
      'subject' in finding ? `${finding.kind}: ${finding.subject}` : finding.kind,
    ),
  ])
}

describe('the traps', () => {
  it.each([...cardTraps, ...personTraps])('[E14] %s: %s', (_, person, asked, [first, last], told) => {
    const answer = answerOf(person, asked, { first: day(first), last: day(last) })
    // The order of the findings is the engine's own matter.
    const sorted = (rows: readonly (readonly unknown[])[]) =>
      rows.map(([end, standing, ...findings]) => [end, standing, ...findings.map(String).sort()])
    expect(sorted(tell(answer) as unknown[][])).toEqual(sorted(told))
  })
})

describe('what we knew', () => {
  it('[P18] the correction of a CPR last day was entered late: before it the tree was his on all eight days', () => {
    const asked = item('i-windfall-fir-6').work
    const july = days(...JULY)
    const corrected = ENTRY_OF('corrected a CPR last day')
    const windfall = ENTRY_OF('the survey of Windfall Basin')
    expect(corrected).toBeLessThan(windfall)
    expect(answerOf('p-lukasz-wrzos', FELL, july, { n: corrected - 1 }).standing).toBe('independent')
    expect(answerOf('p-lukasz-wrzos', FELL, july, { n: corrected })).toMatchObject({
      standing: 'none',
      holdsThrough: '2027-07-11',
    })
    expect(answerOf('p-lukasz-wrzos', asked, july).holdsThrough).toBe('2027-07-11')
    expect(answerOf('p-lukasz-wrzos', FELL, july, { day: day('2027-04-13') }).standing).toBe('independent')
    expect(answerOf('p-lukasz-wrzos', FELL, july, { day: day('2027-04-14') }).standing).toBe('none')
  })

  it('[P18] a stand-down of 9 July 2026 was entered on the 12th: as known on the 11th there was none', () => {
    const july = days('2026-07-08', '2026-07-10')
    const known = answerOf('p-bogdan-ilievski', LEAST, july)
    expect(known.spans.map(({ last, standing }) => [last, standing])).toEqual([
      ['2026-07-08', 'independent'],
      ['2026-07-09', 'none'],
      ['2026-07-10', 'none'],
    ])
    expect(
      known.spans.flatMap(({ findings }) =>
        findings.map((finding) => (finding.kind === 'suspended' ? finding.notice : finding.kind)),
      ),
    ).toEqual(['before', 'after'])
    expect(answerOf('p-bogdan-ilievski', LEAST, july, { day: day('2026-07-11') }).standing).toBe(
      'independent',
    )
  })
})

describe('what would change it', () => {
  it('[E14] a CPR renewed by 12 July, or eight days from 4 July, or somebody else', () => {
    const { remedies } = answerOf('p-lukasz-wrzos', item('i-windfall-fir-6').work, days(...JULY))
    expect(remedies.sets).toEqual([[{ kind: 'renew-certificate', subject: 'cpr', by: '2027-07-12' }]])
    expect(remedies.anotherDate).toEqual({ first: '2027-07-04', last: '2027-07-11' })
    expect(remedies.somebodyElse).toBe(4)
  })

  it('[E14] the self-stated CPR is had seen', () => {
    const { remedies } = answerOf('p-kwabena-asare-boadi', MODERATE, days(...JULY))
    expect(remedies.sets.map((set) => set.map(({ kind }) => kind))).toEqual([['have-seen']])
  })
})

describe('the whole program', () => {
  it('[E14] who may fell a tree 22 in, moderately complex, at North Ashlar on 8 to 15 July', () => {
    const counts = new Map<string, number>()
    for (const { standing } of everybody(FELL, days(...JULY)))
      counts.set(standing, (counts.get(standing) ?? 0) + 1)
    expect(Object.fromEntries(counts)).toEqual({
      independent: 4,
      'own-level': 1,
      training: 2,
      unknown: 2,
      none: 50,
    })
    expect(onTheirOwn(FELL, days(...JULY))).toEqual([
      'p-benedikt-aasland',
      'p-dana-whitlow',
      'p-ifeoma-castellane',
      'p-siobhan-o-briain',
    ])
  })

  it('[E14] the two of one name are told apart by id: one may, one is outside the places of the card', () => {
    const asked = (person: string) => kinds(answerOf(person, FELL, days(...JULY)))
    expect(asked('p-dana-whitlow')).toEqual([])
    expect(asked('p-dana-whitlow-2')).toEqual(['outside-places'])
  })

  it('[E14] notes never change standing: longer than the term, only by a later order, delivery not stated', () => {
    const notes = (person: string, asked: Work, first: string, last: string) =>
      answerOf(person, asked, days(first, last)).notes.map(({ kind }) => kind)
    expect(notes('p-aurelio-brandt-nakai', HIGH, ...JULY)).toContain('longer-than-term')
    expect(notes('p-hallvard-eikeset', HIGH, ...JULY)).not.toContain('longer-than-term')
    expect(notes('p-reinhild-ostermoor', MODERATE, '2020-06-01', '2020-06-02')).toContain(
      'valid-only-by-a-later-order',
    )
    expect(notes('p-halima-warsame-dirie', LEAST, '2027-08-23', '2027-08-28')).toContain(
      'delivery-not-stated',
    )
    expect(notes('p-dana-whitlow', item('i-windfall-fir-5').work, ...JULY)).toContain('rating-provisional')
  })

  it('[E14] a rating is lowered by a worksheet of a C on site, and not by a B', () => {
    const standing = (id: string) => {
      const { work: asked, first, last } = item(id)
      return answerOf('p-dana-whitlow', asked, { first, last }).standing
    }
    expect(standing('i-cold-fork-jam')).toBe('independent')
    expect(standing('i-cold-fork-slide')).toBe('training')
  })
})

describe('the classes', () => {
  it('[E14] an instructor whose own card lapses before the field day serves nobody', () => {
    const { work: asked, first, last } = item('i-c-02-log-1')
    const field = { first, last }
    expect(answerOf('p-bogdan-ilievski', asked, field).standing).toBe('none')
    expect(companyOf(['p-joao-quintanilha', 'p-bogdan-ilievski'], asked, field)).toMatchObject([
      { feasible: false, learners: [{ person: 'p-joao-quintanilha', standing: 'training', may: [] }] },
    ])
    expect(companyOf(['p-joao-quintanilha', 'p-tobiah-renquist'], asked, field)).toMatchObject([
      { feasible: true, pairs: [{ learner: 'p-joao-quintanilha', supervisor: 'p-tobiah-renquist' }] },
    ])
  })

  it('[E14] felling class: tree 1 in training, tree 2 over the diameter of the bucking card, no tree named no', () => {
    const at = (id: string) => answerOf('p-nguyen-thi-suong', item(id).work, days('2027-06-05', '2027-06-05'))
    expect([at('i-c-04-tree-1').standing, kinds(at('i-c-04-tree-1'))]).toEqual([
      'training',
      ['no-card', 'training-only'],
    ])
    expect([at('i-c-04-tree-2').standing, kinds(at('i-c-04-tree-2'))]).toEqual([
      'none',
      ['no-card', 'over-diameter', 'training-only'],
    ])
    expect(
      kinds(answerOf('p-nguyen-thi-suong', work('felling', 'least', 20), days('2027-06-05', '2027-06-05'))),
    ).toEqual(['no-card'])
  })

  it('[E14] the evaluator of 12 June trained the candidate, and is designated for both', () => {
    const hers = demo.assignments.filter(({ person }) => person === 'p-anneli-rautavuoma')
    expect(hers.map(({ purpose, trainers }) => [purpose, trainers])).toEqual([
      ['Second bucking class at Rough Gate', ['p-tobiah-renquist']],
      ['Field evaluation at Rough Gate', ['p-tobiah-renquist']],
    ])
    const roles = demo.designations
      .filter(({ person }) => person === 'p-tobiah-renquist')
      .map(({ role }) => role)
    expect(roles).toEqual(['evaluator', 'instructor'])
  })
})
