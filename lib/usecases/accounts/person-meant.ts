import { foldedName } from '../../core/kernel/folded.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import type { Snapshot } from '../../store/snapshot.ts'

/** How many people of one name a problem lists. */
const MOST_NAMED = 5

/** The id of the person who was typed, by name or by id; or what is wrong with it, as a part of a line. */
export function personMeant({ program, n }: Snapshot, typed: string): Result<string, string> {
  const known = program.people.filter((fact) => isKnownAt(fact, n))
  const byId = known.find(({ id }) => id === typed)
  if (byId !== undefined) return success(byId.id)
  const wanted = foldedName(typed)
  const named = known.filter(({ name }) => foldedName(name) === wanted)
  const [only] = named
  if (only === undefined)
    return refusal('nobody of this name or id is on record; write the name as the record has it')
  if (named.length === 1) return success(only.id)
  const ids = named.slice(0, MOST_NAMED).map(({ id }) => id)
  return refusal(
    `${named.length} people have this name; write the id of the one who is meant: ${ids.join(', ')}`,
  )
}

/** What somebody signs in as who has an open account already. */
export function signInNameOf({ accounts, n }: Snapshot, person: string): string | undefined {
  return accounts.find((fact) => fact.person === person && !fact.closed && isKnownAt(fact, n))?.signInName
}
