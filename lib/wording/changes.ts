import type { Change, MissingFact, RecordedFact, Remedies } from '../core/authority/answer.ts'
import { dayText, onDays, spanText } from './days.ts'
import { joinedByAnd, joinedByOr } from './lists.ts'
import { supervisorText, type Names } from './names.ts'

type ChangeKind = Change['kind']
type ChangeOf<Kind extends ChangeKind> = Extract<Change, { kind: Kind }>

/**
 * One change that would let the work be done, as a phrase to act on: `renew CPR by 12 July 2027`. The edition says
 * which levels lie above the one that is named.
 */
export function changePhrase(change: Change, names: Names, edition: string): string {
  // The key picks the function for its own kind; TypeScript cannot follow that across the union.
  const phrase = PHRASES[change.kind] as (change: Change, names: Names, edition: string) => string
  return phrase(change, names, edition)
}

/** A set of changes that belong together, joined by "and". */
export function changeSetPhrase(set: readonly Change[], names: Names, edition: string): string {
  return joinedByAnd(set.map((change) => changePhrase(change, names, edition)))
}

/** What stands apart from the sets and is open whatever they say: somebody else, another date, leave it. */
export function apartPhrases(remedies: Remedies): string[] {
  const phrases: string[] = []
  const others = remedies.somebodyElse
  if (others > 0)
    phrases.push(`somebody else (${others} ${others === 1 ? 'other is' : 'others are'} on their own)`)
  if (remedies.anotherDate !== undefined) phrases.push(`another date (${spanText(remedies.anotherDate)})`)
  phrases.push('leave it')
  return phrases
}

/** Said where the record proposes no set of changes: some steps are never proposed, and are another's to take. */
export const NO_SET =
  'The record has no step to propose for these days. A new card, a lifted suspension or an eased restriction is for the certifying official alone.'

const PHRASES: { [Kind in ChangeKind]: (change: ChangeOf<Kind>, names: Names, edition: string) => string } = {
  'renewal-evaluation': (change, names) =>
    `ask for a renewal evaluation for ${names.card(change.card)} by ${dayText(change.by)}`,
  'renew-certificate': (change, names) => `renew ${names.subject(change.subject)} by ${dayText(change.by)}`,
  'record-missing-fact': (change, names) =>
    `record ${FACTS[change.what](change.subject === undefined ? undefined : names.subject(change.subject))}`,
  'have-seen': (change, names) => `have somebody else see the ${names.subject(change.subject)} certificate`,
  'add-supervisor': (change, names, edition) => {
    const who = supervisorText(names, edition, change.level)
    const days = joinedByAnd(change.days.map(onDays))
    if (change.trainers !== undefined)
      return `add ${joinedByOr(change.trainers.map(names.person))}, whom the assignment names, as ${who} who is designated to train, ${days}`
    return change.trainer
      ? `add ${who} who is designated to train, ${days}`
      : `add ${who} as supervisor, ${days}`
  },
}

const FACTS: { [What in MissingFact | RecordedFact]: (subject: string | undefined) => string } = {
  age: () => 'their age',
  capacity: () => 'in which capacity they work',
  'last-day': () => 'the last day of the card',
  'work-kinds': () => 'which kinds of work the card is for',
  hands: () => 'whether one or two people are on the saw',
  species: () => 'the species',
  place: () => 'the place',
  certificate: (subject) => `the ${subject ?? 'missing'} certificate with its days`,
  'meaning-of-words': () => 'what a certifying official says the words on the card mean',
  rating: () => 'a rating of how complex the work is',
  'guardian-permission': () => 'a guardian’s permission',
  agreement: () => 'the days of the agreement',
}
