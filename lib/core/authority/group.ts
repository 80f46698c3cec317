import { InvariantBroken } from '../kernel/result.ts'
import { rankOf } from '../rulebooks/standing.ts'
import type { AnswerBody } from './answer-one.ts'
import { askBriefly } from './ask.ts'
import type { Authority } from './authority-index.ts'
import type { Question } from './question.ts'

/** A person's answer for a group of work, and which of its members it is: the worst, the first of equal ones. */
export type GroupAnswer = AnswerBody & { member: number }

/**
 * Answers a group of like work as its worst member: each member is asked with all cards, and the worst answer stands
 * with its findings. Every question of a group asks the same people; a group has one member at least.
 */
export function askGroup(authority: Authority, members: readonly Question[]): readonly GroupAnswer[] {
  const [first, ...others] = members.map((question) => askBriefly(authority, question))
  if (first === undefined) throw new InvariantBroken('a group has one member at least')
  return first.map((answer, row) => {
    let worst: GroupAnswer = { ...answer, member: 0 }
    others.forEach((answers, index) => {
      const other = answers[row]
      if (other?.person !== answer.person)
        throw new InvariantBroken('a group asks the same people of every member')
      if (rankOf(other.standing) < rankOf(worst.standing)) worst = { ...other, member: index + 1 }
    })
    return worst
  })
}
