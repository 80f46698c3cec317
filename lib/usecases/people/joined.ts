import { isKnownAt } from '../../core/kernel/versions.ts'
import { JoinedPeople } from '../../core/people/joined-people.ts'
import type { Program } from '../../core/program/program.schema.ts'

/** Whose record counts for whom, as known at entry `n`. */
export function joinedAt({ joins }: Pick<Program, 'joins'>, n: number): JoinedPeople {
  return new JoinedPeople(joins.filter((fact) => isKnownAt(fact, n)))
}
