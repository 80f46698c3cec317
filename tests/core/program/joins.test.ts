import { describe, expect, it } from 'vitest'
import { latestEntry, recordsAt } from '../../../lib/core/program/known.ts'
import type { Program } from '../../../lib/core/program/program.schema.ts'
import { demo } from '../../seeds/demo.ts'
import { example, problemsOf, section, type Raw } from './small-program.ts'

const JOIN = { id: 'one-person', recordedIn: 4, person: 'wren', stays: 'tomo', because: 'Invented.' }

function withJoins(...joins: Raw[]): Raw {
  const file = example()
  for (const person of section(file, 'people')) delete person['birthDate']
  file['joins'] = joins.map((join) => ({ ...JOIN, ...join }))
  return file
}

describe('two records of one person', () => {
  it('[PR32] what is joined and could be joined is sound', () => {
    expect(problemsOf(withJoins({}))).toEqual([])
    expect(problemsOf(withJoins({ supersededIn: 5 }, { id: 'again', recordedIn: 5, stays: 'ines' }))).toEqual(
      [],
    )
    expect(problemsOf(withJoins({}, { id: 'third', person: 'ines' }))).toEqual([])
  })

  it.each<[string, Raw[], Raw]>([
    ['with itself', [{ stays: 'wren' }], { kind: 'joined-to-itself', path: 'joins[0].stays' }],
    [
      'to two',
      [{}, { id: 'second', stays: 'ines', recordedIn: 5 }],
      { kind: 'joined-twice', path: 'joins[1].person', person: 'wren', other: 'joins[0]' },
    ],
    [
      'through another',
      [{}, { id: 'second', person: 'tomo', stays: 'ines', recordedIn: 5 }],
      { kind: 'joined-through', path: 'joins[0].stays', stays: 'tomo', other: 'joins[1]' },
    ],
    ['with nobody', [{ stays: 'nobody' }], { kind: 'refers-to-nothing', path: 'joins[0].stays' }],
    ['of nobody', [{ person: 'nobody' }], { kind: 'refers-to-nothing', path: 'joins[0].person' }],
  ])('[PR32] nobody is joined %s', (_name, joins, problem) => {
    expect(problemsOf(withJoins(...joins))).toMatchObject([problem])
  })

  it('[PR32] two with different birth dates are not one person', () => {
    const file = withJoins({})
    const born = (id: string, birthDate: string) => {
      const person = section(file, 'people').find((one) => one['id'] === id)
      if (person !== undefined) Object.assign(person, { birthDate })
      delete person?.['ofAgeFrom']
      delete person?.['attestedBy']
    }
    born('wren', '2001-02-03')
    born('tomo', '2001-02-03')
    expect(problemsOf(file)).toEqual([])
    born('tomo', '2001-02-04')
    expect(problemsOf(file)).toMatchObject([{ kind: 'joined-of-two-births', person: 'wren', stays: 'tomo' }])
  })

  it('[PR32] nobody is in two crews by two records, as long as they are joined', () => {
    const placed = (...joins: Raw[]) => {
      const file = withJoins(...joins)
      section(file, 'placements').push({
        id: 'tomo-too',
        recordedIn: 5,
        hitch: 'kettle-hitch',
        person: 'tomo',
        firstDay: '2027-06-11',
        lastDay: '2027-06-14',
      })
      return problemsOf(file)
    }
    expect(placed({ stays: 'ines' })).toEqual([])
    expect(placed({ supersededIn: 5 })).toEqual([])
    expect(placed({})).toMatchObject([{ kind: 'two-crews', path: 'placements[1].firstDay' }])
  })
})

/** The same program, of which somebody's records stand under a second one, all or every other of them, and both are joined. */
function torn(program: Program, id: string, takes: (at: number) => boolean): Program {
  const second = `${id}-second`
  let at = 0
  const moved = (value: unknown): unknown => {
    if (value === id) return takes(at++) ? second : id
    if (Array.isArray(value)) return value.map(moved)
    if (typeof value !== 'object' || value === null) return value
    return Object.fromEntries(
      Object.entries(value).map(([key, each]) => [key, key === 'id' || key === 'by' ? each : moved(each)]),
    )
  }
  const sections = Object.entries(program).map(([name, facts]) =>
    Array.isArray(facts) && name !== 'people' && name !== 'entries'
      ? [name, facts.map(moved)]
      : [name, facts],
  )
  const person = program.people.find((one) => one.id === id)
  if (person === undefined) throw new Error(`${id} is not in the demo`)
  const raises = program.raises.map((raise) => (raise.by === id ? { ...raise, by: second } : raise))
  return {
    ...(Object.fromEntries(sections) as Program),
    raises,
    people: [...program.people, { id: second, recordedIn: person.recordedIn, name: 'Somebody Invented' }],
    joins: [{ id: 'j', recordedIn: person.recordedIn, person: second, stays: id, because: 'Invented.' }],
  }
}

describe('what is known of two that are joined', () => {
  const program = demo
  const people = [...new Set(program.people.map(({ id }) => id))]

  it.each([
    ['all of it', () => true],
    ['every other record of it', (at: number) => at % 2 === 0],
  ])('[PR32] is what would be known of one, where the second holds %s', (_name, takes) => {
    for (const id of people)
      for (const n of [latestEntry(program), latestEntry(program) - 7]) {
        const { joins, ...known } = recordsAt(torn(program, id, takes), n)
        const { joins: none, ...whole } = recordsAt(program, n)
        expect([joins.length, none.length]).toEqual([1, 0])
        expect(known).toEqual(whole)
      }
  })

  it('[PR32] says nothing more once they are parted, and an age alone of either is theirs', () => {
    const [id = ''] = people
    const file = torn(program, id, () => true)
    const n = latestEntry(program)
    const parted = { ...file, joins: file.joins.map((join) => ({ ...join, supersededIn: n })) }
    expect(recordsAt(parted, n).people).toHaveLength(recordsAt(program, n).people.length + 1)
    expect(recordsAt(parted, n - 1).people).toHaveLength(recordsAt(program, n - 1).people.length)

    const bare = file.people.map((person) =>
      person.id === id
        ? { id, recordedIn: person.recordedIn, name: person.name }
        : person.id === `${id}-second`
          ? { ...person, birthDate: '2000-02-29' as typeof person.birthDate & string }
          : person,
    )
    expect(recordsAt({ ...file, people: bare }, n).people.find((one) => one.id === id)).toMatchObject({
      birthDate: '2000-02-29',
    })
  })
})
