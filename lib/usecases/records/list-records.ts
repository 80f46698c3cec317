import { z } from 'zod'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import type { Sections } from '../../core/authority/records.ts'
import { foldedName } from '../../core/kernel/folded.ts'
import { success } from '../../core/kernel/result.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import type { FactsBySection } from '../../core/program/sections.ts'
import { recordPhrase } from '../../wording/records.ts'
import type { Names } from '../../wording/names.ts'
import { authorityAt } from '../authority/known-authority.ts'
import { wordsOf } from '../authority/known-words.ts'
import { query, type World } from '../door/use-case.ts'
import { entriesShown, type ShownEntry } from '../people/shown-entries.ts'
import { namesWithin, readable, READ_GROUPS, type ReadGroup } from './readable.ts'
import { doubtSentence } from '../../wording/doubts.ts'
import type { Doubt } from '../../core/program/problems.ts'
import type { RecordFact, RecordSection } from './record-kinds.ts'
import { doubtsByRecord } from './doubts.ts'

/** By what a list of records may be ordered. */
export const RECORD_SORTS = ['says', 'person', 'first', 'last', 'recorded'] as const
export type RecordSort = (typeof RECORD_SORTS)[number]

/** How many records one page of a list holds. */
const AT_ONCE = 100

/** A row of a list: what the record says, whom it is about, its days, and the entry that recorded this version. */
export type RecordRow = {
  id: string
  says: string
  person?: { id: string; name: string }
  first?: CalendarDate
  last?: CalendarDate
  recorded?: ShownEntry
  /** What about it somebody should look at. */
  doubts: readonly string[]
}

/** The records of a section as now known that the caller may read, filtered and in order. */
export function listRecords(group: ReadGroup) {
  const sections: readonly RecordSection[] = READ_GROUPS[group].sections
  return query({
    name: `records/list-${group}`,
    permission: READ_GROUPS[group].permission,
    input: z.strictObject({
      section: z.enum(sections),
      /** Part of what a record says or of the name of whom it is about. */
      says: z.exactOptional(z.string().trim().max(200, 'at most 200 letters')),
      /** Something about it should be looked at: anything, or what of this kind. */
      doubt: z.exactOptional(z.string().max(40)),
      /** Withdrawn without another in its place. */
      withdrawn: z.exactOptional(z.literal('yes')),
      sort: z.exactOptional(z.enum(RECORD_SORTS)),
      descending: z.exactOptional(z.boolean()),
      page: z.exactOptional(z.int().min(1)),
      /** All pages at once, to be taken out. */
      whole: z.exactOptional(z.literal(true)),
    }),
    load: (world, asked, actor) => {
      const { mayRead, ownerOf, people } = readable(world, actor)
      const known = wordsOf(authorityAt(world.snapshot, undefined).authority, world.snapshot)
      const names = namesWithin(known.names, people)
      const shown = entriesShown(world.snapshot, people)
      const facts = versionsListed(world, asked.section, asked.withdrawn !== undefined).filter((fact) =>
        mayRead(asked.section, fact),
      )
      const doubts = asked.withdrawn === undefined ? doubtsByRecord(world) : undefined
      const doubtsOf = ({ id }: RecordFact) => doubts?.get(`${asked.section} ${id}`) ?? []
      const cut = facts.filter((fact) => isDoubted(doubtsOf(fact), asked.doubt))
      const rows = cut.map((fact): RecordRow => ({
        ...rowOf(asked.section, fact, ownerOf(asked.section, fact), names, shown),
        doubts: doubtsOf(fact).map((doubt) => doubtSentence(doubt, names)),
      }))
      return success({ asked, all: facts.length, rows: inOrder(fitting(rows, asked.says), asked) })
    },
    about: ({ rows }) => ({ kind: 'people', people: ownersOf(rows), asList: true }),
    answer: ({ asked, all, rows }) => {
      const atOnce = asked.whole === true ? Math.max(1, rows.length) : AT_ONCE
      const pages = Math.max(1, Math.ceil(rows.length / atOnce))
      const page = Math.min(asked.page ?? 1, pages)
      const start = (page - 1) * atOnce
      const cut = rows.slice(start, start + atOnce)
      return {
        section: asked.section,
        /** How many there are before any filter. */
        all,
        page: {
          rows: cut,
          page,
          pages,
          from: cut.length === 0 ? 0 : start + 1,
          through: start + cut.length,
          all: rows.length,
        },
      }
    },
    // Names never stand in the log: of a part of one it says only that one was asked for.
    looked: ({ page }, { says, ...asked }) => ({
      question: { ...asked, ...(says === undefined ? {} : { bySaying: true }) },
      count: page.rows.length,
    }),
  })
}

