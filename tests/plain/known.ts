import type { Records, Sections } from '../../lib/core/authority/records.ts'
import type { Program } from '../../lib/core/program/program.schema.ts'

/** The facts of a program as known at an entry: recorded by then and not superseded by then. */
export function plainKnown(program: Program, n: number): Records {
  const known = <Name extends keyof Sections>(name: Name): Sections[Name][] => {
    const facts: readonly Sections[Name][] = program[name] as unknown as Sections[Name][]
    return facts.filter(
      (fact) => fact.recordedIn <= n && (fact.supersededIn === undefined || n < fact.supersededIn),
    )
  }
  return {
    timeZone: program.program.timeZone,
    book: program.program.book,
    knownAt: n,
    books: known('books'),
    editions: known('editions'),
    confirmations: known('confirmations'),
    organisations: known('organisations'),
    people: known('people'),
    memberships: known('memberships'),
    permissions: known('permissions'),
    certificates: known('certificates'),
    designations: known('designations'),
    assignments: known('assignments'),
    cards: known('cards'),
    endings: known('endings'),
    resolutions: known('resolutions'),
    extensions: known('extensions'),
    suspensions: known('suspensions'),
    lifts: known('lifts'),
    places: known('places'),
    items: known('items'),
    expectedWork: known('expectedWork'),
    ratings: known('ratings'),
    raises: known('raises'),
    cautions: known('cautions'),
  }
}
