import type { Doubt, DoubtKind, ShippedPart } from '../core/program/problems.ts'
import { dayText, daysText } from './days.ts'
import { capitalised, joinedByAnd } from './lists.ts'
import type { Names } from './names.ts'
import { complexityText } from './work-words.ts'

type DoubtOf<Kind extends DoubtKind> = Extract<Doubt, { kind: Kind }>

/** Something that is no error and that somebody should look at: one plain sentence. */
export function doubtSentence(doubt: Doubt, names: Names): string {
  // The key picks the function for its own kind; TypeScript cannot follow that across the union.
  const sentence = SENTENCES[doubt.kind] as (doubt: Doubt, names: Names) => string
  return sentence(doubt, names)
}

/** A whole line: where it is, whom it is about, and what is doubtful. */
export function doubtLine(doubt: Doubt, names: Names): string {
  const whom = doubt.person === undefined ? [] : [names.person(doubt.person)]
  return [doubt.path, ...whom, doubtSentence(doubt, names)].join(': ')
}

const SENTENCES: { [Kind in DoubtKind]: (doubt: DoubtOf<Kind>, names: Names) => string } = {
  'longer-than-term': (doubt, names) =>
    `The last day of ${names.card(doubt.id)} is ${dayText(doubt.lastDay)}, and the term of its book ends on ${dayText(doubt.termLastDay)}.`,
  'not-reconciled': (doubt, names) => {
    const card = capitalised(names.card(doubt.id))
    const wanted = `its book wants that every ${daysText(doubt.within)}`
    if (doubt.lastReconciled === undefined)
      return `${card} was carried in and never reconciled with its issuer; ${wanted}.`
    const since = doubt.days === undefined ? '' : `, ${daysText(doubt.days)} before the day of this look`
    return `${card} was last reconciled with its issuer on ${dayText(doubt.lastReconciled)}${since}; ${wanted}.`
  },
  'reconciled-after-last-entry': (doubt, names) =>
    `${capitalised(names.card(doubt.id))} is said to be reconciled with its issuer on ${dayText(doubt.lastReconciled)}, after the last entry of ${dayText(doubt.lastEntry)}.`,
  'reconciled-before-card': (doubt, names) =>
    `${capitalised(names.card(doubt.id))} is said to be reconciled with its issuer on ${dayText(doubt.lastReconciled)}, before its effective day ${dayText(doubt.effectiveDay)}.`,
  'card-without-last-day': (doubt, names) => `The last day of ${names.card(doubt.id)} is not on record.`,
  'work-kinds-not-stated': (doubt, names) => `The work kinds of ${names.card(doubt.id)} are not stated.`,
  'words-unresolved': (doubt) =>
    `The restriction “${doubt.restriction}” says “${doubt.text}”, and no certifying official has said on record what it means.`,
  'delivery-not-stated': (doubt, names) =>
    `How the class for ${names.subject(doubt.subject)} was given is not stated.`,
  'certificate-not-seen': (doubt, names) =>
    `The ${names.subject(doubt.subject)} certificate is self-stated, and nobody else has seen it.`,
  'certificate-without-days': (doubt, names) =>
    `${WITHOUT_DAYS[doubt.missing]} of the ${names.subject(doubt.subject)} certificate ${doubt.missing === 'both' ? 'are' : 'is'} not on record.`,
  'rating-against-observations': (doubt, names) =>
    `The rating of ${names.item(doubt.item)} says ${complexityText(doubt.stated)}, and its observations give ${complexityText(doubt.observed)}.`,
  'observations-not-readable': (doubt, names) =>
    `The worksheet of “${names.edition(doubt.edition)}” has no such factor or option as the rating of ${names.item(doubt.item)} states.`,
  'same-name': (doubt) =>
    `Several people are called ${doubt.name}: ${joinedByAnd([...doubt.people, ...moreOf(doubt.more)])}.`,
  'numbers-alike': (doubt) =>
    `The card number ${doubt.number} reads like ${joinedByAnd([...doubt.others, ...moreOf(doubt.more)])}. What is decided on one number leaves the other alone.`,
  'number-mixes-scripts': (doubt) =>
    `The card number ${doubt.number} has letters of several scripts that look alike: ${joinedByAnd(doubt.scripts)}. It may read like another number.`,
  'age-not-on-record': () => 'Neither a birth date nor the day from which they are of age is on record.',
  'capacity-not-stated': () => 'In which capacity they work is not stated.',
  'agreement-open-ended': (doubt) =>
    `The agreement began on ${dayText(doubt.firstDay)}, and its last day is not on record.`,
  'suspension-withdrawn': (doubt) =>
    `The suspension from ${dayText(doubt.firstDay)} was withdrawn as wrong in entry ${doubt.entry}, not lifted by a decision.`,
  'seen-by-nobody-else': (doubt, names) =>
    `The ${names.subject(doubt.subject)} certificate counts as seen, and nobody else is named who saw it.`,
  'age-not-attested': () => 'The day they are of age from is on record, and nobody is named who attested it.',
  'administrative-open-ended': (doubt) =>
    `An administrative suspension runs from ${dayText(doubt.firstDay)} without a last day and has not been lifted.`,
  'said-to-be-wrong': (doubt) =>
    `Whose record this is says that it is wrong, and is to be answered by ${dayText(doubt.answerBy)}.`,
  'stand-down-waits': (doubt) =>
    `The stand-down from ${dayText(doubt.firstDay)} waits for a certifying official to confirm or lift it.`,
  'lifted-before-recorded': (doubt) =>
    `The suspension from ${dayText(doubt.firstDay)} was recorded again in entry ${doubt.entry}, and what lifts it, “${doubt.lift}”, is of entry ${doubt.liftEntry}, before it.`,
  'resolved-by-holder': (doubt, names) =>
    `What the restriction “${doubt.restriction}” of ${names.card(doubt.card)} means was said by ${doubt.by}, who holds the card.`,
  'resolved-into-nothing': (doubt, names) =>
    `The words of the restriction “${doubt.restriction}” of ${names.card(doubt.card)} were found to restrict nothing.`,
  'differs-from-shipped': (doubt, names) =>
    `This ${SHIPPED[doubt.what]} is not as it ships with “${names.book(doubt.book)}”. It differs in ${joinedByAnd([...doubt.parts, ...moreOf(doubt.more)])}.`,
  'edition-not-shipped': (doubt, names) =>
    `The book “${names.book(doubt.book)}” ships, and this edition is not among those that come with it.`,
  'shipped-part-missing': (doubt, names) =>
    `The book “${names.book(doubt.book)}” ships with the ${SHIPPED[doubt.what]} ${joinedByAnd(doubt.parts)}, which the program does not hold.`,
}

const SHIPPED: { [Part in ShippedPart]: string } = {
  book: 'book',
  edition: 'edition',
  order: 'order',
  caution: 'caution',
}

function moreOf(more: number | undefined): string[] {
  return more === undefined ? [] : [`${more} more`]
}

const WITHOUT_DAYS: { [Missing in DoubtOf<'certificate-without-days'>['missing']]: string } = {
  'first-day': 'The first day',
  'last-day': 'The last day',
  both: 'Both days',
}
