import type { Records, Sections } from '../../lib/core/authority/records.ts'
import { plusDays, type CalendarDate } from '../../lib/core/calendar/dates.ts'
import type { Instant } from '../../lib/core/calendar/instants.ts'
import { programSchema, type Program } from '../../lib/core/program/program.schema.ts'
import { SECTION_NAMES } from '../../lib/core/program/sections.ts'
import { Draw } from './draw.ts'
import { generateCase, type Case } from './program-generator.ts'

/** How many entries the journal of a generated history has. */
export const ENTRIES = 6

/** What is recorded in the first entry and never corrected, so that every reference has something to name. */
const FIXED: readonly (keyof Sections)[] = ['books', 'editions', 'organisations', 'places', 'people', 'items']

/** A program with every version of its facts, and a question near its days. */
export type History = { program: Program; versions: Records; question: Case['question'] }

/** A program whose facts became known, were corrected and were withdrawn over a few entries. */
export function historyOfSeed(seed: number): History {
  return generateHistory(new Draw(seed))
}

function generateHistory(draw: Draw): History {
  const { records, question } = generateCase(draw)
  const versions = SECTION_NAMES.reduce<Records>(
    (whole, name) =>
      FIXED.includes(name)
        ? whole
        : { ...whole, [name]: records[name].flatMap((fact) => versionsOf(draw, fact)) },
    { ...records, knownAt: ENTRIES },
  )
  return { program: programOf(versions), versions, question }
}

/** A program file that holds all versions. */
export function programOf(versions: Records): Program {
  const { knownAt, timeZone, book, ...sections } = versions
  return programSchema.parse({
    format: 'kerfbook-program/1',
    draft: true,
    invented: true,
    program: { id: 'generated', name: 'A generated program', timeZone, book },
    entries: Array.from({ length: knownAt }, (_, index) => ({
      n: index + 1,
      statedAt: `2027-05-0${index + 1}T12:00:00.000Z` as Instant,
      actor: 'Invented Clerk',
      event: 'recorded',
    })),
    ...sections,
  })
}

function versionsOf<Fact extends Sections[keyof Sections]>(draw: Draw, fact: Fact): Fact[] {
  const recordedIn = 1 + draw.below(ENTRIES)
  const first = { ...fact, recordedIn }
  if (recordedIn === ENTRIES || draw.chance(65)) return [first]
  const supersededIn = recordedIn + 1 + draw.below(ENTRIES - recordedIn)
  const ceased = { ...first, supersededIn }
  if (draw.chance(25)) return [ceased]
  return [ceased, { ...corrected(draw, fact), recordedIn: supersededIn, supersedes: recordedIn }]
}

/** A correction moves a day; what is corrected has no other difference. */
function corrected<Fact extends Sections[keyof Sections]>(draw: Draw, fact: Fact): Fact {
  const later = 1 + draw.below(20)
  for (const name of ['lastDay', 'runsTo', 'day'] as const) {
    const day = (fact as Partial<Record<typeof name, CalendarDate>>)[name]
    if (day !== undefined) return { ...fact, [name]: plusDays(day, later) }
  }
  return fact
}
