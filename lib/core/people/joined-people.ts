import type { Join } from './joins.schema.ts'

/** Whose record counts for whom, by the joins known at one moment. Nobody's record goes through a second to a third. */
export class JoinedPeople {
  private readonly stays: ReadonlyMap<string, string>

  constructor(joins: readonly Join[]) {
    this.stays = new Map(joins.map((join) => [join.person, join.stays]))
  }

  get areNone(): boolean {
    return this.stays.size === 0
  }

  /** The id of the record that counts for somebody: their own, or the one that it was joined to. */
  of(person: string): string {
    return this.stays.get(person) ?? person
  }

  /** These people, with every record that was joined to one of theirs. */
  withAll(people: ReadonlySet<string>): ReadonlySet<string> {
    if (this.areNone) return people
    const all = new Set(people)
    for (const [person, stays] of this.stays) if (people.has(stays)) all.add(person)
    return all
  }
}
