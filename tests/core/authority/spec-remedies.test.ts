import { describe, expect, it } from 'vitest'
import type { Card } from '../../../lib/core/cards/cards.schema.ts'
import { card, ending, suspension } from '../../builders/cards.ts'
import { adult, ageless, certificate, membership, permission, person } from '../../builders/people.ts'
import type { Part } from '../../builders/records.ts'
import { place } from '../../builders/work.ts'
import { setsOf, type Asked } from './remedies-asked.ts'

function without<Name extends keyof Card>(name: Name, from: Card): Omit<Card, Name> {
  const { [name]: _left, ...rest } = from
  return rest
}

const spoken = { id: 'spoken', kind: 'words' as const, text: 'ask first' }
const double = { id: 'double', kind: 'double-bucking-only' as const }
const width = (inches: number) => ({ id: 'w', kind: 'greatest-diameter' as const, inches })
const holder = (level: string, said: Parameters<typeof card>[2] = {}, more: Part = {}): Part =>
  adult('p-1', { cards: [card('p-1', level, said)], ...more })
const places = (...allowed: string[]) => ({ id: 'p', kind: 'places' as const, places: allowed })
const ON_MAP: Part = {
  places: [
    place('quill', { kind: 'unit' }),
    place('gate', { parent: 'quill' }),
    place('ford', { parent: 'quill' }),
  ],
}
const firstAid = certificate('p-1', 'first-aid')
const cpr = (said: Parameters<typeof certificate>[2]): Part => ({
  certificates: [firstAid, certificate('p-1', 'cpr', said)],
})

describe('sets', () => {
  it.each<[string, Asked, string[][]]>([
    ['nothing to remedy', { facts: [holder('B')] }, []],
    ['a supervisor for own-level work', { facts: [holder('A')] }, [['add supervisor B on 8-8']]],
    [
      'a trainer for training',
      { facts: [holder('B')], work: { complexity: 'high' } },
      [['add trainer C on 8-8']],
    ],
    [
      'both changes where both are needed, in the order of the vocabulary',
      { facts: [holder('A', {}, cpr({ seen: false }))] },
      [['have cpr seen', 'add supervisor B on 8-8']],
    ],
    [
      'three changes',
      {
        facts: [holder('B', { restrictions: [spoken, double] }, { certificates: [firstAid] })],
        work: { notStated: ['hands'] },
      },
      [['record certificate cpr', 'record hands', 'record meaning-of-words']],
    ],
    [
      'four are too many',
      {
        facts: [holder('B', { restrictions: [spoken, double] }, { certificates: [] })],
        work: { notStated: ['hands'] },
      },
      [],
    ],
    [
      'a supervisor on the days that want one',
      {
        facts: [
          holder(
            'A',
            { lastDay: '2027-07-20' },
            {
              cards: [
                card('p-1', 'A'),
                card('p-1', 'B', { id: 'next', number: 'N-2', effectiveDay: '2027-07-10' }),
              ],
            },
          ),
        ],
        last: '2027-07-11',
      },
      [['add supervisor B on 8-9']],
    ],
  ])('[AU73] %s', (_name, asked, sets) => {
    expect(setsOf(asked)).toEqual(sets)
  })

  it.each<[string, Asked, string[][]]>([
    [
      'in force on the first day, ending in the span: by its last day',
      { facts: [holder('B', { lastDay: '2027-07-10' })], last: '2027-07-12' },
      [['renew card-p-1 by 2027-07-10']],
    ],
    [
      'ending on the first day',
      { facts: [holder('B', { lastDay: '2027-07-08' })], last: '2027-07-12' },
      [['renew card-p-1 by 2027-07-08']],
    ],
    ['ended the day before', { facts: [holder('B', { lastDay: '2027-07-07' })], last: '2027-07-12' }, []],
    [
      'ending on the last day asked',
      { facts: [holder('B', { lastDay: '2027-07-12' })], last: '2027-07-12' },
      [],
    ],
    [
      'not yet valid on the first day',
      { facts: [holder('B', { effectiveDay: '2027-07-09', lastDay: '2027-07-10' })], last: '2027-07-12' },
      [],
    ],
    [
      'withdrawn in the span',
      { facts: [holder('B', {}, { endings: [ending('card-p-1', '2027-07-10')] })], last: '2027-07-12' },
      [],
    ],
  ])('[AU74] a card %s', (_name, asked, sets) => {
    expect(setsOf(asked)).toEqual(sets)
  })

  const online = { delivery: 'online' as const, firstDay: '2027-03-01', lastDay: '2029-02-28' }
  it.each<[string, Asked, string[][]]>([
    [
      'lapsing in the span: by the day after',
      { facts: [holder('B', {}, cpr({ lastDay: '2027-07-09' }))], last: '2027-07-12' },
      [['renew cpr by 2027-07-10']],
    ],
    [
      'lapsed long before: by the first day asked',
      { facts: [holder('B', {}, cpr({ lastDay: '2026-12-31' }))], last: '2027-07-12' },
      [['renew cpr by 2027-07-08']],
    ],
    [
      'online only: by the first day asked',
      { facts: [holder('B', {}, cpr(online))] },
      [['renew cpr by 2027-07-08']],
    ],
    [
      'on the day itself',
      { facts: [holder('B', {}, cpr({ lastDay: '2026-12-31' }))], today: '2027-07-08' },
      [['renew cpr by 2027-07-08']],
    ],
    [
      'never by a day before today',
      { facts: [holder('B', {}, cpr({ lastDay: '2026-12-31' }))], today: '2027-07-09' },
      [],
    ],
    [
      'never by a day before today, though it fails on days to come as well',
      { facts: [holder('B', {}, cpr({ lastDay: '2026-12-31' }))], today: '2027-07-09', last: '2027-07-12' },
      [],
    ],
  ])('[AU75] a certificate %s', (_name, asked, sets) => {
    expect(setsOf(asked)).toEqual(sets)
  })
})

