import type { ProgramProblem } from '../../../lib/core/program/problems.ts'
import { fact, section, setIn, type Change, type Raw } from './small-program.ts'

/** A change that makes one value wrong in its shape, and the one problem that is then told. */
export type ShapeCase = { name: string; break: Change; problem: ProgramProblem }

/** The restrictions of the card that is changed. */
const restrictions = (file: Raw): Raw[] => section(fact(file, 'cards', 'tomo-card'), 'restrictions')

/** Keys that are unknown or missing, values of the wrong type, words that are not allowed. */
export const SHAPE_CASES: readonly ShapeCase[] = [
  {
    name: 'a key that is not known, with the nearest that is',
    break: setIn('people', 'tomo', 'birthdate', '1991-08-17'),
    problem: {
      path: 'people[1].birthdate',
      value: '"1991-08-17"',
      kind: 'unknown-key',
      key: 'birthdate',
      nearest: 'birthDate',
    },
  },
  {
    name: 'a key that is like none',
    break: setIn('people', 'tomo', 'shoe size', 43),
    problem: { path: 'people[1]["shoe size"]', value: '43', kind: 'unknown-key', key: 'shoe size' },
  },
  {
    name: 'an unknown section',
    break: (file) => (file['saws'] = []),
    problem: { path: 'saws', value: '[]', kind: 'unknown-key', key: 'saws' },
  },
  {
    name: 'a key of another option of a union',
    break: (file) => (restrictions(file)[0]!['places'] = []),
    problem: { path: 'cards[2].restrictions[0].places', value: '[]', kind: 'unknown-key', key: 'places' },
  },
  {
    name: 'a missing key',
    break: (file) => delete fact(file, 'people', 'tomo')['name'],
    problem: { path: 'people[1].name', kind: 'missing-key', key: 'name' },
  },
  {
    name: 'a missing choice',
    break: (file) => delete fact(file, 'certificates', 'ines-cpr')['delivery'],
    problem: { path: 'certificates[0].delivery', kind: 'missing-key', key: 'delivery' },
  },
  {
    name: 'a number where a text belongs',
    break: setIn('people', 'tomo', 'name', 7),
    problem: { path: 'people[1].name', value: '7', kind: 'wrong-type', expected: 'text', found: 'number' },
  },
  {
    name: 'nothing where a text belongs',
    break: setIn('people', 'tomo', 'name', null),
    problem: {
      path: 'people[1].name',
      value: 'null',
      kind: 'wrong-type',
      expected: 'text',
      found: 'nothing',
    },
  },
  {
    name: 'a record where a list belongs',
    break: (file) => (file['raises'] = { a: 1 }),
    problem: { path: 'raises', value: '{"a":1}', kind: 'wrong-type', expected: 'list', found: 'object' },
  },
  {
    name: 'half an entry',
    break: setIn('people', 'tomo', 'recordedIn', 1.5),
    problem: {
      path: 'people[1].recordedIn',
      value: '1.5',
      kind: 'wrong-type',
      expected: 'whole-number',
      found: 'number',
    },
  },
  {
    name: 'a word like one that is allowed',
    break: setIn('memberships', 'tomo-staff', 'capacity', 'employe'),
    problem: {
      path: 'memberships[1].capacity',
      value: '"employe"',
      kind: 'not-one-of',
      allowed: ['employee', 'volunteer', 'paid-corps-member', 'student', 'contractor', 'not-stated'],
      nearest: 'employee',
    },
  },
  {
    name: 'a kind of restriction that does not exist',
    break: (file) => (restrictions(file)[0]!['kind'] = 'species?'),
    problem: {
      path: 'cards[2].restrictions[0].kind',
      value: '"species?"',
      kind: 'not-one-of',
      allowed: [
        'greatest-diameter',
        'places',
        'species',
        'greatest-complexity',
        'double-bucking-only',
        'supervisor-only',
        'no-felling',
        'words',
      ],
      nearest: 'species',
    },
  },
  {
    name: 'a wrong word in a list that may also be a word',
    break: setIn('cards', 'tomo-card', 'workKinds', ['buckling']),
    problem: {
      path: 'cards[2].workKinds[0]',
      value: '"buckling"',
      kind: 'not-one-of',
      allowed: ['bucking', 'felling'],
      nearest: 'bucking',
    },
  },
  {
    name: 'a wrong word where a list or a word may stand',
    break: setIn('cards', 'tomo-card', 'workKinds', 'not-said'),
    problem: { path: 'cards[2].workKinds', value: '"not-said"', kind: 'not-one-of', allowed: ['not-stated'] },
  },
  {
    name: 'another version of the format',
    break: (file) => (file['format'] = 'kerfbook-program/2'),
    problem: {
      path: 'format',
      value: '"kerfbook-program/2"',
      kind: 'format-unknown',
      expected: 'kerfbook-program/1',
    },
  },
]
