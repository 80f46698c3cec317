import type { CalendarDate } from '../calendar/dates.ts'
import type { Restriction } from '../cards/cards.schema.ts'
import { stepsTo, type FactIndex, type Located, type PartLocated } from './fact-index.ts'
import type { PathStep } from './paths.ts'
import type { ProblemList } from './problem-list.ts'
import { References, type FirstKnown } from './references.ts'
import type { SectionName } from './sections.ts'
import { endOf } from './versions-by-entry.ts'

/**
 * Every reference of every fact leads to a record that some version recorded in the same entry or before makes known.
 * Whether that version is still current is not asked: what ceased to be known can still be spoken of.
 */
export function checkReferences(index: FactIndex, problems: ProblemList): void {
  const check = new ReferenceCheck(index, problems)
  for (const located of index.withPartial('editions')) check.edition(located)
  for (const located of index.withPartial('confirmations')) check.confirmation(located)
  for (const located of index.withPartial('places')) check.place(located)
  for (const located of index.withPartial('memberships')) check.membership(located)
  for (const located of index.withPartial('permissions'))
    check.to(located, 'person', 'people', located.fact.person)
  for (const located of index.withPartial('certificates'))
    check.to(located, 'person', 'people', located.fact.person)
  for (const located of index.withPartial('designations')) check.designation(located)
  for (const located of index.withPartial('assignments')) check.assignment(located)
  for (const located of index.withPartial('cards')) check.card(located)
  for (const located of index.withPartial('endings')) check.to(located, 'card', 'cards', located.fact.card)
  for (const located of index.withPartial('resolutions')) check.resolution(located)
  for (const located of index.withPartial('extensions')) check.extension(located)
  for (const located of index.withPartial('suspensions')) check.suspension(located)
  for (const located of index.withPartial('lifts')) check.lift(located)
  for (const section of ['items', 'expectedWork'] as const)
    for (const located of index.withPartial(section)) check.to(located, 'place', 'places', located.fact.place)
  for (const located of index.withPartial('ratings')) {
    check.to(located, 'item', 'items', located.fact.item)
    check.to(located, 'rater', 'people', located.fact.rater)
  }
  for (const located of index.withPartial('raises')) {
    check.to(located, 'item', 'items', located.fact.item)
    check.to(located, 'by', 'people', located.fact.by)
  }
  for (const located of index.withPartial('hitches')) {
    check.to(located, 'place', 'places', located.fact.place)
    check.to(located, 'lead', 'people', located.fact.lead)
  }
  for (const located of index.withPartial('disputes'))
    check.to(located, 'person', 'people', located.fact.person)
  for (const located of index.withPartial('joins')) {
    check.to(located, 'person', 'people', located.fact.person)
    check.to(located, 'stays', 'people', located.fact.stays)
  }
  for (const located of index.withPartial('placements')) {
    check.to(located, 'hitch', 'hitches', located.fact.hitch)
    check.to(located, 'person', 'people', located.fact.person)
  }
}

type Target = Parameters<References['check']>[1]
type Anywhere = PartLocated<SectionName>

class ReferenceCheck {
  private readonly references: References
  private readonly levels: ReadonlyMap<string, FirstKnown>
  private readonly rules: ReadonlyMap<string, FirstKnown>
  private readonly numbers: FirstKnown
  private readonly restrictionsOf = new Map<string, CardRestrictions>()
  private readonly firstDaysOf = new Map<string, readonly EndingFirstDay[]>()

  constructor(
    private readonly index: FactIndex,
    private readonly problems: ProblemList,
  ) {
    this.references = new References(index, problems)
    this.levels = namesBy(index.of('editions'), (edition) => edition.book, levelNames)
    this.rules = namesBy(
      index.of('editions'),
      (edition) => edition.id,
      (edition) => edition.rules.map((rule) => rule.id),
    )
    this.numbers =
      namesBy(
        index.of('cards'),
        () => '',
        (card) => [card.number],
      ).get('') ?? new Map<string, number>()
  }

  /** A reference in a field of a fact; a field that says nothing leads nowhere. */
  to(
    located: Anywhere,
    field: PathStep | readonly PathStep[],
    target: Target,
    id: string | undefined,
  ): boolean {
    if (id === undefined) return false
    const steps = typeof field === 'object' ? field : [field]
    return this.references.check([...stepsTo(located), ...steps], target, id, entryOf(located))
  }

