import { describe, expect, it } from 'vitest'
import { hitches } from '../../seeds/demo/hitch-list.ts'
import { answerOf, day, demo, item, onTheirOwn, work } from './demo.ts'

const everyItem = [...demo.items, ...demo.expectedWork]
const DAYS = { first: day('2027-07-12'), last: day('2027-07-14') }

describe('who may do the work of the hitches', () => {
  it.each(hitches)('[E18] somebody is on their own for every item of $list, $name', ({ list }) => {
    for (const { id } of everyItem.filter((candidate) => candidate.list === list)) {
      const { work: asked, first, last } = item(id)
      expect(onTheirOwn(asked, { first, last }), id).not.toEqual([])
    }
  })

  it('[E18] only one feller is there for highly complex work in July, and two until the end of June', () => {
    const asked = work('felling', 'high', 19)
    expect(onTheirOwn(asked, { first: day('2027-06-22'), last: day('2027-06-30') })).toEqual([
      'p-siobhan-o-briain',
      'p-yelena-marozava',
    ])
    expect(onTheirOwn(asked, { first: day('2027-07-01'), last: day('2027-07-31') })).toEqual([
      'p-siobhan-o-briain',
    ])
  })

  it('[E18] h-11 cannot be staffed as it stands: its one feller is needed at h-12 on the same days', () => {
    for (const id of ['i-windfall-spruce-1', 'i-windfall-spruce-2', 'i-lake-twin', 'i-lake-snag'])
      expect(onTheirOwn(item(id).work, DAYS), id).toEqual(['p-siobhan-o-briain'])
  })

  it('[E18] h-18 cannot be staffed as it stands: of the corps all six are in training, and three may a week later', () => {
    const { first, last } = item('x-h-18-corps')
    const asked = work('bucking', 'least', 14, { place: 'lower-quill' })
    const corps = demo.memberships
      .filter(({ organisation }) => organisation === 'halden-youth-corps')
      .map(({ person }) => person)
    const standings = (days: { first: typeof first; last: typeof last }, wanted: string) =>
      [...new Set(corps)].filter((person) => answerOf(person, asked, days).standing === wanted).sort()
    const now = { first, last }
    expect(answerOf('p-losa-fonotia', item('x-h-18-corps').work, now).standing).toBe('training')
    expect(standings(now, 'own-level')).toEqual([])
    expect(standings(now, 'independent')).toEqual([])
    expect(standings(now, 'training')).toEqual([
      'p-eun-ji-baek',
      'p-ilke-dauwens',
      'p-joao-quintanilha',
      'p-kirra-ballantyne-oduya',
      'p-losa-fonotia',
      'p-mirza-delalic',
    ])
    expect(standings({ first: day('2027-08-23'), last: day('2027-08-28') }, 'own-level')).toEqual([
      'p-dilnoza-yusupbekova',
      'p-halima-warsame-dirie',
      'p-ruadhan-mac-suibhne',
    ])
  })

  it('[E14] the windstorm clear-out is surveyed log by log, each highly complex for a reason of its own', () => {
    const logs = demo.items.filter(({ id }) => id.startsWith('i-windfall-log-'))
    expect(logs).toHaveLength(9)
    for (const { id } of logs) {
      const rating = demo.ratings.find((candidate) => candidate.item === id)
      expect(rating?.complexity, id).toBe('high')
      expect(rating?.observations, id).toBeDefined()
    }
  })

  it('[E14] one hitch works in two parties, each on its own trail', () => {
    const places = new Set(everyItem.filter(({ list }) => list === 'h-13').map(({ place }) => place))
    expect([...places].sort()).toEqual(['larch-bench-lower', 'larch-bench-upper'])
  })

  it('[E14] four trees to be felled have no approval yet, and that changes no standing', () => {
    const trees = demo.items.filter(
      ({ workKind, approval }) => workKind === 'felling' && approval === undefined,
    )
    expect(trees.map(({ id }) => id)).toEqual([
      'i-cold-fork-raised',
      'i-lake-snag',
      'i-windfall-spruce-1',
      'i-windfall-spruce-2',
    ])
  })
})
