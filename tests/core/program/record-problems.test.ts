import { describe, expect, it } from 'vitest'
import type { ProgramProblem } from '../../../lib/core/program/problems.ts'
import { all, example, fact, part, problemsOf, section, setIn, type Case } from './small-program.ts'

const backwards = (path: string, firstDay: string, lastDay: string, fields = ['firstDay', 'lastDay']) =>
  ({
    path,
    value: `"${lastDay}"`,
    kind: 'span-backwards',
    firstField: fields[0],
    lastField: fields[1],
    firstDay,
    lastDay,
  }) as unknown as ProgramProblem

const inItself: Case[] = [
  {
    name: 'a card that ends before it begins',
    break: setIn('cards', 'tomo-card', 'lastDay', '2026-03-08'),
    problems: [backwards('cards[2].lastDay', '2026-03-09', '2026-03-08', ['effectiveDay', 'lastDay'])],
  },
  ...[
    ['memberships', 'wren-friends', 'memberships[2]', '2026-03-01'],
    ['permissions', 'wren-guardian', 'permissions[0]', '2026-03-01'],
    ['certificates', 'wren-cpr', 'certificates[5]', '2026-02-14'],
    ['assignments', 'wren-learns', 'assignments[0]', '2027-06-07'],
    ['items', 'kettle-log-1', 'items[0]', '2027-06-07'],
    ['expectedWork', 'kettle-rest', 'expectedWork[0]', '2027-06-07'],
    ['designations', 'ines-instructor', 'designations[0]', '2026-03-09'],
    ['editions', 'federal-crosscut-2016', 'editions[0]', '2016-07-19'],
  ].map(([name = '', id = '', path = '', firstDay = '']): Case => ({
    name: `days of ${name} that run backwards`,
    break: setIn(name, id, 'lastDay', '2015-01-01'),
    problems: [backwards(`${path}.lastDay`, firstDay, '2015-01-01')],
  })),
  {
    name: 'an administrative suspension that ends before it begins',
    break: all(
      setIn('suspensions', 'tomo-stand-down', 'kind', 'administrative'),
      setIn('suspensions', 'tomo-stand-down', 'lastDay', '2027-05-25'),
    ),
    problems: [backwards('suspensions[0].lastDay', '2027-05-26', '2027-05-25')],
  },
  {
    name: 'a book in force at a place on days that run backwards',
    break: (file) => {
      fact(file, 'places', 'kettle-trail')['books'] = [
        { book: 'federal-crosscut', firstDay: '2026-01-01', lastDay: '2025-12-31' },
      ]
    },
    problems: [backwards('places[1].books[0].lastDay', '2026-01-01', '2025-12-31')],
  },
  {
    name: 'a window of an order that runs backwards',
    break: (file) =>
      (part(fact(file, 'extensions', 'federal-extension-2021'), 'of')['lastDay'] = '2019-09-30'),
    problems: [backwards('extensions[0].of.lastDay', '2019-10-01', '2019-09-30')],
  },
  {
    name: 'a box whose south lies north of its north',
    break: setIn('places', 'kettle-trail', 'box', { south: 46, north: 45, west: -110, east: -109 }),
    problems: [
      {
        path: 'places[1].box.north',
        value: '45',
        kind: 'range-backwards',
        leastField: 'south',
        mostField: 'north',
        least: 46,
        most: 45,
      },
    ],
  },
  {
    name: 'at least 30 and at most 25',
    break: setIn('expectedWork', 'kettle-rest', 'least', 30),
    problems: [
      {
        path: 'expectedWork[0].most',
        value: '25',
        kind: 'range-backwards',
        leastField: 'least',
        mostField: 'most',
        least: 30,
        most: 25,
      },
    ],
  },
  {
    name: 'two restrictions of one card with one id',
    break: (file) => (section(fact(file, 'cards', 'tomo-card'), 'restrictions')[0]!['id'] = 'slope'),
    problems: [
      {
        path: 'cards[2].restrictions[1].id',
        value: '"slope"',
        kind: 'repeated-in-list',
        what: 'restriction',
        id: 'slope',
        other: 'cards[2].restrictions[0]',
      },
    ],
  },
  {
    name: 'of age a day too early for the birth date',
    break: setIn('people', 'tomo', 'ofAgeFrom', '2009-08-16'),
    problems: [
      {
        path: 'people[1].ofAgeFrom',
        value: '"2009-08-16"',
        kind: 'of-age-contradicts-birth',
        birthDate: '1991-08-17',
        ofAgeFrom: '2009-08-16',
        reached: '2009-08-17',
      } as unknown as ProgramProblem,
    ],
  },
  {
    name: 'somebody not born yet',
    break: setIn('people', 'tomo', 'birthDate', '2027-05-29'),
    problems: [
      {
        path: 'people[1].birthDate',
        value: '"2027-05-29"',
        kind: 'born-after-last-entry',
        birthDate: '2027-05-29',
        lastEntry: '2027-05-28',
      } as unknown as ProgramProblem,
    ],
  },
  {
    name: 'a card of this program without the decision behind it',
    break: (file) => delete fact(file, 'cards', 'tomo-card')['decision'],
    problems: [
      {
        path: 'cards[2]',
        kind: 'card-without-decision',
        effectiveDay: '2026-03-09',
        firstDayOfDeciding: '2026-03-02',
      } as unknown as ProgramProblem,
    ],
  },
]

describe('records in themselves', () => {
  it('[PR12] the example that ships is good', () => {
    expect(problemsOf(example())).toEqual([])
  })

  it.each([
    ['2026-03-02', 'Example Saw Program', 1],
    ['2026-03-02', ' example  SAW program ', 1],
    ['2026-03-02', 'Example Saw Program of another range', 0],
    ['2026-03-10', 'Example Saw Program', 0],
  ])('[PR33] deciding from %s on, a card carried in from “%s” has %d problem', (firstDay, issuer, count) => {
    const file = example()
    Object.assign(part(file, 'program'), { name: 'Example Saw Program', firstDayOfDeciding: firstDay })
    const card = fact(file, 'cards', 'tomo-card')
    delete card['decision']
    card['carriedIn'] = { issuer }
    expect(problemsOf(file).filter(({ kind }) => kind === 'carried-in-from-here')).toHaveLength(count)
  })

  it.each(inItself)('[PR7] $name', ({ break: change, problems }) => {
    const file = example()
    change(file)
    expect(problemsOf(file)).toEqual(problems)
  })
})
