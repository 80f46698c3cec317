import { describe, expect, it } from 'vitest'
import type { ProgramProblem, ReferenceTo } from '../../../lib/core/program/problems.ts'
import { example, fact, part, problemsOf, section, setIn, type Change, type Raw } from './small-program.ts'

function nothing(path: string, to: ReferenceTo, id: string, nearest?: string): ProgramProblem {
  return {
    path,
    value: `"${id}"`,
    kind: 'refers-to-nothing',
    to,
    id,
    ...(nearest === undefined ? {} : { nearest }),
  }
}

const card = (file: Raw): Raw => fact(file, 'cards', 'tomo-card')
const subject = (value: Raw): Change => setIn('suspensions', 'tomo-stand-down', 'subject', value)

const references: [path: string, to: ReferenceTo, id: string, nearest: string | undefined, change: Change][] =
  [
    ['program.book', 'books', 'federal', undefined, (file) => (part(file, 'program')['book'] = 'federal')],
    [
      'confirmations[0].edition',
      'editions',
      'federal-2016',
      undefined,
      setIn('confirmations', 'card-days-read', 'edition', 'federal-2016'),
    ],
    [
      'confirmations[0].rule',
      'rules',
      'card.dais',
      'card.days',
      setIn('confirmations', 'card-days-read', 'rule', 'card.dais'),
    ],
    [
      'places[1].books[0].book',
      'books',
      'federal-crossct',
      'federal-crosscut',
      (file) => (section(fact(file, 'places', 'kettle-trail'), 'books')[0]!['book'] = 'federal-crossct'),
    ],
    [
      'places[1].parent',
      'places',
      'uper-fernhollow',
      'upper-fernhollow',
      setIn('places', 'kettle-trail', 'parent', 'uper-fernhollow'),
    ],
    ['memberships[0].person', 'people', 'inez', 'ines', setIn('memberships', 'ines-staff', 'person', 'inez')],
    [
      'memberships[0].organisation',
      'organisations',
      'fernhollow-stuff',
      'fernhollow-staff',
      setIn('memberships', 'ines-staff', 'organisation', 'fernhollow-stuff'),
    ],
    [
      'memberships[0].unit',
      'places',
      'lower-fernhollow',
      'upper-fernhollow',
      setIn('memberships', 'ines-staff', 'unit', 'lower-fernhollow'),
    ],
    [
      'permissions[0].person',
      'people',
      'wern',
      'wren',
      setIn('permissions', 'wren-guardian', 'person', 'wern'),
    ],
    ['certificates[5].person', 'people', 'wre', 'wren', setIn('certificates', 'wren-cpr', 'person', 'wre')],
    [
      'designations[0].book',
      'books',
      'federal-crosscuts',
      'federal-crosscut',
      setIn('designations', 'ines-instructor', 'book', 'federal-crosscuts'),
    ],
    ['designations[0].level', 'levels', 'D', 'A', setIn('designations', 'ines-instructor', 'level', 'D')],
    [
      'assignments[0].items[1]',
      'items',
      'kettle-log-2',
      'kettle-log-1',
      setIn('assignments', 'wren-learns', 'items', ['kettle-rest', 'kettle-log-2']),
    ],
    [
      'assignments[0].trainers[0]',
      'people',
      'tom',
      'tomo',
      setIn('assignments', 'wren-learns', 'trainers', ['tom']),
    ],
    ['cards[2].person', 'people', 'nobody', undefined, setIn('cards', 'tomo-card', 'person', 'nobody')],
    ['cards[2].level', 'levels', 'trainees', 'trainee', setIn('cards', 'tomo-card', 'level', 'trainees')],
    [
      'cards[2].restrictions[2].places[0]',
      'places',
      'ketle-trail',
      'kettle-trail',
      (file) =>
        section(card(file), 'restrictions').push({ id: 'where', kind: 'places', places: ['ketle-trail'] }),
    ],
    [
      'endings[0].card',
      'cards',
      'wren-card',
      undefined,
      setIn('endings', 'wren-surrendered', 'card', 'wren-card'),
    ],
    [
      'resolutions[0].restriction',
      'restrictions',
      'slop',
      'slope',
      setIn('resolutions', 'tomo-slope-read', 'restriction', 'slop'),
    ],
    [
      'resolutions[0].into[0].places[0]',
      'places',
      'nowhere-at-all',
      undefined,
      setIn('resolutions', 'tomo-slope-read', 'into', [
        { id: 'where', kind: 'places', places: ['nowhere-at-all'] },
      ]),
    ],
    [
      'extensions[0].book',
      'books',
      'other',
      undefined,
      setIn('extensions', 'federal-extension-2021', 'book', 'other'),
    ],
    [
      'extensions[0].of.card',
      'cards',
      'tomo-carrd',
      'tomo-card',
      setIn('extensions', 'federal-extension-2021', 'of', { kind: 'card', card: 'tomo-carrd' }),
    ],
    ['suspensions[0].subject.person', 'people', 'tono', 'tomo', subject({ kind: 'person', person: 'tono' })],
    [
      'suspensions[0].subject.organisation',
      'organisations',
      'nobody',
      undefined,
      subject({ kind: 'organisation', organisation: 'nobody' }),
    ],
    [
      'suspensions[0].subject.unit',
      'places',
      'nowhere',
      undefined,
      subject({ kind: 'unit', unit: 'nowhere' }),
    ],
    [
      'suspensions[0].subject.place',
      'places',
      'nowhere',
      undefined,
      subject({ kind: 'place', place: 'nowhere' }),
    ],
    [
      'suspensions[0].subject.number',
      'card-numbers',
      'FH-004',
      'FH-001',
      subject({ kind: 'card', number: 'FH-004' }),
    ],
    [
      'suspensions[0].notices[0].person',
      'people',
      'tomos',
      'tomo',
      setIn('suspensions', 'tomo-stand-down', 'notices', [{ person: 'tomos', at: '2027-05-26T21:40:00Z' }]),
    ],
    [
      'lifts[0].suspension',
      'suspensions',
      'tomo-standdown',
      'tomo-stand-down',
      setIn('lifts', 'tomo-lift', 'suspension', 'tomo-standdown'),
    ],
    [
      'items[0].place',
      'places',
      'kettle-trai',
      'kettle-trail',
      setIn('items', 'kettle-log-1', 'place', 'kettle-trai'),
    ],
    [
      'expectedWork[0].place',
      'places',
      'kettle',
      undefined,
      setIn('expectedWork', 'kettle-rest', 'place', 'kettle'),
    ],
    [
      'ratings[0].item',
      'items',
      'kettle-log',
      'kettle-log-1',
      setIn('ratings', 'kettle-log-1-rated', 'item', 'kettle-log'),
    ],
    ['ratings[0].rater', 'people', 'ine', 'ines', setIn('ratings', 'kettle-log-1-rated', 'rater', 'ine')],
    ['raises[0].item', 'items', 'log', undefined, setIn('raises', 'kettle-log-1-raised', 'item', 'log')],
    ['raises[0].by', 'people', 'ttomo', 'tomo', setIn('raises', 'kettle-log-1-raised', 'by', 'ttomo')],
  ]

const federal = (file: Raw): Raw => fact(file, 'editions', 'federal-crosscut-2016')

describe('references that lead to nothing', () => {
  it.each(references)('[PR10] %s', (path, to, id, nearest, change) => {
    const file = example()
    change(file)
    expect(problemsOf(file)).toContainEqual(nothing(path, to, id, nearest))
  })

  it('[PR10] the cautions that an edition shows', () => {
    const file = example()
    const rules = section(federal(file), 'rules')
    const at = rules.findIndex((rule) => rule['kind'] === 'cautions.shown')
    rules[at]!['cautions'] = ['look-upp']
    expect(problemsOf(file).map((problem) => [problem.path, problem.kind])).toEqual([
      [`editions[0].rules[${at}].cautions[0]`, 'refers-to-nothing'],
    ])
  })
})
