/** What an entry of the journal says was done. `stated` is an entry that a program file brought, in its own words. */
export const EVENT_KINDS = [
  'stated',
  'program-founded',
  'manager-opened',
  'program-file-brought-in',
  'demo-accounts-opened',
  'manager-reset',
] as const

export type EventKind = (typeof EVENT_KINDS)[number]

/** What goes into the access log: looks, and acts that change no record. */
export const LOGGED_KINDS = [
  'signed-in',
  'sign-in-refused',
  'signed-out',
  'signed-out-everywhere',
  'password-given-again',
  'founding-link-made',
  'answer-kept',
  'looked',
  'refused',
] as const

export type LoggedKind = (typeof LOGGED_KINDS)[number]

/** The sentence of an event, after the name of who did it: “… founded the program”. */
export function eventSentence(kind: EventKind, said: { entries?: number; accounts?: number } = {}): string {
  return EVENTS[kind](said)
}

/** The sentence of a line of the access log, after the name of the account. */
export function loggedSentence(kind: LoggedKind): string {
  return LOGGED[kind]
}

const EVENTS: Record<EventKind, (said: { entries?: number; accounts?: number }) => string> = {
  stated: () => 'entered what a program file states',
  'program-founded': () => 'founded the program and adopted its rule book at founding, as one person alone',
  'manager-opened': () => 'opened the account of the first program manager',
  'program-file-brought-in': () => 'brought in the current facts of a program file',
  'demo-accounts-opened': ({ accounts }) => `opened ${accounts ?? 'the'} accounts of the demonstration`,
  'manager-reset': () => 'gave a program manager who was locked out a way in, from the command line',
}

const LOGGED: Record<LoggedKind, string> = {
  'signed-in': 'signed in',
  'sign-in-refused': 'was refused at sign-in',
  'signed-out': 'signed out',
  'signed-out-everywhere': 'signed out everywhere',
  'password-given-again': 'gave the password again',
  'founding-link-made': 'was made a link to begin with',
  'answer-kept': 'kept an answer that is relied on',
  looked: 'looked at records',
  refused: 'was refused',
}
