import type { CalendarDate } from '../core/calendar/dates.ts'
import { dayText } from './days.ts'
import { sheetKindWords } from './sheets.ts'

/** What an entry of the journal says was done. `stated` is an entry that a program file brought, in its own words. */
export const EVENT_KINDS = [
  'stated',
  'program-founded',
  'manager-opened',
  'program-file-brought-in',
  'demo-accounts-opened',
  'manager-reset',
  'rule-confirmed',
  'answer-kept',
  'person-entered',
  'record-entered',
  'record-corrected',
  'record-withdrawn',
  'stood-down',
  'notice-reached',
  'stand-down-confirmed',
  'record-disputed',
  'dispute-answered',
  'first-day-of-deciding-set',
  'person-erased',
  'sheet-brought-in',
  'sheet-undone',
  'book-adopted',
  'account-given',
  'account-link-made',
  'password-set',
  'role-given',
  'role-shortened',
  'role-ended',
  'account-ended',
  'account-opened-again',
] as const

export type EventKind = (typeof EVENT_KINDS)[number]

/** What goes into the access log: looks, and acts that change no record. */
export const LOGGED_KINDS = [
  'signed-in',
  'signed-out',
  'signed-out-everywhere',
  'session-ended',
  'password-given-again',
  'password-changed',
  'founding-link-made',
  'sheet-put-in',
  'sheet-settled',
  'sheet-thrown-away',
  'looked',
  'refused',
] as const

export type LoggedKind = (typeof LOGGED_KINDS)[number]

/** What an entry says beside its event: ids and figures, as far as it says any. */
export type EventSaid = {
  accounts?: number
  facts?: number
  edition?: string
  rule?: string
  book?: string
  /** What somebody signs in as. */
  account?: string
  /** A role in words. */
  role?: string
  from?: 'command-line'
  answer?: { id: string }
  section?: string
  record?: string
  person?: string
  unit?: string
  day?: CalendarDate
  /** Of a sheet: how many records it added and changed, and the entry that did. */
  added?: number
  changed?: number
  entry?: number
}

/** The sentence of an event, after the name of who did it: “… founded the program”. */
export function eventSentence(kind: EventKind, said: EventSaid = {}): string {
  return EVENTS[kind](said)
}

/** The sentence of a line of the access log, after the name of the account. */
export function loggedSentence(kind: LoggedKind): string {
  return LOGGED[kind]
}

