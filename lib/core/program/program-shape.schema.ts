import type { z } from 'zod'
import { idField } from '../kernel/fields.schema.ts'
import type { Located, LocatedFacts, PartialFacts, PartLocated, UnreadableIds } from './fact-index.ts'
import { readFields } from './partial-fact.schema.ts'
import type { ProblemList } from './problem-list.ts'
import {
  entrySchema,
  MOST_EDITIONS,
  MOST_FACTS,
  PROGRAM_FORMAT,
  programSchema,
  sectionSchemas,
  type Entry,
  type Program,
} from './program.schema.ts'
import { SECTION_NAMES, type FactsBySection, type SectionName } from './sections.ts'
import { isFormat, readShape } from './shape.schema.ts'

/** A program file record by record: what could be read, and the ids of what could not. */
export type ProgramShape = {
  /** The whole, where every record of it could be read. */
  program?: Program
  head?: Program['program']
  /** Each entry in its place; nothing where it could not be read. */
  entries: readonly (Entry | undefined)[]
  facts: LocatedFacts
  /** The fields that did read of the facts that as a whole did not. */
  partial: PartialFacts
  unreadable: UnreadableIds
}

type ListName = SectionName | 'entries'

/**
 * Reads the records of a program file one by one, so that a fault in one hides no fault in another. Nothing comes back
 * where the file is of another format: nothing in it could be understood.
 */
export function readProgramShape(value: unknown, problems: ProblemList): ProgramShape | undefined {
  if (!isFormat(PROGRAM_FORMAT, value, problems)) return undefined
  const frame: Record<string, unknown> = { ...value }
  const unreadable = new Map<SectionName, Set<string> | 'all'>()
  const takeList = (name: ListName): readonly unknown[] => {
    const list = value[name]
    // What is no list stays in the frame for the schema to refuse.
    if (Array.isArray(list)) frame[name] = []
    const most = name === 'editions' ? MOST_EDITIONS : MOST_FACTS
    if (Array.isArray(list) && list.length <= most) return list
    if (name !== 'entries' && list !== undefined) unreadable.set(name, 'all')
    if (Array.isArray(list)) problems.add([name], undefined, { kind: 'too-many', most, count: list.length })
    return []
  }
  const entryList = takeList('entries')
  const lists = new Map(SECTION_NAMES.map((name) => [name, takeList(name)]))
  const whole = readShape(programSchema, frame, [], problems)
  const entries = entryList.map((entry, at) => readShape(entrySchema, entry, ['entries', at], problems))
  const read = SECTION_NAMES.map(
    (name) => [name, readSection(name, lists.get(name) ?? [], unreadable, problems)] as const,
  )
  const facts = Object.fromEntries(read.map(([name, of]) => [name, of.facts])) as unknown as LocatedFacts
  const partial = Object.fromEntries(read.map(([name, of]) => [name, of.partial])) as unknown as PartialFacts
  const head = whole?.program ?? programSchema.shape.program.safeParse(value['program']).data
  return {
    ...(whole === undefined || !problems.isEmpty
      ? {}
      : { program: { ...whole, ...withEntries(entries), ...inSections(facts) } }),
    ...(head === undefined ? {} : { head }),
    entries,
    facts,
    partial,
    unreadable,
  }
}

function readSection<Name extends SectionName>(
  section: Name,
  list: readonly unknown[],
  unreadable: Map<SectionName, Set<string> | 'all'>,
  problems: ProblemList,
): { facts: Located<Name>[]; partial: PartLocated<Name>[] } {
  // The table of schemas pairs each name with the schema of its facts; TypeScript cannot follow that by the name.
  const schema = sectionSchemas[section] as unknown as z.ZodType<Located<Name>['fact']>
  const facts: Located<Name>[] = []
  const partial: PartLocated<Name>[] = []
  for (const [index, value] of list.entries()) {
    const fact = readShape(schema, value, [section, index], problems)
    if (fact !== undefined) {
      facts.push({ section, index, fact })
      continue
    }
    const part = readFields(schema, value)
    if (part !== undefined) {
      const fields = part.fields as Partial<Located<Name>['fact']>
      partial.push({ section, index, fact: fields, unread: part.unread })
    }
    const ids = unreadable.get(section)
    const id = idOf(value)
    if (ids === 'all') continue
    // A record without a good id could be any.
    if (id === undefined) unreadable.set(section, 'all')
    else if (ids === undefined) unreadable.set(section, new Set([id]))
    else ids.add(id)
  }
  return { facts, partial }
}

function idOf(value: unknown): string | undefined {
  const id = typeof value === 'object' && value !== null && 'id' in value ? value.id : undefined
  return typeof id === 'string' && idField.safeParse(id).success ? id : undefined
}

function withEntries(entries: readonly (Entry | undefined)[]): { entries: Entry[] } {
  return { entries: entries.filter((entry) => entry !== undefined) }
}

/** The facts without their places, in a new list for each section. */
function inSections(located: LocatedFacts): {
  -readonly [Name in SectionName]: FactsBySection[Name][number][]
} {
  return Object.fromEntries(SECTION_NAMES.map((name) => [name, located[name].map(({ fact }) => fact)])) as {
    -readonly [Name in SectionName]: FactsBySection[Name][number][]
  }
}
