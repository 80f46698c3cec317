import { forbidden, notFound } from 'next/navigation'
import { cache } from 'react'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import { READ_RECORD } from '../../lib/usecases/records/read-record.ts'
import { BEYOND_REACH, readGroupOf } from '../../lib/usecases/records/readable.ts'
import { recordChoices, type RecordChoices } from '../../lib/usecases/records/record-choices.ts'
import { RECORD_KINDS, type RecordFact, type RecordSection } from '../../lib/usecases/records/record-kinds.ts'
import { valueForPage } from '../_door/value-for-page.ts'
import { caller, visitorOf, type Visitor } from '../_door/visitor.ts'
import { recordPath, sectionOf } from './section-words.ts'

/** What forms of records may name, once for each request; whoever is signed out by now is told so in their form. */
export const lookAtChoices = cache(async () =>
  callQuery(runtime(), recordChoices, { input: {} }, await caller()),
)

/** What the pages of records may name. */
export async function choicesFor(path: string): Promise<RecordChoices> {
  return valueForPage(await lookAtChoices(), path)
}

/** The section that an address names; an address that names none leads nowhere. */
export function sectionAt(slug: string): RecordSection {
  return sectionOf(slug) ?? notFound()
}

/** One look at a record for each request, whoever of the page and its title asks first: the access log counts it once. */
export const lookAtRecord = cache(async (section: RecordSection, id: string) =>
  callQuery(runtime(), READ_RECORD[readGroupOf(section)], { input: { section, id } }, await caller()),
)

/** A record for a page about it, with who looks at it. */
export async function recordForPage(slug: string, id: string, rest = '') {
  const section = sectionAt(slug)
  const own = recordPath(section, id)
  const path = `${own}${rest}`
  const visitor = await visitorOf(path)
  const record = valueForPage(await lookAtRecord(section, id), path)
  const [latest] = record.versions
  const choices = withBeyond(await choicesFor(path), latest?.fact)
  return { section, own, path, visitor, record, choices }
}

/**
 * What a form may name, with whom its record names beyond the reader's reach: so that a correction leaves them as they
 * are, and says nothing of who they are.
 */
export function withBeyond(choices: RecordChoices, fact: RecordFact | undefined): RecordChoices {
  const known = new Set(choices.people.map(({ id }) => id))
  const beyond = [...new Set(peopleNamed(fact))].filter((id) => !known.has(id))
  const people = beyond.map((id, at) => ({
    id,
    name: at === 0 ? BEYOND_REACH : `${BEYOND_REACH}, ${at + 1}`,
  }))
  return people.length === 0 ? choices : { ...choices, people: [...choices.people, ...people] }
}

function peopleNamed(fact: RecordFact | undefined): readonly string[] {
  if (fact === undefined) return []
  return [
    ...('person' in fact ? [fact.person] : []),
    ...('rater' in fact ? [fact.rater] : []),
    ...('lead' in fact ? [fact.lead] : []),
    ...('trainers' in fact ? fact.trainers : []),
    // Only a raise is by somebody on record; elsewhere a name stands as it was said.
    ...('by' in fact && 'item' in fact ? [fact.by] : []),
  ]
}

/** Whether any role of a visitor may write records of a section; on which of them the door says. */
export function mayWrite({ permissions }: Pick<Visitor, 'permissions'>, section: RecordSection): boolean {
  return permissions.includes(RECORD_KINDS[section].permission)
}

/** Shows the page that says "not for your roles" to those of whose roles none writes records of the section. */
export function requireWriting(visitor: Pick<Visitor, 'permissions'>, section: RecordSection): void {
  if (!mayWrite(visitor, section)) forbidden()
}