const EVENTS: Record<EventKind, (said: EventSaid) => string> = {
  stated: () => 'entered what a program file states',
  'program-founded': () => 'founded the program and adopted its rule book at founding, as one person alone',
  'manager-opened': () => 'opened the account of the first program manager',
  'program-file-brought-in': ({ facts, from }) =>
    `brought in ${facts === undefined ? 'the current facts' : factsText(facts)} of a program file${
      from === undefined ? '' : ', from the command line'
    }`,
  'demo-accounts-opened': ({ accounts }) => `opened ${accounts ?? 'the'} accounts of the demonstration`,
  'manager-reset': ({ account }) =>
    `gave the program manager ${account === undefined ? '' : `of the account ${account} `}a new password, from the command line`,
  'rule-confirmed': ({ rule, edition }) =>
    `read the source of ${rule === undefined ? 'a rule from memory' : `the rule ${rule}`}${
      edition === undefined ? '' : ` of the edition ${edition}`
    } and confirmed it`,
  'answer-kept': ({ answer }) =>
    `kept ${answer === undefined ? 'an answer' : `the answer ${answer.id}`}, which is relied on`,
  'person-entered': ({ person }) =>
    `entered a person${person === undefined ? '' : `, ${person}`}, with a membership`,
  'record-entered': (said) => `entered ${recordText(said)}`,
  'record-corrected': (said) => `corrected ${recordText(said)}`,
  'record-withdrawn': (said) => `withdrew ${recordText(said)}, which never should have stood`,
  'stood-down': ({ record, person, unit }) =>
    `stood ${person ?? unit ?? 'somebody'} down at once${record === undefined ? '' : `, by ${record}`}`,
  'notice-reached': ({ record, person }) =>
    `recorded that ${record ?? 'a stand-down'} reached ${person ?? 'somebody'}`,
  'stand-down-confirmed': ({ record }) =>
    `confirmed ${record ?? 'a stand-down'}; it is a suspension from now on`,
  'record-disputed': (said) => `said that ${recordText(said)} is wrong`,
  'dispute-answered': (said) => `answered who says that ${recordText(said)} is wrong`,
  'first-day-of-deciding-set': ({ day }) =>
    `set the first day of deciding here${day === undefined ? '' : `, ${dayText(day)}`}`,
  'person-erased': (said) => `erased the name and age of ${recordText(said)}, in every version`,
  'sheet-brought-in': ({ section, added = 0, changed = 0 }) =>
    `brought in a sheet${section === undefined ? '' : ` of ${sheetWords(section)}`}: ${added} added, ${changed} changed`,
  'sheet-undone': ({ entry }) =>
    `undid ${entry === undefined ? 'a sheet' : `the sheet that entry ${entry} brought in`}; all is as it was before`,
  'book-adopted': ({ book }) =>
    `adopted ${book === undefined ? 'a further rule book' : `the rule book ${book}`}, as one person alone; no place is governed by it`,
  'account-given': ({ account }) => `gave ${accountText(account)}, with a link to set its password`,
  'account-link-made': ({ account }) => `made a new link to set the password of ${accountText(account)}`,
  'password-set': () => 'set their password, by the link that works once',
  'role-given': ({ account, role }) => `gave ${accountText(account)} ${roleOfText(role)}`,
  'role-shortened': ({ account, role }) =>
    `set the last day on which ${accountText(account)} has ${roleOfText(role)}`,
  'role-ended': ({ account, role }) => `took ${roleOfText(role)} from ${accountText(account)}, at once`,
  'account-ended': ({ account }) => `ended ${accountText(account)}, with its roles and sessions, at once`,
  'account-opened-again': ({ account }) =>
    `opened ${accountText(account)} again, with a link to set its password`,
}

function recordText({ section, record }: EventSaid): string {
  const one = section === undefined ? undefined : SECTION_ONE[section]
  return [one ?? 'a record', ...(record === undefined ? [] : [record])].join(' ')
}

/** A record of a section, in words. */
const SECTION_ONE: Readonly<Partial<Record<string, string>>> = {
  people: 'the person',
  memberships: 'the membership',
  permissions: 'the guardian’s permission',
  certificates: 'the certificate',
  cards: 'the card',
  extensions: 'the order',
  suspensions: 'the suspension',
  resolutions: 'what words on a card mean,',
  designations: 'the designation',
  assignments: 'the training assignment',
  organisations: 'the organisation',
  places: 'the place',
  items: 'the log or tree',
  expectedWork: 'the expected work',
  ratings: 'the rating',
  raises: 'the raise',
  hitches: 'the hitch',
  placements: 'the place in a crew',
}

function accountText(account: string | undefined): string {
  return account === undefined ? 'an account' : `the account ${account}`
}

function roleOfText(role: string | undefined): string {
  return role === undefined ? 'a role' : `the role of ${role}`
}

function factsText(count: number): string {
  return count === 1 ? '1 fact' : `${count} facts`
}

const LOGGED: Record<LoggedKind, string> = {
  'signed-in': 'signed in',
  'signed-out': 'signed out',
  'signed-out-everywhere': 'signed out everywhere',
  'session-ended': 'ended a session of their own',
  'password-given-again': 'gave the password again',
  'password-changed': 'changed their password',
  'founding-link-made': 'was made a link to begin with',
  'sheet-put-in': 'put a sheet on their desk, to bring it in',
  'sheet-settled': 'said how a sheet on their desk is to be read',
  'sheet-thrown-away': 'threw a sheet on their desk away',
  looked: 'looked at records',
  refused: 'was refused',
}

function sheetWords(section: string): string {
  const words: Readonly<Record<string, string>> = sheetKindWords
  return words[section] ?? section
}