/** Lists by who may read them. */
export const LIST_RECORDS = { people: listRecords('people'), program: listRecords('program') } as const

function versionsListed<Name extends RecordSection>(
  { snapshot: { program, n } }: World,
  section: Name,
  withdrawn: boolean,
): readonly Sections[Name][] {
  const facts: FactsBySection = program
  const current = facts[section].filter((fact) => isKnownAt(fact, n))
  if (!withdrawn) return current
  const standing = new Set(current.map(({ id }) => id))
  const last = new Map<string, Sections[Name]>()
  for (const fact of facts[section]) {
    const known = last.get(fact.id)
    if (!standing.has(fact.id) && (known === undefined || known.recordedIn < fact.recordedIn))
      last.set(fact.id, fact)
  }
  return [...last.values()]
}

function rowOf(
  section: RecordSection,
  fact: RecordFact,
  owner: string | undefined,
  names: Names,
  shown: (n: number) => ShownEntry | undefined,
): Omit<RecordRow, 'doubts'> {
  const { first, last } = daysOf(fact)
  const recorded = shown(fact.recordedIn)
  return {
    id: fact.id,
    says: recordPhrase(section, fact, names),
    ...(owner === undefined ? {} : { person: { id: owner, name: names.person(owner) } }),
    ...(first === undefined ? {} : { first }),
    ...(last === undefined ? {} : { last }),
    ...(recorded === undefined ? {} : { recorded }),
  }
}

/** The days a record is about, whatever its section calls them. */
export function daysOf(fact: RecordFact): {
  first?: CalendarDate | undefined
  last?: CalendarDate | undefined
} {
  if ('runsTo' in fact) return { first: fact.effectiveDay, last: fact.runsTo }
  if ('effectiveDay' in fact) return { first: fact.effectiveDay, last: fact.lastDay }
  if ('day' in fact) return { first: fact.day }
  if ('firstDay' in fact || 'lastDay' in fact) return { first: fact.firstDay, last: fact.lastDay }
  return {}
}

function isDoubted(doubts: readonly Doubt[], kind: string | undefined): boolean {
  return kind === undefined || (kind === 'any' ? doubts.length > 0 : doubts.some((one) => one.kind === kind))
}

function fitting(rows: readonly RecordRow[], says: string | undefined): readonly RecordRow[] {
  if (says === undefined || says === '') return rows
  const wanted = foldedName(says)
  return rows.filter(({ says: text, person }) =>
    [text, person?.name ?? ''].some((each) => foldedName(each).includes(wanted)),
  )
}

const byText = new Intl.Collator('en', { numeric: true })

/** By what a row is ordered; what has no such thing stands last, whichever way round. */
const KEYS: Readonly<Record<RecordSort, (row: RecordRow) => string | undefined>> = {
  says: ({ says }) => says,
  person: ({ person }) => person?.name,
  first: ({ first }) => first,
  last: ({ last }) => last,
  recorded: ({ recorded }) => (recorded === undefined ? undefined : String(recorded.n)),
}

function inOrder(
  rows: readonly RecordRow[],
  { sort = 'person', descending = false }: { sort?: RecordSort; descending?: boolean },
): readonly RecordRow[] {
  const key = KEYS[sort]
  return [...rows].sort((left, right) => {
    const [one, other] = [key(left), key(right)]
    if (one === undefined || other === undefined)
      return Number(one === undefined) - Number(other === undefined) || byText.compare(left.says, right.says)
    const order = byText.compare(one, other)
    return (descending ? -order : order) || byText.compare(left.says, right.says)
  })
}

function ownersOf(rows: readonly RecordRow[]): readonly string[] {
  return [...new Set(rows.flatMap(({ person }) => person?.id ?? []))]
}
