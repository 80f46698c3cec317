import type { Sections } from '../core/authority/records.ts'
import type { Card, Restriction, Suspension } from '../core/cards/cards.schema.ts'
import type { CalendarDate } from '../core/calendar/dates.ts'
import { dayText } from './days.ts'
import { joinedByAnd } from './lists.ts'
import type { Names } from './names.ts'
import {
  capacityWords,
  complexityText,
  complexityWords,
  deliveryWords,
  inchesText,
  sawKindWords,
  workKindWords,
} from './work-words.ts'

type SectionName = keyof Sections

/** What a record on file says, as one phrase: `card K-0431, level B, for bucking with a crosscut saw, …`. */
export function recordPhrase<Name extends SectionName>(
  section: Name,
  fact: Sections[Name],
  names: Names,
): string {
  const phrase: (fact: Sections[Name], names: Names) => string = PHRASES[section]
  return phrase(fact, names)
}

const PHRASES: { [Name in SectionName]: (fact: Sections[Name], names: Names) => string } = {
  books: (book) => `the book “${book.name}”`,
  editions: (edition) => `the edition “${edition.name}”, ${fromThrough(edition.firstDay, edition.lastDay)}`,
  confirmations: (confirmation) =>
    `rule ${confirmation.rule} confirmed by ${confirmation.by} on ${dayText(confirmation.day)}, who read ${confirmation.read}`,
  organisations: (organisation) => `the organisation ${organisation.name}`,
  places: (place) => `the place ${place.name}`,
  people: (person) => {
    if (person.birthDate !== undefined) return `${person.name}, birth date on record`
    if (person.ofAgeFrom === undefined) return `${person.name}, age not on record`
    return `${person.name}, of age from ${dayText(person.ofAgeFrom)}${attested(person.attestedBy)}`
  },
  memberships: (membership) =>
    `${capacityWords[membership.capacity]}, ${agreementDays(membership.firstDay, membership.lastDay)}${attested(membership.attestedBy)}`,
  permissions: (permission) =>
    `a guardian’s permission ${permission.says}, ${fromThrough(permission.firstDay, permission.lastDay)}${attested(permission.attestedBy)}`,
  certificates: (certificate, names) => {
    const issuer = certificate.issuedBy === undefined ? '' : ` of ${certificate.issuedBy}`
    const by = certificate.by === undefined ? '' : ` by ${certificate.by}`
    const seen = certificate.seen ? `seen${by}` : `self-stated${by}, not seen`
    return `${names.subject(certificate.subject)}${issuer}, ${deliveryWords[certificate.delivery]}, ${fromThrough(certificate.firstDay, certificate.lastDay)}, ${seen}`
  },
  designations: (designation, names) =>
    `designated ${designation.role} at ${designation.level} of “${names.book(designation.book)}” for ${workKinds(designation.workKinds)} by ${designation.by}, ${fromThrough(designation.firstDay, designation.lastDay)}`,
  assignments: (assignment, names) =>
    `a training assignment to ${joinedByAnd(assignment.items.map(names.item))} under ${joinedByAnd(assignment.trainers.map(names.person))}, ${fromThrough(assignment.firstDay, assignment.lastDay)}`,
  cards: cardPhrase,
  endings: (ending, names) =>
    `${names.card(ending.card)} ${ending.kind} from ${dayText(ending.firstDay)} by ${ending.by}: ${ending.decision}`,
  resolutions: (resolution, names) =>
    `words on ${names.card(resolution.card)} resolved by ${resolution.by} (${resolution.into.length === 0 ? 'they restrict nothing here' : joinedByAnd(resolution.into.map((restriction) => restrictionPhrase(restriction, names)))}): ${resolution.reason}`,
  extensions: (extension) =>
    `${extension.order}, effective ${dayText(extension.effectiveDay)}, which lets cards run to ${dayText(extension.runsTo)} (${extension.source})`,
  suspensions: (suspension, names) =>
    `a ${suspension.form} of ${subjectPhrase(suspension, names)} by ${suspension.by}, ${fromThrough(suspension.firstDay, suspension.lastDay)}: ${suspension.reason}`,
  lifts: (lift) => `a lifting from ${dayText(lift.day)} on by ${lift.by}: ${lift.decision}`,
  items: (item) => `${item.name}, ${inchesText(item.diameter)}, for ${workKindWords[item.workKind]}`,
  expectedWork: (work) =>
    `${work.name}, at most ${inchesText(work.diameter)} and ${complexityWords[work.complexity]}, for ${workKindWords[work.workKind]}`,
  ratings: (rating, names) =>
    `${rating.complexity === 'not-rated' ? 'left unrated' : `rated ${complexityText(rating.complexity)}`} by ${names.person(rating.rater)} on ${dayText(rating.day)}, ${HOW[rating.how]}`,
  raises: (raise, names) =>
    `raised to ${complexityWords[raise.complexity]} by ${names.person(raise.by)} on ${dayText(raise.day)}: ${raise.reason}`,
  hitches: (hitch, names) =>
    `hitch ${hitch.number}, ${hitch.name}, at ${names.place(hitch.place)}, ${fromThrough(hitch.firstDay, hitch.lastDay)}${hitch.lead === undefined ? '' : `, led by ${names.person(hitch.lead)}`}`,
  placements: (placement, names) =>
    `${names.person(placement.person)} in the crew of ${names.hitch(placement.hitch)}, ${fromThrough(placement.firstDay, placement.lastDay)}`,
  disputes: (dispute, names) =>
    `${names.person(dispute.person)} said on ${dayText(dispute.day)} that a record of theirs is wrong, ${dispute.answered === undefined ? `to be answered by ${dayText(dispute.answerBy)}` : `answered on ${dayText(dispute.answered.day)} by ${dispute.answered.by}`}: ${dispute.says}`,
  joins: (join, names) =>
    `two records of one person, ${names.person(join.person)}: what is recorded under “${join.person}” counts for “${join.stays}”, because ${join.because}`,
  cautions: (caution) => `the caution “${caution.name}”, version ${caution.version}`,
}

