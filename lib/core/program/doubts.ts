import type { Records } from '../authority/records.ts'
import { toEpochDay, type CalendarDate } from '../calendar/dates.ts'
import { dateIn } from '../calendar/instants.ts'
import { foldedName } from '../kernel/folded.ts'
import type { Certificate } from '../people/people.schema.ts'
import { wantsAgreement } from '../people/person-rules.ts'
import { EditionIndex, inForceOn } from '../rulebooks/edition-index.ts'
import { PlaceIndex } from '../work/place-index.ts'
import { rateWorksheet } from '../work/worksheet.ts'
import type { Rating } from '../work/work.schema.ts'
import type { BookFile } from './book-file.schema.ts'
import { doubtNumbersAlike, doubtNumbersMixed, doubtSameNames } from './doubts-alike.ts'
import { CardDoubts } from './doubts-of-cards.ts'
import { doubtOldLifts, doubtResolutions } from './doubts-decided.ts'
import { doubtShipped } from './doubts-shipped.ts'
import { latestEntry, recordsAt } from './known.ts'
import { writePath } from './paths.ts'
import type { Doubt, DoubtFigures } from './problems.ts'
import type { Program } from './program.schema.ts'
import { SECTION_NAMES, type Fact, type FactsBySection, type SectionName } from './sections.ts'
import type { TellDoubt } from './tell-doubt.ts'

/**
 * What somebody should look at in a program as now known, in the order of the file. A doubt is no error: answers count
 * what it is about by the rules. Cards (with every order that extends them) and certificates that ended before the day of
 * the look raise none: the day of the last entry, unless another is given. With `shipped`, the rule books as they ship,
 * the program's copies of them are compared.
 */
export function programDoubts(
  program: Program,
  shipped: readonly BookFile[] = [],
  on?: CalendarDate,
): Doubt[] {
  const last = program.entries.at(-1)
  if (last === undefined) return []
  const records = recordsAt(program, latestEntry(program))
  const today = on ?? dateIn(last.statedAt, program.program.timeZone)
  const found = new Map<Fact, DoubtFigures[]>()
  const doubt = (fact: Fact, figures: DoubtFigures): void => {
    found.set(fact, [...(found.get(fact) ?? []), figures])
  }
  doubtSameNames(records, doubt)
  doubtNumbersAlike(records, doubt)
  doubtNumbersMixed(records, doubt)
  doubtPeople(records, doubt)
  doubtOldLifts(program, records, doubt)
  doubtResolutions(records, today, doubt)
  doubtShipped(records, shipped, doubt)
  const editions = records.editions.map((edition) => new EditionIndex(edition))
  doubtMemberships(records, editions, today, doubt)
  const names = new Map(records.people.map(({ id, name }) => [id, foldedName(name)]))
  for (const certificate of records.certificates)
    doubtCertificate(certificate, names.get(certificate.person), today, doubt)
  const cards = new CardDoubts(records, editions, today, doubt)
  for (const card of records.cards) cards.look(card)
  doubtSuspensions(records, today, doubt)
  doubtWithdrawn(program, doubt)
  doubtDisputes(records, doubt)
  const ratings = new RatingDoubts(records, editions, doubt)
  for (const rating of records.ratings) ratings.look(rating)
  return inOrder(program, found)
}

function inOrder(program: FactsBySection, found: ReadonlyMap<Fact, readonly DoubtFigures[]>): Doubt[] {
  return SECTION_NAMES.flatMap((section: SectionName) => {
    const facts: readonly Fact[] = program[section]
    return facts.flatMap((fact, index) => {
      const person = personOf(section, fact)
      const about = {
        path: writePath([section, index]),
        id: fact.id,
        ...(person === undefined ? {} : { person }),
      }
      return (found.get(fact) ?? []).map((figures) => ({ ...about, ...figures }))
    })
  })
}

function personOf(section: SectionName, fact: Fact): string | undefined {
  if (section === 'people') return fact.id
  return 'person' in fact ? fact.person : undefined
}

function doubtPeople(records: Records, doubt: TellDoubt): void {
  for (const person of records.people) {
    if (person.birthDate === undefined && person.ofAgeFrom === undefined)
      doubt(person, { kind: 'age-not-on-record' })
    if (person.ofAgeFrom !== undefined && person.birthDate === undefined && person.attestedBy === undefined)
      doubt(person, { kind: 'age-not-attested' })
  }
}

