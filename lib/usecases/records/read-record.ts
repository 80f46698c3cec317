import { z } from 'zod'
import type { Actor } from '../../access/roles.ts'
import type { Paper } from '../../core/journal/remarks.schema.ts'
import { idField } from '../../core/kernel/fields.schema.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import { doubtSentence } from '../../wording/doubts.ts'
import { recordPhrase } from '../../wording/records.ts'
import { authorityAt } from '../authority/known-authority.ts'
import { wordsOf } from '../authority/known-words.ts'
import type { NotDone } from '../door/outcome.ts'
import { query, type World } from '../door/use-case.ts'
import { joinedAt } from '../people/joined.ts'
import { entriesShown, type ShownEntry } from '../people/shown-entries.ts'
import { seesBirthDate } from '../people/told-age.ts'
import { disputesOf } from './disputes.ts'
import { doubtsByRecord } from './doubts.ts'
import { countNamedBy } from './named-by.ts'
import { namesWithin, readable, READ_GROUPS, type ReadGroup } from './readable.ts'
import type { RecordFact, RecordSection } from './record-kinds.ts'

/** An entry behind a version, with why it was made and the paper behind it, for who may know what it was about. */
export type EntryBehind = ShownEntry & { why?: string; paper?: Paper }

/** A version of a record: the entry that recorded it and, where it counts no more, the one that closed it. */
export type VersionRead = {
  fact: RecordFact
  says: string
  recorded: EntryBehind | undefined
  closed?: EntryBehind
}

/** One record with all of its versions that the caller may read, the last one first. */
export function readRecord(group: ReadGroup) {
  const sections: readonly RecordSection[] = READ_GROUPS[group].sections
  return query({
    name: `records/read-${group}`,
    permission: READ_GROUPS[group].permission,
    input: z.strictObject({ section: z.enum(sections), id: idField }),
    load: (world, { section, id }, actor) => loadRecord(world, section, id, actor),
    about: ({ people }) => ({ kind: 'people', people }),
    answer: ({ section, id, versions, owner }, world, actor) => {
      const { people } = readable(world, actor)
      const known = wordsOf(authorityAt(world.snapshot, undefined).authority, world.snapshot)
      const names = namesWithin(known.names, people)
      const entry = entriesBehind(world.snapshot, entriesShown(world.snapshot, people))
      const seesBirth = section !== 'people' || seesBirthDate(actor, id)
      const read = versions.map((fact): VersionRead => {
        const { supersededIn } = fact
        const closed = supersededIn === undefined ? undefined : entry(supersededIn)
        return {
          fact: seesBirth ? fact : withoutBirthDate(fact),
          says: recordPhrase(section, fact, names),
          recorded: entry(fact.recordedIn),
          ...(closed === undefined ? {} : { closed }),
        }
      })
      const current = versions.find((fact) => isKnownAt(fact, world.snapshot.n))
      return {
        section,
        id,
        /** The entry that recorded the current version; nothing where the record was withdrawn. */
        version: current?.recordedIn,
        ...(owner === undefined ? {} : { person: { id: owner, name: names.person(owner) } }),
        versions: read,
        doubts: (doubtsByRecord(world).get(`${section} ${id}`) ?? []).map((doubt) =>
          doubtSentence(doubt, names),
        ),
        /** How many other records name it, without which they would be about nothing. */
        namedBy: current === undefined ? 0 : countNamedBy(world.snapshot, section, current),
        hidesBirthDate: !seesBirth,
        disputes: disputesOf(world.snapshot, section, id),
        /** Whether it is the caller's own, about which they may say that it is wrong. */
        isOwn:
          owner !== undefined &&
          joinedAt(world.snapshot.program, world.snapshot.n).of(owner) === actor?.person,
        today: world.today,
      }
    },
    looked: (_value, { section, id }) => ({ question: { section, record: id } }),
  })
}

/** Reads by who may read them. */
export const READ_RECORD = { people: readRecord('people'), program: readRecord('program') } as const

/** What a page of one record shows. */
export type RecordRead = {
  section: RecordSection
  id: string
  versions: readonly VersionRead[]
}

type Loaded = {
  section: RecordSection
  id: string
  versions: readonly RecordFact[]
  owner: string | undefined
  people: readonly string[]
}

function loadRecord(
  world: World,
  section: RecordSection,
  id: string,
  actor: Actor | undefined,
): Result<Loaded, NotDone> {
  const { mayRead, ownerOf } = readable(world, actor)
  const all: readonly RecordFact[] = world.snapshot.program[section]
  const versions = all
    .filter((fact) => fact.id === id)
    .sort((left, right) => right.recordedIn - left.recordedIn)
  const [latest] = versions
  // Whom it is about now decides whether it is read at all; what it said of somebody else before stays with them.
  if (latest === undefined || !mayRead(section, latest)) return refusal({ kind: 'not-found' })
  const owner = ownerOf(section, latest)
  return success({
    section,
    id,
    versions: versions.filter((fact) => mayRead(section, fact)),
    owner,
    people: owner === undefined ? [] : [owner],
  })
}

function entriesBehind(
  { remarks }: Snapshot,
  shown: (n: number) => ShownEntry | undefined,
): (n: number) => EntryBehind | undefined {
  return (n) => {
    const entry = shown(n)
    if (entry?.said === undefined) return entry
    const remark = remarks.find(({ id }) => id === `entry-${n}`)
    return {
      ...entry,
      ...(remark?.why === undefined ? {} : { why: remark.why }),
      ...(remark?.paper === undefined ? {} : { paper: remark.paper }),
    }
  }
}

function withoutBirthDate(fact: RecordFact): RecordFact {
  if (!('birthDate' in fact)) return fact
  const { birthDate: _birthDate, ...rest } = fact
  return rest
}