const HOW = { 'on-site': 'on site', photo: 'from a photo', told: 'from what was told' } as const

function cardPhrase(card: Card, names: Names): string {
  const kinds = card.workKinds === 'not-stated' ? 'work kinds not stated' : workKinds(card.workKinds)
  const saws = joinedByAnd(card.sawKinds.map((saw) => sawKindWords[saw]))
  const restrictions =
    card.restrictions.length === 0
      ? 'no restrictions'
      : joinedByAnd(card.restrictions.map((restriction) => restrictionPhrase(restriction, names)))
  const from =
    card.carriedIn === undefined
      ? card.decision === undefined
        ? ''
        : `, by ${card.decision}`
      : `, carried in from ${card.carriedIn.issuer}`
  return `${names.card(card.id)} of “${names.book(card.book)}”, level ${card.level}, ${kinds}, with ${saws}, ${fromThrough(card.effectiveDay, card.lastDay)}, ${restrictions}${from}`
}

function restrictionPhrase(restriction: Restriction, names: Names): string {
  const scope = restriction.workKinds === undefined ? '' : ` (for ${workKinds(restriction.workKinds)})`
  switch (restriction.kind) {
    case 'greatest-diameter':
      return `restricted to ${inchesText(restriction.inches)}${scope}`
    case 'places':
      return `restricted to ${listOrNothing(restriction.places.map(names.place))}${scope}`
    case 'species':
      return `restricted to ${listOrNothing(restriction.species)}${scope}`
    case 'greatest-complexity':
      return `restricted to at most ${complexityWords[restriction.complexity]} work${scope}`
    case 'double-bucking-only':
      return `double bucking only${scope}`
    case 'supervisor-only':
      return `only with a supervisor${scope}`
    case 'no-felling':
      return `no felling${scope}`
    case 'words':
      return `“${restriction.text}”${scope}`
  }
}

function subjectPhrase({ subject }: Suspension, names: Names): string {
  switch (subject.kind) {
    case 'person':
      return names.person(subject.person)
    case 'organisation':
      return `the organisation ${names.organisation(subject.organisation)}`
    case 'unit':
      return `the unit ${names.place(subject.unit)}`
    case 'place':
      return `work at ${names.place(subject.place)}`
    case 'work-kind':
      return `all ${workKindWords[subject.workKind]}`
    case 'saw-kind':
      return `all work with ${sawKindWords[subject.sawKind]}`
    case 'everybody':
      return 'everybody'
    case 'card':
      return `card ${subject.number}`
  }
}

function fromThrough(first: CalendarDate | undefined, last: CalendarDate | undefined): string {
  const from = first === undefined ? 'first day not on record' : `from ${dayText(first)}`
  return last === undefined ? `${from}, no last day` : `${from} through ${dayText(last)}`
}

function agreementDays(first: CalendarDate | undefined, last: CalendarDate | undefined): string {
  return first === undefined && last === undefined ? 'no days stated' : fromThrough(first, last)
}

function attested(by: string | undefined): string {
  return by === undefined ? '' : `, attested by ${by}`
}

function workKinds(kinds: readonly (keyof typeof workKindWords)[]): string {
  return joinedByAnd(kinds.map((kind) => workKindWords[kind]))
}

function listOrNothing(parts: readonly string[]): string {
  return parts.length === 0 ? 'nothing' : joinedByAnd(parts)
}
