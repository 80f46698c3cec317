import { describe, expect, it } from 'vitest'
import { example, problemsOf, section, type Raw } from './small-program.ts'

/** Wren is in the crew of the example's hitch from 7 through 11 June 2027, known from entry 4 on. */
const WREN = {
  id: 'kettle-wren-again',
  recordedIn: 5,
  hitch: 'kettle-hitch',
  person: 'wren',
  firstDay: '2027-06-12',
  lastDay: '2027-06-14',
}

function withPlacement(more: Raw, change: (file: Raw) => void = () => undefined): Raw {
  const file = example()
  section(file, 'placements').push({ ...WREN, ...more })
  change(file)
  return file
}

describe('hitches and their crews', () => {
  it.each<[string, Raw]>([
    ['the day after', {}],
    ['of somebody else', { person: 'tomo', firstDay: '2027-06-07' }],
    ['before', { firstDay: '2027-06-01', lastDay: '2027-06-06' }],
  ])('[PR31] a second place %s is sound', (_name, more) => {
    expect(problemsOf(withPlacement(more))).toEqual([])
  })

  it.each<[string, Raw]>([
    ['the last day', { firstDay: '2027-06-11' }],
    ['the first day', { firstDay: '2027-06-01', lastDay: '2027-06-07' }],
    ['all days', { firstDay: '2027-06-01', lastDay: '2027-06-30' }],
    ['one day within', { firstDay: '2027-06-09', lastDay: '2027-06-09' }],
  ])('[PR31] nobody is in two crews on %s', (_name, more) => {
    expect(problemsOf(withPlacement(more))).toMatchObject([
      {
        path: 'placements[1].firstDay',
        kind: 'two-crews',
        person: 'wren',
        firstDay: '2027-06-07',
        lastDay: '2027-06-11',
        other: 'placements[0]',
      },
    ])
  })

  it('[PR31] what ceased to be known before the other became known is no second crew', () => {
    const file = withPlacement({ firstDay: '2027-06-11' }, (raw) => {
      const [first] = section(raw, 'placements')
      if (first !== undefined) first['supersededIn'] = 5
    })
    expect(problemsOf(file)).toEqual([])
  })

  it('[PR31] days backwards, and hitches, places and people that are not there, are told', () => {
    const file = withPlacement({ hitch: 'kettle-hitches', person: 'wrenn', lastDay: '2027-06-11' }, (raw) => {
      const [hitch] = section(raw, 'hitches')
      Object.assign(hitch ?? {}, { place: 'nowhere', lead: 'nobody', lastDay: '2027-06-06' })
    })
    expect(problemsOf(file).map(({ path, kind }) => `${path} ${kind}`)).toEqual([
      'hitches[0].lastDay span-backwards',
      'placements[1].lastDay span-backwards',
      'hitches[0].place refers-to-nothing',
      'hitches[0].lead refers-to-nothing',
      'placements[1].hitch refers-to-nothing',
      'placements[1].person refers-to-nothing',
    ])
  })
})
