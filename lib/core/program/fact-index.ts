import type { Sections } from '../authority/records.ts'
import type { PathStep } from './paths.ts'
import { SECTION_NAMES, type SectionName } from './sections.ts'

/** A fact and where it stands in the file. */
export type Located<Name extends SectionName> = { section: SectionName; index: number; fact: Sections[Name] }

/** The readable facts of a file, section by section, in the order in which they stand. */
export type LocatedFacts = { readonly [Name in SectionName]: readonly Located<Name>[] }

/** The ids of facts that could not be read, so that references to them are not called references to nothing. */
export type UnreadableIds = ReadonlyMap<SectionName, ReadonlySet<string> | 'all'>

type VersionsById = { readonly [Name in SectionName]: ReadonlyMap<string, readonly Located<Name>[]> }

/** The facts of a file, found by section and id. */
export class FactIndex {
  private readonly versionsById: VersionsById

  constructor(
    private readonly facts: LocatedFacts,
    private readonly unreadable: UnreadableIds,
    /** How many entries the file has. */
    readonly entries: number,
  ) {
    this.versionsById = Object.fromEntries(
      SECTION_NAMES.map((name) => [name, groupById(facts[name])]),
    ) as VersionsById
  }

  /** The facts of a section in the order of the file. */
  of<Name extends SectionName>(section: Name): LocatedFacts[Name] {
    return this.facts[section]
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

function groupById<Name extends SectionName>(
  facts: readonly Located<Name>[],
): ReadonlyMap<string, readonly Located<Name>[]> {
  const groups = new Map<string, Located<Name>[]>()
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
