import type { CalendarDate } from '../core/calendar/dates.ts'
import type { Instant } from '../core/calendar/instants.ts'
import { dayText, momentText } from './days.ts'
import { joinedByAnd } from './lists.ts'

/** What a program file says of the program itself. */
export type HeadPart = 'name' | 'timeZone' | 'book' | 'firstDayOfDeciding' | 'invented'

/** Why a use case was refused though everything that was typed is well formed. Data, never sentences. */
export type Refusal =
  | { kind: 'name-or-password-wrong' }
  | { kind: 'too-many-tries'; minutes: number }
  | { kind: 'link-not-good' }
  | { kind: 'already-founded' }
  | { kind: 'not-founded' }
  | { kind: 'sign-in-name-taken'; name: string }
  | { kind: 'other-program'; here: string; file: string }
  | { kind: 'other-head'; parts: readonly HeadPart[] }
  | { kind: 'no-entries' }
  | { kind: 'stated-in-the-future'; n: number; statedAt: Instant }
  | { kind: 'not-a-demo' }
  | { kind: 'book-unknown'; book: string }
  | { kind: 'book-adopted-already'; book: string }
  | { kind: 'no-manager'; name: string }
  | { kind: 'old-password-wrong' }
  | { kind: 'last-manager' }
  | { kind: 'account-ended' }
  | { kind: 'account-open-already' }
  | { kind: 'person-has-account'; signInName: string }
  | { kind: 'role-given-already' }
  | { kind: 'role-ended-already' }
  | { kind: 'rule-not-from-memory'; rule: string }
  | { kind: 'rule-confirmed-already'; rule: string; by: string; day: CalendarDate }
  | { kind: 'no-common-day'; first?: CalendarDate; last?: CalendarDate }
  | { kind: 'not-yet-known'; latest: number }
  | { kind: 'nothing-to-correct' }
  | { kind: 'disputed-already' }
  | { kind: 'not-by-yourself'; because: string }
  | { kind: 'named-by-others'; count: number }
  | { kind: 'not-to-erase'; against: readonly string[] }
  | { kind: 'not-on-record-then'; first: number }
  | { kind: 'sheet-would-do-otherwise' }
  | { kind: 'sheet-brought-in-already'; entry: number }
  | { kind: 'nothing-to-bring-in' }
  | { kind: 'no-sheet-entry'; entry: number }
  | { kind: 'nobody-on-record' }
  | { kind: 'rested-on'; records: readonly string[]; more: number }
  | { kind: 'command-used-otherwise' }
  | { kind: 'clock-behind'; now: Instant; last: Instant }
  | { kind: 'constraint'; rule: string; name: string }

export type RefusalKind = Refusal['kind']

/** A refusal as one or two plain sentences: what is so, and what to do about it. */
export function refusalSentence(refusal: Refusal): string {
  // The key picks the function for its own kind; TypeScript cannot follow that across the union.
  const sentence = SENTENCES[refusal.kind] as (refusal: Refusal) => string
  return sentence(refusal)
}

const HEAD_WORDS: Record<HeadPart, string> = {
  name: 'what the program is called',
  timeZone: 'in which time zone its days begin',
  book: 'which rule book governs it',
  firstDayOfDeciding: 'since which day it decides on cards itself',
  invented: 'whether it is invented',
}

