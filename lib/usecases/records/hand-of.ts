import type { Actor } from '../../access/roles.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import type { NewFact } from '../../store/write.ts'
import { remarkFacts } from '../program/program-facts.ts'
import { nameOf } from '../journal/entry-words.ts'
import type { Hand } from './by-hand.ts'
import type { PaperTyped } from './hand-made.schema.ts'

/** Whose hand it is. */
export function handOf(snapshot: Snapshot, actor: Actor | undefined): Hand {
  const name = nameOf(snapshot, actor?.account)
  return actor?.person === undefined ? { name } : { name, person: actor.person }
}

/** What is said of an entry to come, by its number: why, and the paper that this hand typed it from. */
export function remarkOf(
  n: number,
  { why, paper }: { why?: string; paper?: PaperTyped },
  { name }: Hand,
): NewFact[] {
  return remarkFacts(n, { why, paper: paper === undefined ? undefined : { ...paper, typedBy: name } })
}
