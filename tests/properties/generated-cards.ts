import type { Sections } from '../../lib/core/authority/records.ts'
import { plusDays } from '../../lib/core/calendar/dates.ts'
import type { Instant } from '../../lib/core/calendar/instants.ts'
import type { Restriction, Suspension, TypedRestriction } from '../../lib/core/cards/cards.schema.ts'
import type { Inches } from '../../lib/core/kernel/measures.ts'
import {
  COMPLEXITIES,
  SAW_KINDS,
  WORK_KINDS,
  type SawKind,
  type WorkKind,
} from '../../lib/core/rulebooks/words.ts'
import type { Part } from '../builders/records.ts'
import { BOOKS } from './generated-books.ts'
import { levelIn } from './generated-people.ts'
import type { Calendar, Draw } from './draw.ts'

/** Diameters of generated work lie at the limits of generated restrictions, and a sixteenth beside them. */
export const LIMITS = [20, 24] as Inches[]
export const SPECIES = ['invented fir', 'invented cedar']
const PLACES = ['unit-1', 'unit-2', 'place-1', 'place-2', 'place-3']

type CardSections = 'cards' | 'endings' | 'resolutions' | 'extensions' | 'suspensions' | 'lifts'

/** The cards of generated people, and what ends, extends, explains and suspends them. */
export function generateCards(
  draw: Draw,
  calendar: Calendar,
  people: readonly string[],
): Required<Pick<Part, CardSections>> {
  const cards = people.flatMap((person) => cardsOf(draw, calendar, person))
  const suspensions = Array.from({ length: draw.amiss(55) ? 1 + draw.below(3) : 0 }, (_, index) =>
    generateSuspension(draw, calendar, index, people, cards),
  ) // prettier-ignore
  return {
    cards,
    endings: cards
      .filter(() => draw.amiss(15))
      .map((card) => ({
        id: `ending-${card.id}`,
        recordedIn: 1,
        card: card.id,
        kind: draw.pick(['withdrawn', 'reduced', 'replaced', 'surrendered']),
        firstDay: calendar.near(),
        decision: 'Invented decision',
        by: 'Invented Official',
      })),
    resolutions: cards.flatMap((card) => resolutions(draw, card)),
    extensions: extensions(draw, calendar, cards),
    suspensions,
    lifts: draw.some(suspensions, 40).map((of) => ({
      id: `lift-${of.id}`,
      recordedIn: 1,
      suspension: of.id,
      day: calendar.from(of.firstDay),
      decision: 'Invented decision',
      by: 'Invented Official',
    })),
  }
}

function cardsOf(draw: Draw, calendar: Calendar, person: string): Sections['cards'][] {
  const count = draw.amiss(12) ? 0 : draw.weighted([[45, 1], [35, 2], [20, 3]]) // prettier-ignore
  const cards: Sections['cards'][] = []
  for (let index = 0; index < count; index += 1) {
    const book = draw.amiss(60) ? draw.pick(BOOKS) : 'federal-crosscut'
    const earlier = draw.chance(35) ? cards.at(-1) : undefined
    const { firstDay, lastDay } = calendar.span(35)
    cards.push({
      id: `card-${person}-${index}`,
      recordedIn: 1,
      number: earlier?.number ?? `n-${person}-${index}`,
      line: (earlier?.line ?? 0) + 1,
      person,
      book,
      workKinds: workKinds(draw),
      sawKinds: sawKinds(draw, book),
      level: levelIn(draw, book),
      effectiveDay: firstDay,
      ...(draw.amiss(10) ? {} : { lastDay: draw.chance(4) ? longAfter(lastDay) : lastDay }),
      restrictions: restrictions(draw),
      ...(draw.chance(30) ? { carriedIn: { issuer: 'Invented Agency' } } : { decision: 'Invented decision' }),
    })
  }
  return cards
}

/** Four years later: longer than every term. */
function longAfter(day: Sections['cards']['effectiveDay']): Sections['cards']['effectiveDay'] {
  return plusDays(day, 1461)
}

function workKinds(draw: Draw): WorkKind[] | 'not-stated' {
  if (!draw.amiss(75)) return ['bucking', 'felling']
  return draw.weighted<WorkKind[] | 'not-stated'>([
    [5, ['bucking']],
    [3, ['felling']],
    [2, 'not-stated'],
  ])
}

function sawKinds(draw: Draw, book: string): SawKind[] {
  if (book === 'interagency-faller') return draw.chance(80) ? ['chain-saw'] : ['chain-saw', 'crosscut']
  return draw.amiss(15) ? draw.someOf(SAW_KINDS, 60) : ['crosscut']
}

function restrictions(draw: Draw): Restriction[] {
  const count = draw.chance(15) || draw.amiss(45) ? draw.weighted([[6, 1], [3, 2], [1, 3]]) : 0 // prettier-ignore
  return Array.from({ length: count }, (_, index) => generateRestriction(draw, `r-${index}`))
}

/** A restriction of any kind, sometimes in words, sometimes for some work kinds alone. */
export function generateRestriction(draw: Draw, id: string): Restriction {
  const scope = { id, ...(draw.chance(30) ? { workKinds: draw.someOf(WORK_KINDS) } : {}) }
  if (draw.chance(22)) return { ...scope, kind: 'words', text: `invented words ${draw.below(2)}` }
  return typedRestriction(draw, scope)
}

