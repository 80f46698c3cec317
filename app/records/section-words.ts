import type { RecordSection } from '../../lib/usecases/records/record-kinds.ts'

/** How a section is called on the pages: its room, one of it, and in one line what it is for. */
export type SectionWords = { title: string; one: string; lead: string }

export const SECTION_WORDS: Readonly<Record<RecordSection, SectionWords>> = {
  people: {
    title: 'People on record',
    one: 'a person',
    lead: 'Names, and what of an age decides. Where somebody belongs stands in their memberships.',
  },
  memberships: {
    title: 'Memberships',
    one: 'a membership',
    lead: 'For which organisation and unit somebody works, in which capacity, on the days of which agreement.',
  },
  permissions: {
    title: 'Guardians’ permissions',
    one: 'a guardian’s permission',
    lead: 'What the guardian of somebody under age said, from which day on.',
  },
  certificates: {
    title: 'Certificates',
    one: 'a certificate',
    lead: 'First aid, CPR and whatever else a rule asks for beside the card. Never medical detail.',
  },
  cards: {
    title: 'Cards',
    one: 'a card',
    lead: 'The lines of each card: work, saw, level, days and restrictions, and who issued what was carried in.',
  },
  extensions: {
    title: 'Orders that extend cards',
    one: 'an order that extends cards',
    lead: 'Dated orders that let cards run longer. They revive nothing that was suspended or withdrawn.',
  },
  suspensions: {
    title: 'Suspensions and stand-downs',
    one: 'a suspension',
    lead: 'What stops authority: of a person, a card, a unit, a place, a kind of work, or of everybody.',
  },
  resolutions: {
    title: 'Words understood',
    one: 'what words on a card mean',
    lead: 'What certifying officials found that free text on a card means.',
  },
  designations: {
    title: 'Designations',
    one: 'a designation',
    lead: 'Who is appointed instructor or evaluator, for which level and work, on which days.',
  },
  assignments: {
    title: 'Training assignments',
    one: 'a training assignment',
    lead: 'Who may learn on which logs and trees, under whom, on which days.',
  },
  organisations: { title: 'Organisations', one: 'an organisation', lead: 'The agency and its partners.' },
  places: {
    title: 'Places',
    one: 'a place',
    lead: 'The tree of program, units and places, and which rule book is in force where.',
  },
  items: {
    title: 'Logs and trees',
    one: 'a log or tree',
    lead: 'What is to be bucked or felled. A list is no order: walking away is always open, and never a fault.',
  },
  expectedWork: {
    title: 'Expected work',
    one: 'expected work',
    lead: 'The usual case, where nobody has surveyed: how many, how thick and how complex at most.',
  },
  ratings: {
    title: 'Ratings',
    one: 'a rating',
    lead: 'How complex somebody found a log or tree, and how they came to see it. Lower only by a new worksheet on site.',
  },
  raises: {
    title: 'Raises',
    one: 'a raise',
    lead: 'A complexity below which a log or tree is not planned, and why.',
  },
  hitches: {
    title: 'Hitches',
    one: 'a hitch',
    lead: 'Work tours: where, on which days, who leads, who is in the crew, and what work.',
  },
  joins: {
    title: 'Records of one person',
    one: 'a joining of two records',
    lead: 'Two records that turned out to be of one person. Nothing is copied or lost; withdrawn, they are two again.',
  },
  placements: {
    title: 'Places in crews',
    one: 'a place in a crew',
    lead: 'Who is in which crew, on which days. On one day nobody is in two crews.',
  },
}

/** The part of an address that names a section: `expected-work`. */
export function slugOf(section: RecordSection): string {
  return section.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)
}

/** The section that an address names; nothing where it names none. */
export function sectionOf(slug: string): RecordSection | undefined {
  const sections = Object.keys(SECTION_WORDS) as RecordSection[]
  return sections.find((section) => slugOf(section) === slug)
}

/** The address of a section's table, or of one of its records. */
export function recordPath(section: RecordSection, ...rest: readonly string[]): string {
  return ['/records', slugOf(section), ...rest.map(encodeURIComponent)].join('/')
}