  edition(located: PartLocated<'editions'>): void {
    this.to(located, 'book', 'books', located.fact.book)
    for (const [at, rule] of (located.fact.rules ?? []).entries()) {
      if (rule.kind !== 'cautions.shown') continue
      for (const [place, caution] of rule.cautions.entries())
        this.to(located, ['rules', at, 'cautions', place], 'cautions', caution)
    }
  }

  confirmation(located: PartLocated<'confirmations'>): void {
    const { edition, rule } = located.fact
    if (!this.to(located, 'edition', 'editions', edition) || edition === undefined || rule === undefined)
      return
    const known = this.rules.get(edition) ?? new Map<string, number>()
    this.references.checkIn([...stepsTo(located), 'rule'], 'rules', known, rule, entryOf(located))
  }

  place(located: PartLocated<'places'>): void {
    this.to(located, 'parent', 'places', located.fact.parent)
    for (const [at, { book }] of (located.fact.books ?? []).entries())
      this.to(located, ['books', at, 'book'], 'books', book)
  }

  membership(located: PartLocated<'memberships'>): void {
    this.to(located, 'person', 'people', located.fact.person)
    this.to(located, 'organisation', 'organisations', located.fact.organisation)
    this.unit(located, ['unit'], located.fact.unit)
  }

  designation(located: PartLocated<'designations'>): void {
    this.to(located, 'person', 'people', located.fact.person)
    this.bookAndLevel(located)
  }

  assignment(located: PartLocated<'assignments'>): void {
    const { person, items, trainers } = located.fact
    this.to(located, 'person', 'people', person)
    for (const [at, item] of (items ?? []).entries()) this.to(located, ['items', at], 'items', item)
    for (const [at, trainer] of (trainers ?? []).entries())
      this.to(located, ['trainers', at], 'people', trainer)
  }

  card(located: PartLocated<'cards'>): void {
    this.to(located, 'person', 'people', located.fact.person)
    this.bookAndLevel(located)
    this.restrictedPlaces(located, 'restrictions', located.fact.restrictions ?? [])
  }

  resolution(located: PartLocated<'resolutions'>): void {
    const { card, restriction, into } = located.fact
    this.restrictedPlaces(located, 'into', into ?? [])
    if (!this.to(located, 'card', 'cards', card) || card === undefined || restriction === undefined) return
    const { known, words } =
      this.restrictionsOf.get(card) ?? restrictionsIn(this.index.versions('cards', card))
    this.restrictionsOf.set(card, { known, words })
    const steps = [...stepsTo(located), 'restriction']
    if (!this.references.checkIn(steps, 'restrictions', known, restriction, entryOf(located))) return
    if (words.has(restriction)) return
    this.problems.add(steps, restriction, { kind: 'restriction-not-words', restriction })
  }

  extension(located: PartLocated<'extensions'>): void {
    const { book, of } = located.fact
    this.to(located, 'book', 'books', book)
    if (of?.kind !== 'card' || !this.to(located, ['of', 'card'], 'cards', of.card)) return
    const cardBook = this.index.versions('cards', of.card).at(-1)?.fact.book
    if (cardBook === undefined || book === undefined || cardBook === book) return
    const figures = { kind: 'extension-of-another-book', book, card: of.card, cardBook } as const
    this.problems.add([...stepsTo(located), 'book'], book, figures)
  }

  suspension(located: PartLocated<'suspensions'>): void {
    const { subject, notices } = located.fact
    for (const [at, notice] of (notices ?? []).entries())
      this.to(located, ['notices', at, 'person'], 'people', notice.person)
    switch (subject?.kind) {
      case 'person':
        this.to(located, ['subject', 'person'], 'people', subject.person)
        return
      case 'organisation':
        this.to(located, ['subject', 'organisation'], 'organisations', subject.organisation)
        return
      case 'unit':
        this.unit(located, ['subject', 'unit'], subject.unit)
        return
      case 'place':
        this.to(located, ['subject', 'place'], 'places', subject.place)
        return
      case 'card': {
        if (this.index.hasUnreadable('cards')) return
        const steps = [...stepsTo(located), 'subject', 'number']
        this.references.checkIn(steps, 'card-numbers', this.numbers, subject.number, entryOf(located))
        return
      }
      case 'work-kind':
      case 'saw-kind':
      case 'everybody':
      case undefined:
    }
  }

