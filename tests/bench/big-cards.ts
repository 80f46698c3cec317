import type { Sections } from '../../lib/core/authority/records.ts'
import { plusDays, type CalendarDate } from '../../lib/core/calendar/dates.ts'
import type { Restriction } from '../../lib/core/cards/cards.schema.ts'
import type { Inches } from '../../lib/core/kernel/measures.ts'
import type { WorkKind } from '../../lib/core/rulebooks/words.ts'
import type { Draw } from '../properties/draw.ts'
import {
  COOPERATOR,
  FEDERAL,
  SPECIES,
  UNITS,
  dayAfter,
  dayBefore,
  placesOf,
  seasonDay,
  yearsFrom,
} from './season.ts'

type CardSections = 'cards' | 'endings' | 'resolutions' | 'suspensions' | 'lifts'

/** What a program knows of the cards of its people. */
export type BigCards = { [Name in CardSections]: Sections[Name][] }

type Line = { level: string; workKinds: WorkKind[] | 'not-stated' }
type Run = { effectiveDay: CalendarDate; lastDay: CalendarDate }

/** Adds the cards of one person, and what ends, explains and suspends them; the staff are C for both kinds. */
export function addCards(draw: Draw, into: BigCards, person: string, isStaff: boolean): void {
  const lines = isStaff ? BOTH_C : drawLines(draw)
  if (lines.length === 0) return
  // The book of the partner has no level for trainees.
  const isOfPartner = !isStaff && draw.chance(12) && lines[0]?.level !== TRAINEE
  const book = isOfPartner ? COOPERATOR : FEDERAL
  const years = book === FEDERAL ? 3 : Math.max(1, ['A', 'B', 'C'].indexOf(lines[0]?.level ?? 'A') + 1)
  const runs = isStaff
    ? [{ effectiveDay: dayBefore(draw, 400), lastDay: dayAfter(draw, 400) }]
    : drawRuns(draw, years)
  const restrictions = isStaff ? [] : drawRestrictions(draw)
  runs.forEach((run, renewal) => {
    lines.forEach((line, index) => {
      const id = `card-${person}-${renewal + 1}-${index + 1}`
      into.cards.push({
        id,
        recordedIn: 1,
        number: `N-${person}-${renewal + 1}`,
        line: index + 1,
        person,
        book,
        workKinds: line.workKinds,
        sawKinds: ['crosscut'],
        level: line.level,
        ...run,
        restrictions,
        ...(draw.chance(25)
          ? { carriedIn: { issuer: 'Invented Agency' } }
          : { decision: 'Invented decision' }),
      })
      for (const { id: restriction, kind, ...scope } of restrictions)
        if (kind === 'words' && draw.chance(50))
          into.resolutions.push({
            id: `resolution-${id}-${restriction}`,
            recordedIn: 1,
            card: id,
            restriction,
            into: [{ id: 'into-1', kind: 'greatest-diameter', inches: 24 as Inches, ...workKindsOf(scope) }],
            by: 'Invented Official',
            reason: 'Invented reason',
          })
      if (!isStaff && draw.chance(1))
        into.endings.push({
          id: `ending-${id}`,
          recordedIn: 1,
          card: id,
          kind: draw.pick(['withdrawn', 'reduced', 'surrendered']),
          firstDay: seasonDay(draw),
          decision: 'Invented decision',
          by: 'Invented Official',
        })
    })
  })
  if (!isStaff) addSuspensions(draw, into, person)
}

/** Adds the suspensions that are about more than one person: a unit for some days, a place for a week. */
export function addSharedSuspensions(draw: Draw, into: BigCards): void {
  const days = (length: number) => {
    const firstDay = seasonDay(draw)
    return { firstDay, lastDay: plusDays(firstDay, length - 1) }
  }
  const common = {
    recordedIn: 1,
    form: 'suspension',
    kind: 'administrative',
    by: 'Invented Manager',
  } as const
  into.suspensions.push(
    {
      ...common,
      ...days(10),
      id: 'suspension-unit',
      subject: { kind: 'unit', unit: 'unit-2' },
      reason: 'Invented review of a unit',
    },
    {
      ...common,
      ...days(7),
      id: 'suspension-place',
      subject: { kind: 'place', place: placesOf('unit-3')[0] ?? 'unit-3' },
      reason: 'Invented closure of a place',
    },
  )
}

const TRAINEE = 'trainee'
const BOTH: WorkKind[] = ['bucking', 'felling']
const BOTH_C: Line[] = [{ level: 'C', workKinds: BOTH }]