/** An agreement is looked at where any edition in force on the last day told, or later, wants one of the capacity. */
function doubtMemberships(
  records: Records,
  editions: readonly EditionIndex[],
  today: CalendarDate,
  doubt: TellDoubt,
): void {
  const wanted = new Set(
    editions
      .filter(({ days }) => days.last >= toEpochDay(today))
      .flatMap((edition) => wantsAgreement(edition)),
  )
  for (const membership of records.memberships) {
    const { capacity, firstDay, lastDay } = membership
    if (capacity === 'not-stated') doubt(membership, { kind: 'capacity-not-stated' })
    if (!wanted.has(capacity) || firstDay === undefined || lastDay !== undefined) continue
    doubt(membership, { kind: 'agreement-open-ended', firstDay })
  }
}

function doubtCertificate(
  certificate: Certificate,
  holder: string | undefined,
  today: CalendarDate,
  doubt: TellDoubt,
): void {
  const { subject, delivery, seen, by, firstDay, lastDay } = certificate
  if (lastDay !== undefined && lastDay < today) return
  if (delivery === 'not-stated') doubt(certificate, { kind: 'delivery-not-stated', subject })
  if (!seen) doubt(certificate, { kind: 'certificate-not-seen', subject })
  else if (by === undefined || foldedName(by) === holder)
    doubt(certificate, { kind: 'seen-by-nobody-else', subject })
  if (firstDay !== undefined && lastDay !== undefined) return
  const missing = firstDay !== undefined ? 'last-day' : lastDay !== undefined ? 'first-day' : 'both'
  doubt(certificate, { kind: 'certificate-without-days', subject, missing })
}

function doubtSuspensions(records: Records, today: CalendarDate, doubt: TellDoubt): void {
  const lifted = new Set(records.lifts.map((lift) => lift.suspension))
  for (const suspension of records.suspensions) {
    const { id, form, kind, firstDay, lastDay } = suspension
    const isOver = lifted.has(id) || (lastDay !== undefined && lastDay < today)
    if (form === 'stand-down' && !isOver) doubt(suspension, { kind: 'stand-down-waits', firstDay })
    if (kind !== 'administrative' || lastDay !== undefined || lifted.has(id)) continue
    doubt(suspension, { kind: 'administrative-open-ended', firstDay })
  }
}

/** A suspension that was withdrawn as wrong stops nobody any more; who answers for it should be looked at. */
function doubtWithdrawn(program: FactsBySection, doubt: TellDoubt): void {
  const current = new Set(
    program.suspensions.filter((one) => one.supersededIn === undefined).map(({ id }) => id),
  )
  const last = new Map(program.suspensions.map((one) => [one.id, one]))
  for (const suspension of program.suspensions) {
    const { id, firstDay, supersededIn: entry } = suspension
    if (entry === undefined || current.has(id) || last.get(id) !== suspension) continue
    doubt(suspension, { kind: 'suspension-withdrawn', firstDay, entry })
  }
}

/** A record of which somebody says that it is wrong, until they are answered. */
function doubtDisputes(records: Records, doubt: TellDoubt): void {
  const sections: FactsBySection = records
  for (const { section, record, answerBy, answered } of records.disputes) {
    const name = SECTION_NAMES.find((known) => known === section)
    const facts: readonly Fact[] = name === undefined ? [] : sections[name]
    const fact = facts.find(({ id }) => id === record)
    if (answered === undefined && fact !== undefined) doubt(fact, { kind: 'said-to-be-wrong', answerBy })
  }
}

class RatingDoubts {
  private readonly places: PlaceIndex

  constructor(
    private readonly records: Records,
    private readonly editions: readonly EditionIndex[],
    private readonly doubt: TellDoubt,
  ) {
    this.places = new PlaceIndex(records.places)
  }

  look(rating: Rating): void {
    if (rating.observations === undefined) return
    const item = this.records.items.find(({ id }) => id === rating.item)
    if (item === undefined) return
    const day = toEpochDay(rating.day)
    const named = item.place === undefined ? undefined : this.places.bookOn(item.place, day)
    const book = named ?? this.records.book
    const edition = inForceOn(
      this.editions.filter((known) => known.edition.book === book),
      day,
    )?.edition
    if (edition === undefined) return
    const read = rateWorksheet(edition.rules, item.workKind, rating.observations)
    if (!read.ok) {
      this.doubt(rating, { kind: 'observations-not-readable', item: item.id, edition: edition.id })
    } else if (read.value.complexity !== rating.complexity) {
      const figures = { stated: rating.complexity, observed: read.value.complexity }
      this.doubt(rating, { kind: 'rating-against-observations', item: item.id, ...figures })
    }
  }
}
