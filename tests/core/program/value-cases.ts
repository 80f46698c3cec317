import type { ShapeCase } from './shape-cases.ts'
import { part, section, setIn } from './small-program.ts'

/** Texts, numbers, lists and days that are of the right type and hold what none may. */
export const VALUE_CASES: readonly ShapeCase[] = [
  {
    name: 'an empty name',
    break: setIn('people', 'tomo', 'name', ''),
    problem: { path: 'people[1].name', value: '""', kind: 'text-empty' },
  },
  {
    name: 'a name one letter too long',
    break: setIn('people', 'tomo', 'name', 'x'.repeat(201)),
    problem: {
      path: 'people[1].name',
      value: `"${'x'.repeat(59)}…`,
      kind: 'text-too-long',
      most: 200,
      letters: 201,
    },
  },
  {
    name: 'an id with capitals',
    break: setIn('people', 'tomo', 'id', 'Tomo'),
    problem: { path: 'people[1].id', value: '"Tomo"', kind: 'badly-written', form: 'id' },
  },
  {
    name: 'a level with a space',
    break: setIn('cards', 'tomo-card', 'level', 'level B'),
    problem: { path: 'cards[2].level', value: '"level B"', kind: 'badly-written', form: 'level' },
  },
  {
    name: 'a rule id with a space',
    break: setIn('confirmations', 'card-days-read', 'rule', 'card days'),
    problem: { path: 'confirmations[0].rule', value: '"card days"', kind: 'badly-written', form: 'rule-id' },
  },
  {
    name: 'a name over two lines',
    break: setIn('people', 'tomo', 'name', 'Tomo\nAskeland'),
    problem: { path: 'people[1].name', value: '"Tomo\\nAskeland"', kind: 'badly-written', form: 'name' },
  },
  {
    name: 'a factor that is no id',
    break: setIn('ratings', 'kettle-log-1-rated', 'observations', { 'Bind!': 'side' }),
    problem: {
      path: 'ratings[0].observations["Bind!"]',
      value: '"Bind!"',
      kind: 'badly-written',
      form: 'id',
    },
  },
  {
    name: 'line 0 of a number',
    break: setIn('cards', 'tomo-card', 'line', 0),
    problem: { path: 'cards[2].line', value: '0', kind: 'number-outside', least: 1, exclusive: false },
  },
  {
    name: 'more inches than a tree has',
    break: setIn('items', 'kettle-log-1', 'diameter', 401),
    problem: { path: 'items[0].diameter', value: '401', kind: 'number-outside', most: 400, exclusive: false },
  },
  {
    name: 'an assignment to nothing',
    break: setIn('assignments', 'wren-learns', 'items', []),
    problem: { path: 'assignments[0].items', value: '[]', kind: 'too-few', least: 1 },
  },
  {
    name: 'too many trainers',
    break: setIn('assignments', 'wren-learns', 'trainers', Array<string>(21).fill('ines')),
    problem: {
      path: 'assignments[0].trainers',
      value: '["ines","ines","ines","ines","ines","ines","ines","ines","in…',
      kind: 'too-many',
      most: 20,
      count: 21,
    },
  },
  {
    name: 'a day written another way',
    break: setIn('people', 'tomo', 'birthDate', '17.8.1991'),
    problem: { path: 'people[1].birthDate', value: '"17.8.1991"', kind: 'not-a-day' },
  },
  {
    name: 'the 29th of February of a common year',
    break: setIn('people', 'tomo', 'birthDate', '1991-02-29'),
    problem: { path: 'people[1].birthDate', value: '"1991-02-29"', kind: 'no-such-day' },
  },
  {
    name: 'the year 0000',
    break: setIn('people', 'tomo', 'birthDate', '0000-01-01'),
    problem: {
      path: 'people[1].birthDate',
      value: '"0000-01-01"',
      kind: 'year-outside',
      first: 1900,
      last: 2199,
    },
  },
  {
    name: 'the year 9999',
    break: setIn('cards', 'tomo-card', 'lastDay', '9999-12-31'),
    problem: {
      path: 'cards[2].lastDay',
      value: '"9999-12-31"',
      kind: 'year-outside',
      first: 1900,
      last: 2199,
    },
  },
  {
    name: 'a moment without a zone',
    break: (file) => (section(file, 'entries')[0]!['statedAt'] = '2026-03-02T16:00'),
    problem: { path: 'entries[0].statedAt', value: '"2026-03-02T16:00"', kind: 'not-an-instant' },
  },
  {
    name: 'a third of an inch',
    break: setIn('items', 'kettle-log-1', 'diameter', 22.33),
    problem: { path: 'items[0].diameter', value: '22.33', kind: 'not-a-sixteenth' },
  },
  {
    name: 'a time zone that nobody knows',
    break: (file) => (part(file, 'program')['timeZone'] = 'America/Fernhollow'),
    problem: { path: 'program.timeZone', value: '"America/Fernhollow"', kind: 'time-zone-unknown' },
  },
  {
    name: 'a suspension for an incident with a last day',
    break: setIn('suspensions', 'tomo-stand-down', 'lastDay', '2027-05-27'),
    problem: { path: 'suspensions[0].lastDay', value: '"2027-05-27"', kind: 'last-day-not-administrative' },
  },
]
