import type { Sections } from '../authority/records.ts'
import type { PathStep } from './paths.ts'
import { countRecordedBy, endOf, longestSoFar } from './versions-by-entry.ts'
import { SECTION_NAMES, type SectionName } from './sections.ts'

/** A fact and where it stands in the file. */
export type Located<Name extends SectionName> = { section: SectionName; index: number; fact: Sections[Name] }

/**
 * A fact of which some fields may not have read, and where it stands. `unread` names the fields that may be there
 * though nothing is known of them; all others that are missing are missing in the file.
 */
export type PartLocated<Name extends SectionName> = {
  section: SectionName
  index: number
  fact: Partial<Sections[Name]>
  unread?: ReadonlySet<string>
}

/** A fact of which at least the id and the entry in which it became known did read. */
export type Placed = PartLocated<SectionName> & { fact: { id: string; recordedIn: number } }

/** The facts of a file of which only some fields did read. */
export type PartialFacts = { readonly [Name in SectionName]: readonly PartLocated<Name>[] }

/** The readable facts of a file, section by section, in the order in which they stand. */
export type LocatedFacts = { readonly [Name in SectionName]: readonly Located<Name>[] }

/** The ids of facts that could not be read, so that references to them are not called references to nothing. */
export type UnreadableIds = ReadonlyMap<SectionName, ReadonlySet<string> | 'all'>

type VersionsById = { readonly [Name in SectionName]: ReadonlyMap<string, readonly Located<Name>[]> }

/** The facts of a file, found by section and id. */
export class FactIndex {
  private readonly versionsById: VersionsById
  private readonly longest = new Map<readonly Located<SectionName>[], readonly Located<SectionName>[]>()
  private readonly unplaced = new Map<SectionName, ReadonlySet<string | undefined>>()

  constructor(
    private readonly facts: LocatedFacts,
    private readonly partial: PartialFacts,
    private readonly unreadable: UnreadableIds,
    /** How many entries the file has. */
    readonly entries: number,
  ) {
    this.versionsById = Object.fromEntries(
      SECTION_NAMES.map((name) => [name, groupById<Located<SectionName>>(facts[name])]),
    ) as unknown as VersionsById
  }

  /** The facts of a section in the order of the file. */
  of<Name extends SectionName>(section: Name): LocatedFacts[Name] {
    return this.facts[section]
  }

  /** The facts of a section and the fields that did read of those that could not be read, in the order of the file. */
  withPartial<Name extends SectionName>(section: Name): readonly PartLocated<Name>[] {
    const facts: readonly PartLocated<Name>[] = this.facts[section]
    const partial: readonly PartLocated<Name>[] = this.partial[section]
    if (partial.length === 0) return facts
    return [...facts, ...partial].sort((left, right) => left.index - right.index)
  }

  /** The same by id, earliest recorded first: those of which at least id and entry did read. */
  placedById(section: SectionName): ReadonlyMap<string, readonly Placed[]> {
    if (this.partial[section].length === 0) return this.versionsById[section]
    return groupById(this.withPartial(section).filter(isPlaced))
  }

  /** Whether a version of an id may stand in the file that is not among those placed by id. */
  mayHideVersion(section: SectionName, id: string): boolean {
    if (this.unreadable.get(section) === 'all') return true
    const before = this.unplaced.get(section)
    if (before !== undefined) return before.has(id)
    const partial: readonly PartLocated<SectionName>[] = this.partial[section]
    const unplaced = new Set(partial.flatMap(({ fact }) => (fact.recordedIn === undefined ? [fact.id] : [])))
    this.unplaced.set(section, unplaced)
    return unplaced.has(id)
  }

  /** The versions of each id of a section, earliest recorded first. */
  byId<Name extends SectionName>(section: Name): VersionsById[Name] {
    return this.versionsById[section]
  }

  /** The versions of one id, earliest recorded first. */
  versions<Name extends SectionName>(section: Name, id: string): readonly Located<Name>[] {
    const byId: ReadonlyMap<string, readonly Located<Name>[]> = this.versionsById[section]
    return byId.get(id) ?? []
  }

  /** A version of an id that counts as known at entry `n`; where a broken file lets several count, one of them. */
  knownAt<Name extends SectionName>(section: Name, id: string, n: number): Located<Name> | undefined {
    const versions = this.versions(section, id)
    const known = this.longest.get(versions) ?? longestSoFar<Located<SectionName>>(versions)
    this.longest.set(versions, known)
    const found = known[countRecordedBy(versions, n) - 1]
    // The list came from versions of this section.
    return found === undefined || endOf(found) <= n ? undefined : (found as Located<Name>)
  }

  /** The last version of an id recorded in entry `n` or before. */
  lastBy<Name extends SectionName>(section: Name, id: string, n: number): Located<Name> | undefined {
    const versions = this.versions(section, id)
    return versions[countRecordedBy(versions, n) - 1]
  }

  /** Whether some version of an id could not be read, so that nothing is said about it beyond that. */
  isUnreadable(section: SectionName, id: string): boolean {
    const ids = this.unreadable.get(section)
    return ids === 'all' || (ids?.has(id) ?? false)
  }

  /** Whether some fact of a section could not be read, so that nothing is called missing from it. */
  hasUnreadable(section: SectionName): boolean {
    return this.unreadable.has(section)
  }
}

/** The path of a fact. */
export function stepsTo(located: { section: SectionName; index: number }): PathStep[] {
  return [located.section, located.index]
}

function isPlaced(located: PartLocated<SectionName>): located is Placed {
  return located.fact.id !== undefined && located.fact.recordedIn !== undefined
}

/** What grouping by id asks of a fact. */
type Grouped = { index: number; fact: { id: string; recordedIn: number } }

function groupById<Kind extends Grouped>(facts: readonly Kind[]): ReadonlyMap<string, readonly Kind[]> {
  const groups = new Map<string, Kind[]>()
  for (const located of facts) {
    const group = groups.get(located.fact.id)
    if (group === undefined) groups.set(located.fact.id, [located])
    else group.push(located)
  }
  for (const group of groups.values()) {
    group.sort((left, right) => left.fact.recordedIn - right.fact.recordedIn || left.index - right.index)
  }
  return groups
}
