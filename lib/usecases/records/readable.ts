import { isInReach, peopleInReach, reachesOthers, type PeopleInReach } from '../../access/reach.ts'
import type { Actor } from '../../access/roles.ts'
import type { Permission } from '../../access/table.ts'
import { belonging } from '../door/admit.ts'
import type { World } from '../door/use-case.ts'
import type { Names } from '../../wording/names.ts'
import { factOwners } from '../people/fact-owners.ts'
import { RECORD_SECTIONS, type RecordFact, type RecordSection } from './record-kinds.ts'

/** Sections whose records are about what the program works on and where; everybody who works here may read them. */
const OF_THE_PROGRAM: readonly RecordSection[] = [
  'organisations',
  'places',
  'items',
  'expectedWork',
  'ratings',
  'raises',
  'hitches',
]

/** Whose records are read together: those about people by who may read the people, the program's by everybody. */
export const READ_GROUPS = {
  people: {
    permission: 'read-record',
    sections: RECORD_SECTIONS.filter((section) => !OF_THE_PROGRAM.includes(section)),
  },
  program: { permission: 'read-books', sections: OF_THE_PROGRAM },
} as const satisfies Record<string, { permission: Permission; sections: readonly RecordSection[] }>

export type ReadGroup = keyof typeof READ_GROUPS

/** With which others the records of a section are read. */
export function readGroupOf(section: RecordSection): ReadGroup {
  return OF_THE_PROGRAM.includes(section) ? 'program' : 'people'
}

/** The people whose records an actor may read; everybody for the start, who could read the database itself. */
export function readableBy(actor: Actor | undefined, world: World): PeopleInReach {
  return actor === undefined
    ? 'everybody'
    : peopleInReach(actor, 'read-record', belonging(world), world.today)
}

/** What somebody is called of whom the reader may read nothing. */
export const BEYOND_REACH = 'somebody beyond your reach'

/** The names of things, and those of people within reach alone. */
export function namesWithin(names: Names, people: PeopleInReach): Names {
  return { ...names, person: (id) => (isInReach(people, id) ? names.person(id) : BEYOND_REACH) }
}

/** Whether an actor may read a version of a record, and whom it is about. */
export type Readable = {
  mayRead: (section: RecordSection, fact: RecordFact) => boolean
  ownerOf: (section: RecordSection, fact: RecordFact) => string | undefined
  people: PeopleInReach
}

/**
 * What stops or extends the authority of many is no one person's record: whoever reads others' records may read it, for
 * it stands among the reasons of their answers.
 */
export function readable(world: World, actor: Actor | undefined): Readable {
  const people = readableBy(actor, world)
  const readsOthers = actor === undefined || reachesOthers(actor, 'read-record')
  const ownerOf = factOwners(world.snapshot.program)
  return {
    people,
    ownerOf,
    mayRead: (section, fact) => {
      if (readGroupOf(section) === 'program') return true
      const owner = ownerOf(section, fact)
      return owner === undefined ? readsOthers : isInReach(people, owner)
    },
  }
}
