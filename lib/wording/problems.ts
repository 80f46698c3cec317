import type { ProblemKind, ProgramProblem } from '../core/program/problems.ts'
import { dayText, momentText, spanText } from './days.ts'
import { editionFaultSentence } from './editions.ts'
import { joinedByAnd, joinedByOr } from './lists.ts'
import {
  hiddenCharacterText,
  jsonExpectedWords,
  jsonTypeWords,
  nearestText,
  referenceWords,
  textFormWords,
} from './problem-words.ts'

type ProblemOf<Kind extends ProblemKind> = Extract<ProgramProblem, { kind: Kind }>

/** What is wrong with a value of a file, as one or two plain sentences, without its path and value. */
export function problemSentence(problem: ProgramProblem): string {
  // The key picks the function for its own kind; TypeScript cannot follow that across the union.
  const sentence = SENTENCES[problem.kind] as (problem: ProgramProblem) => string
  return sentence(problem)
}

/** A whole line: the path, the value where there is one, and what is wrong: `people[3].name: "": The text is empty.` */
export function problemLine(problem: ProgramProblem): string {
  const parts = [problem.path, problem.value ?? '', problemSentence(problem)]
  return parts.filter((part) => part !== '').join(': ')
}

const SENTENCES: { [Kind in ProblemKind]: (problem: ProblemOf<Kind>) => string } = {
  'too-large': (problem) => `The file is too large. A file has at most ${grouped(problem.mostBytes)} bytes.`,
  'not-text': (problem) =>
    `The file is not text in UTF-8. The first byte that is none stands at line ${problem.line}, column ${problem.column}.`,
  'empty-text': () => 'The file is empty.',
  'not-json': (problem) =>
    `The file is not JSON. At line ${problem.line}, column ${problem.column} it wants ${jsonExpectedWords[problem.expected]}.`,
  'nested-too-deep': (problem) => `Lists and objects lie within each other at most ${problem.most} deep.`,
  'forbidden-key': (problem) => `The key “${problem.key}” is refused, because programs treat it specially.`,
  'duplicate-key': (problem) => `The key “${problem.key}” stands here twice.`,

  'too-many-values': (problem) =>
    `The file holds too many values. All its texts, numbers, lists and objects together may be at most ${grouped(problem.most)}.`,

  'format-unknown': (problem) => `The format is not known. It is written “${problem.expected}”.`,
  'unknown-key': (problem) => `The key “${problem.key}” is not known here.${nearestText(problem.nearest)}`,
  'missing-key': (problem) => `The key “${problem.key}” is missing.`,
  'wrong-type': (problem) =>
    `This is ${jsonTypeWords[problem.found]}, and it must be ${jsonTypeWords[problem.expected]}.`,
  'not-one-of': (problem) => `This must be ${joinedByOr(problem.allowed)}.${nearestText(problem.nearest)}`,
  'text-empty': () => 'The text is empty.',
  'text-too-long': (problem) =>
    `The text has ${grouped(problem.letters)} letters. It may have at most ${grouped(problem.most)}.`,
  'badly-written': (problem) => textFormWords[problem.form],
  'hidden-character': (problem) =>
    `Letter ${problem.at} is ${hiddenCharacterText(problem.code)}, which nobody sees. It must be taken out.`,
  'number-too-large': () => 'The number is too large to be read.',
  'number-outside': (problem) => `The number must be ${limitsText(problem)}.`,
  'too-few': (problem) => `The list must have at least ${grouped(problem.least)}.`,
  'too-many': (problem) =>
    `The list has ${grouped(problem.count)}. It may have at most ${grouped(problem.most)}.`,
  'not-a-day': () => 'A day is written YYYY-MM-DD.',
  'no-such-day': () => 'There is no such day.',
  'year-outside': (problem) => `A day lies in the years ${problem.first} to ${problem.last}.`,
  'not-an-instant': () => 'A moment is written in UTC, 2027-04-14T16:40:00Z, to the millisecond at most.',
  'not-a-sixteenth': () => 'Inches are multiples of 1/16 above 0, written 0.0625.',
  'time-zone-unknown': () => 'This is not the name of a time zone, like America/Denver.',
  'last-day-not-administrative': () =>
    'Only an administrative suspension carries a last day. This one ends by a decision to lift it.',
  'last-day-not-given': () =>
    'Only a permission given carries a last day. A refusal or withdrawal holds until a permission is given anew.',
  'otherwise-refused': (problem) => `This is refused: ${problem.says}.`,

  'span-backwards': (problem) =>
    `The last day (${problem.lastField}, ${dayText(problem.lastDay)}) lies before the first (${problem.firstField}, ${dayText(problem.firstDay)}).`,
  'range-backwards': (problem) =>
    `The greatest (${problem.mostField}, ${problem.most}) is less than the least (${problem.leastField}, ${problem.least}).`,
  'repeated-in-list': (problem) =>
    `The ${problem.what} “${problem.id}” stands in this list already, at ${problem.other}.`,
  'edition-fault': (problem) => editionFaultSentence(problem.fault),
  'of-age-contradicts-birth': (problem) =>
    `Born on ${dayText(problem.birthDate)}, somebody is of age from ${dayText(problem.reached)}, and ofAgeFrom says ${dayText(problem.ofAgeFrom)}.`,
  'born-after-last-entry': (problem) =>
    `The birth date ${dayText(problem.birthDate)} lies after the last entry of ${dayText(problem.lastEntry)}.`,
  'carried-in-from-here': (problem) =>
    `This card is said to be carried in from this program itself, effective ${dayText(problem.effectiveDay)}. From ${dayText(problem.firstDayOfDeciding)} on its own cards come from decisions only.`,
  'card-without-decision': (problem) =>
    `The card takes effect on ${dayText(problem.effectiveDay)}. From ${dayText(problem.firstDayOfDeciding)} this program decides, and a card needs its decision or says from where it was carried in.`,

  'entry-number': (problem) =>
    `Entries are numbered in order. This must be ${problem.expected}, not ${problem.found}.`,
  'entry-earlier': (problem) =>
    `The entry was stated on ${momentText(problem.statedAt)}, before the one above it of ${momentText(problem.previous)}.`,
  'no-such-entry': (problem) =>
    `The key ${problem.field} names entry ${problem.n}, and the file has ${entriesText(problem.entries)}.`,
  'superseded-too-early': (problem) =>
    `Recorded in entry ${problem.recordedIn}, this cannot be superseded in entry ${problem.supersededIn}, which is not later.`,
  twin: (problem) =>
    `The id “${problem.id}” is recorded twice in entry ${problem.recordedIn}, here and at ${problem.other}.`,
  'two-at-once': (problem) =>
    `From entry ${problem.from} on, two versions of “${problem.id}” count at once, this one and ${problem.other}.`,
  'two-heirs': (problem) =>
    `Two versions correct “${problem.id}” of entry ${problem.supersedes}, this one and ${problem.other}. One may.`,
  'supersession-circle': (problem) =>
    `The versions of “${problem.id}” of entries ${joinedByAnd(problem.entries.map(String))} correct each other in a circle.`,
  'supersedes-nothing': (problem) =>
    `This corrects “${problem.id}” of entry ${problem.supersedes}, and no such version is in the file. ${versionsText(problem.versions)}`,
  'heir-in-another-entry': (problem) =>
    `This corrects the version at ${problem.other} in entry ${problem.recordedIn}, so that one must be superseded in entry ${problem.recordedIn}; it ${problem.supersededIn === undefined ? 'is not superseded' : `says ${problem.supersededIn}`}.`,
  'anchor-changed': (problem) =>
    `The ${problem.field} of “${problem.id}” was “${problem.before}” at ${problem.other} and is “${problem.now}” here. A correction keeps it.`,
  'number-of-two-people': (problem) =>
    `The card number ${problem.number} belongs to ${problem.person} here and to ${problem.otherPerson} at ${problem.other}. One number belongs to one person.`,
  'two-crews': (problem) =>
    `“${problem.person}” is in another crew on some of these days: from ${dayText(problem.firstDay)} through ${dayText(problem.lastDay)}, at ${problem.other}. On one day nobody is in two crews.`,
  'joined-to-itself': () => 'This joins a record with itself. Choose two records.',
  'joined-twice': (problem) =>
    `The record of “${problem.person}” is joined to another already, at ${problem.other}. Part those first.`,
  'joined-through': (problem) =>
    `The record of “${problem.stays}” is itself joined to another, at ${problem.other}. Join to that other one.`,
  'joined-of-two-births': (problem) =>
    `“${problem.person}” and “${problem.stays}” have different birth dates on record. If they are one person, correct the wrong one first.`,
  'line-of-two-cards': (problem) =>
    `Line ${problem.line} of the card number ${problem.number} is also the card “${problem.otherCard}” at ${problem.other}.`,
  'id-in-two-sections': (problem) =>
    `The id “${problem.id}” stands also at ${problem.other}. Items and expected work share their ids.`,

  'refers-to-nothing': (problem) =>
    `No ${referenceWords[problem.to]} “${problem.id}” is in the file.${nearestText(problem.nearest)}`,
  'refers-to-later': (problem) =>
    `Recorded in entry ${problem.recordedIn}, this names the ${referenceWords[problem.to]} “${problem.id}”, which is known only from entry ${problem.knownFrom} on.`,
  'not-a-unit': (problem) =>
    `The place “${problem.id}” is of kind ${problem.found}, and this must be a unit.`,
  'restriction-not-words': (problem) =>
    `The restriction “${problem.restriction}” is not in words, so there is nothing to resolve.`,
  'extension-of-another-book': (problem) =>
    `The order extends cards of the book “${problem.book}”, and the card “${problem.card}” is of “${problem.cardBook}”.`,
  'lift-before-suspension': (problem) =>
    `The lifting on ${dayText(problem.day)} is not after the suspension’s first day, ${dayText(problem.firstDay)}, which it always covers.`,
  'places-circle': (problem) =>
    `The places ${joinedByAnd(problem.places)} lie within each other in a circle, as known at entry ${problem.knownAt}.`,
  'places-too-deep': (problem) =>
    `Places lie within each other at most ${problem.most} deep; this one lies deeper, as known at entry ${problem.knownAt}.`,
  'place-misplaced': (problem) =>
    `A place of kind ${problem.place} may not lie under ${problem.under === 'nothing' ? 'nothing' : `one of kind ${problem.under}`}. The order is program, unit, place.`,
  'place-withdrawn-under': (problem) =>
    `This place lies in “${problem.place}”, which is not known any more from entry ${problem.knownAt} on. What is stopped or in force there would be lost.`,
  'place-books-overlap': (problem) =>
    `Two books are in force here at once, ${joinedByAnd(problem.books)}, ${spanText({ first: problem.first, last: problem.last })}.`,
  'no-root-place': (problem) => `As known at entry ${problem.knownAt}, no place is of kind program.`,
  'two-root-places': (problem) =>
    `As known at entry ${problem.knownAt}, several places are of kind program: ${joinedByAnd(problem.places)}. One may be.`,
  'book-without-edition': (problem) => `The book “${problem.book}” has no edition.`,
  'editions-gap': (problem) =>
    `No edition of the book “${problem.book}” covers ${spanText({ first: problem.first, last: problem.last })}${knownText(problem.knownAt)}.`,
  'editions-overlap': (problem) =>
    `The editions ${joinedByAnd(problem.editions)} of the book “${problem.book}” are both in force ${
      problem.last === undefined
        ? `from ${dayText(problem.first)} on`
        : `on ${spanText({ first: problem.first, last: problem.last })}`
    }${knownText(problem.knownAt)}.`,

  'more-problems': (problem) =>
    problem.count === 1
      ? 'One more problem is not listed.'
      : `${grouped(problem.count)} more problems are not listed.`,
}

function knownText(knownAt: number | undefined): string {
  return knownAt === undefined ? '' : `, as known at entry ${knownAt}`
}

function limitsText(limits: { least?: number; most?: number; exclusive: boolean }): string {
  const least =
    limits.least === undefined ? [] : [`${limits.exclusive ? 'more than' : 'at least'} ${limits.least}`]
  const most =
    limits.most === undefined ? [] : [`${limits.exclusive ? 'less than' : 'at most'} ${limits.most}`]
  return joinedByAnd([...least, ...most])
}

function versionsText(versions: readonly number[]): string {
  if (versions.length === 0) return 'No version of it is known.'
  const numbers = joinedByAnd(versions.map(String))
  return versions.length === 1
    ? `Its one version is of entry ${numbers}.`
    : `Its versions are of entries ${numbers}.`
}

function entriesText(entries: number): string {
  if (entries === 0) return 'no entries'
  return entries === 1 ? 'one entry' : `entries 1 to ${entries}`
}

function grouped(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ',')
}