type Scope = { id: string; workKinds?: WorkKind[] }

function typedRestriction(draw: Draw, scope: Scope): TypedRestriction {
  switch (draw.below(7)) {
    case 0:
      return { ...scope, kind: 'greatest-diameter', inches: draw.pick(LIMITS) }
    case 1:
      return { ...scope, kind: 'places', places: draw.some(PLACES, 45) }
    case 2:
      return { ...scope, kind: 'species', species: draw.some(SPECIES, 50) }
    case 3:
      return { ...scope, kind: 'greatest-complexity', complexity: draw.pick(COMPLEXITIES) }
    case 4:
      return { ...scope, kind: 'double-bucking-only' }
    case 5:
      return { ...scope, kind: 'supervisor-only' }
    default:
      return { ...scope, kind: 'no-felling' }
  }
}

function resolutions(draw: Draw, card: Sections['cards']): Sections['resolutions'][] {
  return card.restrictions
    .filter((restriction) => restriction.kind === 'words' && draw.chance(50))
    .map((restriction) => ({
      id: `resolution-${card.id}-${restriction.id}`,
      recordedIn: 1,
      card: card.id,
      restriction: restriction.id,
      into: Array.from({ length: draw.below(3) }, (_, index) =>
        typedRestriction(draw, {
          id: `into-${index}`,
          ...(draw.chance(25) ? { workKinds: draw.someOf(WORK_KINDS) } : {}),
        }),
      ),
      by: 'Invented Official',
      reason: 'Invented reason',
    }))
}

function extensions(
  draw: Draw,
  calendar: Calendar,
  cards: readonly Sections['cards'][],
): Sections['extensions'][] {
  const singles = draw.some(cards, 15).flatMap((card) => (draw.chance(15) ? [card, card] : [card]))
  const order = { recordedIn: 1, order: 'Invented order', source: 'made up' }
  const blankets = draw.weighted([[45, 0], [35, 1], [20, 2]]) // prettier-ignore
  return [
    ...singles.map((card, index) => ({
      ...order,
      id: `extension-${index}`,
      book: card.book,
      runsTo: calendar.near(),
      effectiveDay: draw.chance(40) ? calendar.near() : calendar.farPast(),
      of: { kind: 'card' as const, card: card.id },
    })),
    ...Array.from({ length: blankets }, (_, index) => {
      const { firstDay, lastDay } = calendar.nearSpan()
      return {
        ...order,
        id: `blanket-${index}`,
        book: draw.chance(70) ? 'federal-crosscut' : draw.pick(BOOKS),
        runsTo: draw.chance(80) ? calendar.from(lastDay) : calendar.farFuture(),
        effectiveDay: draw.chance(60) ? calendar.near() : calendar.farPast(),
        of: { kind: 'window' as const, firstDay, lastDay },
      }
    }),
  ]
}

/** A suspension or stand-down of anything that can be suspended. */
export function generateSuspension(
  draw: Draw,
  calendar: Calendar,
  index: number,
  people: readonly string[],
  cards: readonly Sections['cards'][],
): Suspension {
  const kind = draw.pick([
    'unsafe-act',
    'incident',
    'competence',
    'administrative',
    'administrative',
  ] as const)
  const firstDay = calendar.near()
  const ends = kind === 'administrative' && draw.chance(60) ? { lastDay: calendar.from(firstDay) } : {}
  const notices = draw.some(people, 35).map((person) => ({ person, at: moment(draw, calendar) }))
  return {
    id: `suspension-${index}`,
    recordedIn: 1,
    form: draw.pick(['suspension', 'stand-down']),
    kind,
    subject: subject(draw, people, cards),
    ...(draw.chance(25) ? { workKinds: draw.someOf(WORK_KINDS) } : {}),
    ...(draw.chance(15) ? { sawKinds: draw.someOf(SAW_KINDS, 60) } : {}),
    firstDay,
    ...ends,
    ...(notices.length > 0 ? { notices } : {}),
    by: 'Invented Lead',
    reason: 'Invented reason',
  }
}

/** A moment on a near day, now and then at one of the two midnights of the time zone of the program. */
function moment(draw: Draw, calendar: Calendar): Instant {
  const hour = draw.pick(['05:59:59.999', '06:00:00.000', '06:59:59.999', '07:00:00.000', '18:30:00.000'])
  return `${calendar.near()}T${hour}Z` as Instant
}

function subject(
  draw: Draw,
  people: readonly string[],
  cards: readonly Sections['cards'][],
): Suspension['subject'] {
  switch (draw.below(12)) {
    case 0:
      return { kind: 'organisation', organisation: draw.pick(['agency', 'partner']) }
    case 1:
    case 2:
      return { kind: 'unit', unit: draw.pick(['unit-1', 'unit-2']) }
    case 3:
    case 4:
      return { kind: 'place', place: draw.pick([...PLACES, 'program']) }
    case 5:
      return { kind: 'work-kind', workKind: draw.pick(WORK_KINDS) }
    case 6:
      return { kind: 'saw-kind', sawKind: draw.pick(SAW_KINDS) }
    case 7:
      return { kind: 'everybody' }
    case 8:
    case 9:
      return cards.length > 0
        ? { kind: 'card', number: draw.pick(cards).number }
        : { kind: 'person', person: draw.pick(people) }
    default:
      return { kind: 'person', person: draw.pick(people) }
  }
}