function drawLines(draw: Draw): Line[] {
  const level = draw.weighted([[12, ''], [7, TRAINEE], [30, 'A'], [36, 'B'], [15, 'C']] as const) // prettier-ignore
  if (level === '') return []
  if (level === TRAINEE) return [{ level, workKinds: ['bucking'] }]
  const kinds = draw.weighted([[55, 'bucking'], [37, 'both'], [6, 'two-lines'], [2, 'not-stated']] as const) // prettier-ignore
  switch (kinds) {
    case 'bucking':
      return [{ level, workKinds: ['bucking'] }]
    case 'both':
      return [{ level, workKinds: BOTH }]
    case 'two-lines':
      return [
        { level, workKinds: ['bucking'] },
        { level: level === 'C' ? 'B' : 'A', workKinds: ['felling'] },
      ]
    case 'not-stated':
      return [{ level, workKinds: 'not-stated' }]
  }
}

/** One card in force throughout, or one that ends in the season: renewed on time, early or late, or not at all. */
function drawRuns(draw: Draw, years: number): Run[] {
  const through = (lastDay: CalendarDate): Run => ({
    effectiveDay: plusDays(yearsFrom(lastDay, -years), 1),
    lastDay,
  })
  const from = (effectiveDay: CalendarDate): Run => ({
    effectiveDay,
    lastDay: plusDays(yearsFrom(effectiveDay, years), -1),
  })
  if (!draw.chance(22)) {
    const current = through(dayAfter(draw, years * 365 - 150))
    return draw.chance(30) ? [through(plusDays(current.effectiveDay, -1)), current] : [current]
  }
  const ends = seasonDay(draw)
  const old = through(ends)
  switch (
    draw.weighted([[55, 'on-time'], [12, 'early'], [13, 'late'], [20, 'lapsed']] as const) /* prettier-ignore */
  ) {
    case 'on-time':
      return [old, from(plusDays(ends, 1))]
    case 'early':
      return [old, from(plusDays(ends, -draw.below(60)))]
    case 'late':
      return [old, from(plusDays(ends, 2 + draw.below(40)))]
    case 'lapsed':
      return [old]
  }
}

function drawRestrictions(draw: Draw): Restriction[] {
  const count = draw.weighted([[74, 0], [20, 1], [6, 2]]) // prettier-ignore
  return Array.from({ length: count }, (_, index) => {
    const scope = { id: `r-${index + 1}`, ...(draw.chance(20) ? { workKinds: [draw.pick(BOTH)] } : {}) }
    return drawRestriction(draw, scope)
  })
}

type Scope = { id: string; workKinds?: WorkKind[] }

function drawRestriction(draw: Draw, scope: Scope): Restriction {
  const kind = draw.weighted([
    [55, 'greatest-diameter'],
    [12, 'places'],
    [6, 'species'],
    [8, 'greatest-complexity'],
    [6, 'double-bucking-only'],
    [4, 'supervisor-only'],
    [3, 'no-felling'],
    [6, 'words'],
  ] as const)
  switch (kind) {
    case 'greatest-diameter':
      return { ...scope, kind, inches: (16 + 2 * draw.below(9)) as Inches }
    case 'places':
      return { ...scope, kind, places: draw.someOf([...UNITS, ...placesOf('unit-1')], 30) }
    case 'species':
      return { ...scope, kind, species: draw.someOf(SPECIES, 60) }
    case 'greatest-complexity':
      return { ...scope, kind, complexity: draw.pick(['least', 'moderate']) }
    case 'words':
      return { ...scope, kind, text: 'Invented words that nobody has read again' }
    case 'double-bucking-only':
    case 'supervisor-only':
    case 'no-felling':
      return { ...scope, kind }
  }
}

function workKindsOf({ workKinds }: { workKinds?: WorkKind[] | undefined }): { workKinds?: WorkKind[] } {
  return workKinds === undefined ? {} : { workKinds }
}

function addSuspensions(draw: Draw, into: BigCards, person: string): void {
  if (!draw.chance(2)) return
  const id = `suspension-${person}`
  const firstDay = seasonDay(draw)
  into.suspensions.push({
    id,
    recordedIn: 1,
    form: 'stand-down',
    kind: 'unsafe-act',
    subject: draw.chance(80) ? { kind: 'person', person } : { kind: 'card', number: `N-${person}-1` },
    ...(draw.chance(20) ? { workKinds: ['felling'] } : {}),
    firstDay,
    by: 'Invented Lead',
    reason: 'Invented reason',
  })
  if (draw.chance(60))
    into.lifts.push({
      id: `lift-${person}`,
      recordedIn: 1,
      suspension: id,
      day: plusDays(firstDay, 1 + draw.below(30)),
      decision: 'Invented decision',
      by: 'Invented Official',
    })
}
