import { dayOfAge } from '../calendar/anniversaries.ts'
import type { CalendarDate } from '../calendar/dates.ts'
import { foldedName } from '../kernel/folded.ts'
import type { Person } from '../people/people.schema.ts'
import { stepsTo, type FactIndex, type PartLocated } from './fact-index.ts'
import { writePath, type PathStep } from './paths.ts'
import type { ProblemList } from './problem-list.ts'

/** What a record of the file is checked against: its own days, and what the file says of itself. */
export type FileDays = {
  /** The day of the last entry in the program's time zone, where there is one. */
  lastEntry?: CalendarDate
  firstDayOfDeciding?: CalendarDate
  /** What the program is called: it carries nothing in from itself once it decides. */
  programName?: string
}

const OF_AGE = 18

type Steps = readonly PathStep[]

/** Each record in itself: no span or range backwards, nothing named twice in one list, ages that agree. */
export function checkRecords(index: FactIndex, days: FileDays, problems: ProblemList): void {
  const check = new RecordCheck(problems)
  for (const located of index.withPartial('people')) check.person(stepsTo(located), located.fact, days)
  for (const located of index.withPartial('cards')) check.card(located, days)
  for (const section of ['hitches', 'placements'] as const)
    for (const located of index.withPartial(section)) check.span(stepsTo(located), located.fact)
  for (const located of index.withPartial('editions')) check.span(stepsTo(located), located.fact)
  for (const located of index.withPartial('places')) {
    const { box, books } = located.fact
    const steps = stepsTo(located)
    if (box !== undefined && box.south > box.north)
      check.range([...steps, 'box'], 'south', box.south, 'north', box.north)
    for (const [at, book] of (books ?? []).entries()) check.span([...steps, 'books', at], book)
  }
  for (const located of index.withPartial('extensions')) {
    const { of } = located.fact
    if (of?.kind === 'window') check.span([...stepsTo(located), 'of'], of)
  }
  for (const located of index.withPartial('expectedWork')) {
    const { least, most } = located.fact
    if (least !== undefined && most !== undefined && least > most)
      check.range(stepsTo(located), 'least', least, 'most', most)
    check.span(stepsTo(located), located.fact)
  }
  for (const section of ['memberships', 'permissions', 'certificates', 'designations'] as const)
    for (const located of index.withPartial(section)) check.span(stepsTo(located), located.fact)
  for (const section of ['assignments', 'suspensions', 'items'] as const)
    for (const located of index.withPartial(section)) check.span(stepsTo(located), located.fact)
}

class RecordCheck {
  constructor(private readonly problems: ProblemList) {}

  person(steps: Steps, person: Partial<Person>, days: FileDays): void {
    const { birthDate, ofAgeFrom } = person
    if (birthDate === undefined) return
    if (days.lastEntry !== undefined && birthDate > days.lastEntry) {
      const figures = { kind: 'born-after-last-entry', birthDate, lastEntry: days.lastEntry } as const
      this.problems.add([...steps, 'birthDate'], birthDate, figures)
    }
    const reached = dayOfAge(birthDate, OF_AGE)
    if (ofAgeFrom === undefined || ofAgeFrom === reached) return
    const figures = { kind: 'of-age-contradicts-birth', birthDate, ofAgeFrom, reached } as const
    this.problems.add([...steps, 'ofAgeFrom'], ofAgeFrom, figures)
  }

  card(located: PartLocated<'cards'>, days: FileDays): void {
    const { fact: card, unread } = located
    const steps = stepsTo(located)
    this.pair(steps, 'effectiveDay', card.effectiveDay, 'lastDay', card.lastDay)
    this.uniqueRestrictions(
      [...steps, 'restrictions'],
      (card.restrictions ?? []).map((restriction) => restriction.id),
    )
    const { firstDayOfDeciding } = days
    const { effectiveDay, decision, carriedIn } = card
    if (firstDayOfDeciding === undefined || effectiveDay === undefined) return
    if (effectiveDay < firstDayOfDeciding) return
    if (carriedIn?.issuer !== undefined && days.programName !== undefined && decision === undefined)
      if (foldedName(carriedIn.issuer) === foldedName(days.programName))
        this.problems.add([...steps, 'carriedIn', 'issuer'], carriedIn.issuer, {
          kind: 'carried-in-from-here',
          effectiveDay,
          firstDayOfDeciding,
        })
    if (decision !== undefined || carriedIn !== undefined) return
    if (unread?.has('decision') === true || unread?.has('carriedIn') === true) return
    const figures = { kind: 'card-without-decision', effectiveDay, firstDayOfDeciding } as const
    this.problems.add(steps, undefined, figures)
  }

  span(steps: Steps, days: { firstDay?: CalendarDate; lastDay?: CalendarDate }): void {
    this.pair(steps, 'firstDay', days.firstDay, 'lastDay', days.lastDay)
  }

  range(steps: Steps, leastField: string, least: number, mostField: string, most: number): void {
    this.problems.add([...steps, mostField], most, {
      kind: 'range-backwards',
      leastField,
      mostField,
      least,
      most,
    })
  }

  private pair(
    steps: Steps,
    firstField: string,
    firstDay: CalendarDate | undefined,
    lastField: string,
    lastDay: CalendarDate | undefined,
  ): void {
    if (firstDay === undefined || lastDay === undefined || firstDay <= lastDay) return
    const figures = { kind: 'span-backwards', firstField, lastField, firstDay, lastDay } as const
    this.problems.add([...steps, lastField], lastDay, figures)
  }

  private uniqueRestrictions(steps: Steps, ids: readonly string[]): void {
    const first = new Map<string, number>()
    for (const [at, id] of ids.entries()) {
      const before = first.get(id)
      if (before === undefined) {
        first.set(id, at)
        continue
      }
      const other = writePath([...steps, before])
      this.problems.add([...steps, at, 'id'], id, {
        kind: 'repeated-in-list',
        what: 'restriction',
        id,
        other,
      })
    }
  }
}
