import type { Records, Sections } from '../../lib/core/authority/records.ts'
import { isKnownAt } from '../../lib/core/kernel/versions.ts'
import { SECTION_NAMES } from '../../lib/core/program/sections.ts'
import { shippedBooks } from './shipped-books.ts'

/** Some sections of facts, with the settings of a program where a test wants others. */
export type Part = { [Name in keyof Sections]?: readonly Sections[Name][] } & {
  book?: string
  timeZone?: string
  knownAt?: number
}

/** Records without any fact, books included. */
export function emptyRecords(): Records {
  return {
    timeZone: 'America/Denver',
    book: 'federal-crosscut',
    knownAt: 100,
    books: [],
    editions: [],
    confirmations: [],
    organisations: [],
    people: [],
    memberships: [],
    permissions: [],
    certificates: [],
    designations: [],
    assignments: [],
    cards: [],
    endings: [],
    resolutions: [],
    extensions: [],
    suspensions: [],
    lifts: [],
    places: [],
    items: [],
    expectedWork: [],
    ratings: [],
    raises: [],
    cautions: [],
    hitches: [],
    placements: [],
    disputes: [],
    joins: [],
  }
}

/** Records with the facts of all parts, in their order, beside those they have already. */
export function withParts(base: Records, ...parts: readonly Part[]): Records {
  return parts.reduce<Records>(addPart, base)
}

/** Records with the shipped books, under the federal one, and the facts of all parts. */
export function records(...parts: readonly Part[]): Records {
  return withParts(emptyRecords(), shippedBooks(), ...parts)
}

/** The same records with one section replaced. */
export function withSection<Name extends keyof Sections>(
  base: Records,
  name: Name,
  facts: readonly Sections[Name][],
): Records {
  return { ...base, [name]: facts }
}

/** The facts as they were known at entry `n`. */
export function asKnownAt(base: Records, n: number): Records {
  return SECTION_NAMES.reduce<Records>(
    (known, name) => ({ ...known, [name]: base[name].filter((fact) => isKnownAt(fact, n)) }),
    { ...base, knownAt: n },
  )
}

function addPart(base: Records, part: Part): Records {
  const settings = {
    timeZone: part.timeZone ?? base.timeZone,
    book: part.book ?? base.book,
    knownAt: part.knownAt ?? base.knownAt,
  }
  return SECTION_NAMES.reduce<Records>(
    (whole, name) =>
      part[name] === undefined ? whole : { ...whole, [name]: [...base[name], ...part[name]] },
    { ...base, ...settings },
  )
}