  lift(located: PartLocated<'lifts'>): void {
    const { suspension, day } = located.fact
    if (!this.to(located, 'suspension', 'suspensions', suspension)) return
    if (suspension === undefined || day === undefined) return
    // Every version that a known-at may meet beside the lift: the first day is covered in all of them.
    const firstDays =
      this.firstDaysOf.get(suspension) ?? latestFirstDays(this.index.versions('suspensions', suspension))
    this.firstDaysOf.set(suspension, firstDays)
    const firstDay = latestBeside(firstDays, entryOf(located))
    if (firstDay === undefined || day > firstDay) return
    this.problems.add([...stepsTo(located), 'day'], day, { kind: 'lift-before-suspension', day, firstDay })
  }

  private unit(located: Anywhere, field: readonly PathStep[], id: string | undefined): void {
    if (id === undefined || !this.to(located, field, 'places', id)) return
    const found = this.index.lastBy('places', id, entryOf(located))?.fact.kind
    if (found === undefined || found === 'unit') return
    this.problems.add([...stepsTo(located), ...field], id, { kind: 'not-a-unit', id, found })
  }

  private bookAndLevel(located: PartLocated<'cards'> | PartLocated<'designations'>): void {
    const { book, level } = located.fact
    if (!this.to(located, 'book', 'books', book) || book === undefined || level === undefined) return
    const known = this.levels.get(book)
    // A book without editions is told of by itself, and one that could not be read may hold the level.
    if (known === undefined || this.index.hasUnreadable('editions')) return
    this.references.checkIn([...stepsTo(located), 'level'], 'levels', known, level, entryOf(located))
  }

  private restrictedPlaces(located: Anywhere, field: string, restrictions: readonly Restriction[]): void {
    for (const [at, restriction] of restrictions.entries()) {
      if (restriction.kind !== 'places') continue
      for (const [place, id] of restriction.places.entries())
        this.to(located, [field, at, 'places', place], 'places', id)
    }
  }
}

/** The entry as of which a fact may refer; where that did not read, nothing is called known too late. */
function entryOf(located: Anywhere): number {
  return located.fact.recordedIn ?? Infinity
}

/** The restrictions of a card, each with the earliest entry in which a version has it, and those that are in words. */
type CardRestrictions = { known: FirstKnown; words: ReadonlySet<string> }

function restrictionsIn(versions: readonly Located<'cards'>[]): CardRestrictions {
  const known = new Map<string, number>()
  const words = new Set<string>()
  for (const { fact } of versions) {
    for (const { id, kind } of fact.restrictions) {
      known.set(id, Math.min(fact.recordedIn, known.get(id) ?? Infinity))
      if (kind === 'words') words.add(id)
    }
  }
  return { known, words }
}

/** The entry in which a version ends, and the latest first day of it and of all that end later. */
type EndingFirstDay = { end: number; latest: CalendarDate }

function latestFirstDays(versions: readonly Located<'suspensions'>[]): EndingFirstDay[] {
  const byEnd = [...versions].sort((left, right) => (endOf(left) < endOf(right) ? 1 : -1))
  let latest: CalendarDate | undefined
  return byEnd.map((version) => {
    const { firstDay } = version.fact
    if (latest === undefined || firstDay > latest) latest = firstDay
    return { end: endOf(version), latest }
  })
}

/** The latest first day of the versions that end after entry `n`; nothing where none does. */
function latestBeside(firstDays: readonly EndingFirstDay[], n: number): CalendarDate | undefined {
  let low = 0
  let high = firstDays.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((firstDays[middle]?.end ?? 0) > n) low = middle + 1
    else high = middle
  }
  return firstDays[low - 1]?.latest
}

function levelNames(edition: {
  levels: readonly { level: string; aliases?: readonly string[] }[]
}): string[] {
  return edition.levels.flatMap((level) => [level.level, ...(level.aliases ?? [])])
}

/** Names that facts give, grouped, each with the earliest entry in which one of them gives it. */
function namesBy<Name extends SectionName>(
  facts: readonly Located<Name>[],
  group: (fact: Located<Name>['fact']) => string,
  names: (fact: Located<Name>['fact']) => readonly string[],
): ReadonlyMap<string, FirstKnown> {
  const groups = new Map<string, Map<string, number>>()
  for (const { fact } of facts) {
    const known = groups.get(group(fact)) ?? new Map<string, number>()
    groups.set(group(fact), known)
    for (const name of names(fact)) known.set(name, Math.min(fact.recordedIn, known.get(name) ?? Infinity))
  }
  return groups
}