const SENTENCES: { [Kind in RefusalKind]: (refusal: Extract<Refusal, { kind: Kind }>) => string } = {
  'name-or-password-wrong': () => 'The name or the password is not right.',
  'too-many-tries': ({ minutes }) =>
    `There were too many tries. Try again in ${minutes} ${minutes === 1 ? 'minute' : 'minutes'}.`,
  'link-not-good': () =>
    'This link is not good any more: it works once and for a limited time. Ask for a new one.',
  'already-founded': () => 'This database has a program already. Sign in instead.',
  'not-founded': () => 'This database has no program yet. Open the link that was printed at the start.',
  'sign-in-name-taken': ({ name }) => `The sign-in name ${name} is taken. Choose another.`,
  'other-program': ({ here, file }) =>
    `This database holds the program ${here}, and the file is of the program ${file}. Nothing was brought in.`,
  'other-head': ({ parts }) =>
    `The file says otherwise than this database ${joinedByAnd(parts.map((part) => HEAD_WORDS[part]))}. A file that is brought into a program with entries changes nothing of the program itself, so nothing was brought in. Write in the file what holds here.`,
  'no-entries': () => 'The file has no entries, so nothing is on record in it.',
  'stated-in-the-future': ({ n, statedAt }) =>
    `Entry ${n} of the file is stated as of ${momentText(statedAt)}, which is still to come. Nothing was brought in.`,
  'not-a-demo': () => 'Demo accounts exist in a demo database only, and this is none.',
  'book-unknown': ({ book }) => `No rule book of the id ${book} ships with this version.`,
  'book-adopted-already': ({ book }) => `The ${book} is adopted here already. Nothing was changed.`,
  'no-manager': ({ name }) => `Nobody who signs in as ${name} is a program manager here.`,
  'old-password-wrong': () => 'This is not the password you have now. Nothing was changed.',
  'last-manager': () =>
    'This is the last program manager without a last day who can sign in. Make somebody else a program manager first, and wait until they have set their password.',
  'account-ended': () => 'This account is ended. Open it again first.',
  'account-open-already': () => 'This account is open already. Nothing was changed.',
  'person-has-account': ({ signInName }) =>
    `The person behind this account has another one by now, ${signInName}. End that one first.`,
  'role-given-already': () =>
    'The account has this role for the same part of the program on some of these days already. Choose other days, or end that one first.',
  'role-ended-already': () => 'This role is ended already. Nothing was changed.',
  'rule-not-from-memory': ({ rule }) =>
    `The rule ${rule} is not marked “from memory”, so there is nothing to confirm.`,
  'rule-confirmed-already': ({ rule, by, day }) =>
    `The rule ${rule} is confirmed already, by ${by} on ${dayText(day)}. Nothing was changed.`,
  'no-common-day': ({ first, last }) =>
    `None of the days asked is a day of this piece of work${
      first === undefined || last === undefined ? '' : `: it is planned ${dayText(first)} to ${dayText(last)}`
    }.`,
  'not-yet-known': ({ latest }) => `The journal has entries 1 to ${latest}.`,
  'nothing-to-correct': () => 'The record says this already. Nothing was changed.',
  'disputed-already': () =>
    'Somebody has said already that this is wrong, and is not answered yet. Nothing was changed.',
  'not-by-yourself': ({ because }) => `Somebody else must answer this: ${because}. Nothing was changed.`,
  'not-to-erase': ({ against }) => `Nothing was erased. ${against.join(' ')}`,
  'named-by-others': ({ count }) =>
    `${count === 1 ? 'Another record names' : `${count} other records name`} this one and would be about nothing. Correct or withdraw ${count === 1 ? 'it' : 'them'} first.`,
  'not-on-record-then': ({ first }) => `This person was not on record then, but since entry ${first}.`,
  'sheet-would-do-otherwise': () =>
    'Since you tried this sheet, something else was recorded, and it would do something else now. Nothing was brought in: look at it once more.',
  'sheet-brought-in-already': ({ entry }) =>
    `This sheet was brought in already, by entry ${entry}. Nothing was changed.`,
  'nothing-to-bring-in': () =>
    'Every row of this sheet is on record as it stands, or cannot be brought in. Nothing was changed.',
  'no-sheet-entry': ({ entry }) =>
    `Entry ${entry} brought in no sheet, or it was undone already. Nothing was changed.`,
  'nobody-on-record': () =>
    'No person on record stands behind this account, so there is no record of yours. Ask your program manager to name you there.',
  'rested-on': ({ records, more }) =>
    `This sheet is not undone, because later records rest on it: ${joinedByAnd([...records, ...(more === 0 ? [] : [`${more} more`])])}. Correct or withdraw them first.`,
  'command-used-otherwise': () =>
    'This command was sent before with other contents. Nothing was changed; open the page again and repeat what you want.',
  'clock-behind': ({ now, last }) =>
    `The clock of this server says ${momentText(now)}, and the last entry is of ${momentText(last)}. Nothing is recorded while the clock lies before it. Whoever runs the server must set the clock right; if the entry was made under a wrong clock, restore the backup from before it.`,
  constraint: () =>
    'Something else was recorded in the meantime, and both cannot stand. Nothing was changed; open the page again.',
}