describe('missing facts', () => {
  const YEAR = { firstDay: '2027-01-01', lastDay: '2027-12-31' }
  const minor = (
    more: Part,
    said: Parameters<typeof membership>[1] = { capacity: 'volunteer', ...YEAR },
  ): Part =>
    adult('p-1', {
      people: [person('p-1', { birthDate: '2010-07-01' })],
      memberships: [membership('p-1', said)],
      cards: [card('p-1', 'B')],
      ...more,
    })
  const volunteer = (days: NonNullable<Parameters<typeof membership>[1]>): Part =>
    holder('B', {}, { memberships: [membership('p-1', { capacity: 'volunteer', ...days })] })
  const SUPERVISED = 'add supervisor B on 8-8'

  it.each<[string, Asked, string[][]]>([
    [
      'a certificate',
      { facts: [holder('B', {}, { certificates: [firstAid] })] },
      [['record certificate cpr']],
    ],
    [
      'a self-stated one is had seen',
      { facts: [holder('B', {}, cpr({ seen: false }))] },
      [['have cpr seen']],
    ],
    ['the age', { facts: [holder('B', {}, { people: [ageless('p-1')] })] }, [['record age']]],
    [
      'the capacity of a minor',
      { facts: [minor({ permissions: [permission('p-1')] }, { capacity: 'not-stated', ...YEAR })] },
      [['record capacity', SUPERVISED]],
    ],
    ["a guardian's permission", { facts: [minor({})] }, [['record guardian-permission', SUPERVISED]]],
    [
      'a permission that has ended is had anew',
      {
        facts: [
          minor({
            permissions: [
              permission('p-1'),
              permission('p-1', { id: 'b', firstDay: '2027-07-01', lastDay: '2027-07-07' }),
            ],
          }),
        ],
      },
      [['record guardian-permission', SUPERVISED]],
    ],
    ['a refusal stays', { facts: [minor({ permissions: [permission('p-1', { says: 'refused' })] })] }, []],
    [
      'a permission withdrawn stays so',
      { facts: [minor({ permissions: [permission('p-1', { says: 'withdrawn' })] })] },
      [],
    ],
    ['an agreement that is not on record', { facts: [volunteer({})] }, [['record agreement']]],
    [
      'the last day of an agreement',
      { facts: [volunteer({ firstDay: '2027-01-01' })] },
      [['record agreement']],
    ],
    [
      'a new agreement is not a missing fact',
      { facts: [volunteer({ firstDay: '2027-01-01', lastDay: '2027-07-07' })] },
      [],
    ],
    [
      'the meaning of words',
      { facts: [holder('B', { restrictions: [spoken] })] },
      [['record meaning-of-words']],
    ],
    ['a rating', { facts: [holder('B')], work: { complexity: 'not-rated' } }, [['record rating']]],
    [
      'the work kinds of a card',
      { facts: [holder('B', { workKinds: 'not-stated' })], work: { workKind: 'felling' } },
      [['record work-kinds']],
    ],
    [
      'one or two hands',
      { facts: [holder('B', { restrictions: [double] })], work: { notStated: ['hands'] } },
      [['record hands']],
    ],
    [
      'the species',
      {
        facts: [holder('B', { restrictions: [{ id: 'k', kind: 'species', species: ['invented fir'] }] })],
        work: { notStated: ['species'] },
      },
      [['record species']],
    ],
    ['the place', { facts: [holder('B', { restrictions: [places('gate')] }), ON_MAP] }, [['record place']]],
    [
      'the place: the one where the work is not stopped',
      {
        facts: [
          holder(
            'B',
            { restrictions: [places('gate', 'ford')] },
            { suspensions: [suspension('stop', { subject: { kind: 'place', place: 'gate' } })] },
          ),
          ON_MAP,
        ],
        first: '2027-07-09',
      },
      [['record place']],
    ],
    [
      'the place, where the work is stopped at every one that is allowed',
      {
        facts: [
          holder(
            'B',
            { restrictions: [places('gate', 'ford')] },
            { suspensions: [suspension('stop', { subject: { kind: 'place', place: 'quill' } })] },
          ),
          ON_MAP,
        ],
        first: '2027-07-09',
      },
      [],
    ],
    [
      'the place: what lies in one that another restriction names',
      { facts: [holder('B', { restrictions: [places('quill'), { ...places('ford'), id: 'too' }] }), ON_MAP] },
      [['record place']],
    ],
    [
      'the place, where no place is allowed',
      { facts: [holder('B', { restrictions: [places()] }), ON_MAP] },
      [],
    ],
  ])('[AU76] %s', (_name, asked, sets) => {
    expect(setsOf(asked)).toEqual(sets)
  })

  it('[AU76] the last day of a card', () => {
    const facts = [adult('p-1', { cards: [without('lastDay', card('p-1', 'B'))] })]
    expect(setsOf({ facts })).toEqual([['record last-day']])
  })

  it.each<[string, Asked]>([
    ['a level', { facts: [holder('A')], work: { complexity: 'high' } }],
    ['no card', { facts: [adult('p-1')] }],
    [
      'a suspension',
      { facts: [holder('B', {}, { suspensions: [suspension('stop', { firstDay: '2027-07-01' })] })] },
    ],
    ['a restriction', { facts: [holder('B', { restrictions: [width(19)] })] }],
    [
      'a complexity',
      {
        facts: [
          holder('B', { restrictions: [{ id: 'm', kind: 'greatest-complexity', complexity: 'least' }] }),
        ],
        work: { complexity: 'moderate' },
      },
    ],
    ['an age', { facts: [minor({}, {})] }],
    ['a book', { facts: [holder('B', { book: 'cooperator-crosscut' })] }],
  ])('[AU77] nothing changes %s', (_name, asked) => {
    expect(setsOf(asked)).toEqual([])
  })

  it('[AU77] a missing fact beside it changes nothing either', () => {
    const facts = [holder('B', { restrictions: [width(19), spoken] }, cpr({ seen: false }))]
    expect(setsOf({ facts })).toEqual([])
  })
})
