import type { Sections } from '../../core/authority/records.ts'
import type { PersonIndex } from '../../core/authority/person-index.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import type { Program } from '../../core/program/program.schema.ts'
import type { FactsBySection } from '../../core/program/sections.ts'
import { factOwners } from './fact-owners.ts'
import { joinedAt } from './joined.ts'
import { suspensionsOf } from './holdings.ts'
import type { ShownEntry } from './shown-entries.ts'

/** The sections of facts that a person's page holds, in its order; within one what was recorded last comes first. */
export const PERSON_SECTIONS = [
  'cards',
  'endings',
  'resolutions',
  'extensions',
  'certificates',
  'suspensions',
  'lifts',
  'memberships',
  'permissions',
  'designations',
  'assignments',
  'people',
  'joins',
] as const
export type PersonSection = (typeof PERSON_SECTIONS)[number]

/** One version of a record: what it says, the entry that recorded it and, where it counts no more, the one that closed it. */
export type ShownVersion = {
  says: string
  recorded: ShownEntry
  /** What it corrects was recorded in this entry. */
  corrects?: number
  closed?: ShownEntry
}

/** A record with all of its versions, the current one first. */
export type ShownHistory = { section: PersonSection; id: string; versions: readonly ShownVersion[] }

/** What turns facts into what is shown. */
type Shown = {
  says: <Name extends PersonSection>(section: Name, fact: Sections[Name]) => string
  entry: (n: number) => ShownEntry | undefined
}

/**
 * Every record about a person as known at entry `n`, with the versions it had before, and what stops or extends it
 * together with others'. A version that was about somebody else is not shown, nor what came later.
 */
export function historyOf(program: Program, n: number, person: PersonIndex, shown: Shown): ShownHistory[] {
  const ownerOf = factOwners({
    cards: program.cards.filter((fact) => fact.recordedIn <= n),
    suspensions: program.suspensions.filter((fact) => fact.recordedIn <= n),
  })
  const joined = joinedAt(program, n)
  const shared = new Set([
    ...suspensionsOf(person).flatMap(({ suspension, lifts }) => [
      `suspensions ${suspension.id}`,
      ...lifts.map((id) => `lifts ${id}`),
    ]),
    ...person.cards.flatMap(({ laterOrders }) =>
      laterOrders.map(({ extension }) => `extensions ${extension}`),
    ),
  ])
  return PERSON_SECTIONS.flatMap((section) =>
    sectionHistory(
      program,
      n,
      section,
      shown,
      (fact) =>
        fact.recordedIn <= n &&
        (joined.of(ownerOf(section, fact) ?? '') === person.id || shared.has(`${section} ${fact.id}`)),
    ),
  )
}

function sectionHistory<Name extends PersonSection>(
  program: Program,
  n: number,
  section: Name,
  { says, entry }: Shown,
  isShown: (fact: Sections[Name]) => boolean,
): ShownHistory[] {
  const facts: FactsBySection = program
  const byId = new Map<string, Sections[Name][]>()
  for (const fact of facts[section]) {
    if (!isShown(fact)) continue
    const versions = byId.get(fact.id)
    if (versions === undefined) byId.set(fact.id, [fact])
    else versions.push(fact)
  }
  const histories = [...byId].map(([id, versions]) => ({
    section,
    id,
    versions: versions
      .sort((left, right) => right.recordedIn - left.recordedIn)
      .flatMap((fact): ShownVersion[] => {
        const recorded = entry(fact.recordedIn)
        const closed =
          fact.supersededIn === undefined || isKnownAt(fact, n) ? undefined : entry(fact.supersededIn)
        if (recorded === undefined) return []
        return [
          {
            says: says(section, fact),
            recorded,
            ...(fact.supersedes === undefined ? {} : { corrects: fact.supersedes }),
            ...(closed === undefined ? {} : { closed }),
          },
        ]
      }),
  }))
  return histories.sort((left, right) => latestEntry(right) - latestEntry(left))
}

/** What was recorded last stands first. */
function latestEntry({ versions }: ShownHistory): number {
  return versions[0]?.recorded.n ?? 0
}
