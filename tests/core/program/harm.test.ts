import { describe, expect, it } from 'vitest'
import { programDoubts } from '../../../lib/core/program/doubts.ts'
import { readProgram } from '../../../lib/core/program/read-program.ts'
import { example, fact, part, problemsOf, section, type Raw } from './small-program.ts'

/** The kinds of problems of the example after a change, each once. */
function kindsAfter(change: (file: Raw) => void): string[] {
  const file = example()
  change(file)
  return [...new Set(problemsOf(file).map(({ kind }) => kind))].sort()
}

/** The kinds of doubts of the example after a change, each once; a problem fails the test. */
function doubtsAfter(change: (file: Raw) => void): string[] {
  const file = example()
  change(file)
  const read = readProgram(JSON.stringify(file))
  if (!read.ok) throw new Error(`not a good program: ${JSON.stringify(read.problem)}`)
  return [...new Set(programDoubts(read.value).map(({ kind }) => kind))]
}

/** Adds a version of a suspension that corrects the last one in the last entry. */
function correctSuspension(file: Raw, said: Raw): void {
  const before = section(file, 'suspensions').at(-1)
  if (before === undefined) throw new Error('the example has a suspension')
  const last = section(file, 'entries').length
  section(file, 'entries').push({ ...section(file, 'entries').at(-1), n: last + 1 })
  section(file, 'suspensions').push({
    ...before,
    ...said,
    recordedIn: last + 1,
    supersedes: before['recordedIn'],
  })
  before['supersededIn'] = last + 1
}

describe('what would free somebody without a decision', () => {
  it('[PR8] a correction does not move a suspension to somebody else', () => {
    expect(
      kindsAfter((file) => correctSuspension(file, { subject: { kind: 'person', person: 'ines' } })),
    ).toContain('anchor-changed')
  })

  it('[PR8] a correction does not make it one that ends by itself', () => {
    expect(kindsAfter((file) => correctSuspension(file, { kind: 'administrative' }))).toContain(
      'anchor-changed',
    )
  })

  it.each([
    ['2027-05-26', ['lift-before-suspension']],
    ['2027-05-27', []],
  ])('[PR10] a lift on %s of a suspension from 26 May 2027', (day, kinds) => {
    expect(
      kindsAfter((file) => {
        fact(file, 'lifts', 'tomo-lift')['day'] = day
      }),
    ).toEqual(kinds)
  })

  it('[PR11] nothing lies in a place that is withdrawn', () => {
    const change = (file: Raw) => {
      const trail = fact(file, 'places', 'kettle-trail')
      section(file, 'places').push({ ...trail, id: 'ford', parent: 'kettle-trail' })
      const last = section(file, 'entries').length
      section(file, 'entries').push({ ...section(file, 'entries').at(-1), n: last + 1 })
      trail['supersededIn'] = last + 1
    }
    expect(kindsAfter(change)).toEqual(['place-withdrawn-under'])
  })

  it.each([
    ['2027-12-31', '2027-12-31', ['place-books-overlap']],
    ['2027-12-30', '2027-12-31', []],
  ])('[PR11] one book through %s and another from %s at one place', (lastDay, firstDay, kinds) => {
    const change = (file: Raw) => {
      const book = part(file, 'program')['book'] ?? null
      fact(file, 'places', 'kettle-trail')['books'] = [
        { book, firstDay: '2027-01-01', lastDay },
        { book, firstDay },
      ]
    }
    expect(kindsAfter(change)).toEqual(kinds)
  })

  it('[PR19] a suspension withdrawn as wrong is listed', () => {
    const change = (file: Raw) => {
      const last = section(file, 'entries').length
      section(file, 'entries').push({ ...section(file, 'entries').at(-1), n: last + 1 })
      for (const suspension of section(file, 'suspensions')) suspension['supersededIn'] ??= last + 1
    }
    expect(doubtsAfter(change)).toContain('suspension-withdrawn')
    expect(doubtsAfter(() => undefined)).not.toContain('suspension-withdrawn')
  })

  it('[PR19] a certificate that nobody else is named to have seen is listed, and an age nobody attested', () => {
    const change = (file: Raw) => {
      for (const certificate of section(file, 'certificates'))
        if (certificate['seen'] === true) delete certificate['by']
      const [person] = section(file, 'people')
      if (person === undefined) throw new Error('the example has people')
      delete person['birthDate']
      delete person['attestedBy']
      person['ofAgeFrom'] = '2000-01-01'
    }
    expect(doubtsAfter(change)).toEqual(expect.arrayContaining(['seen-by-nobody-else', 'age-not-attested']))
    expect(doubtsAfter(() => undefined)).not.toContain('seen-by-nobody-else')
  })
})
