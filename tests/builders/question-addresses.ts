import { writeInches } from '../../lib/core/kernel/measures.ts'
import type { AskedQuestion } from '../../lib/usecases/authority/question.schema.ts'

/** The address at which a browser asks a question. */
export function addressOfQuestion({ work, first, last }: AskedQuestion, path = '/'): string {
  const words =
    'item' in work
      ? { item: work.item, saw: work.sawKind }
      : {
          work: work.workKind,
          across: writeInches(work.diameter),
          complexity: work.complexity,
          saw: work.sawKind,
          hands: work.hands,
          species: work.species,
          place: work.place,
        }
  const filled = Object.entries({ ...words, first, last }).flatMap(([name, value]) =>
    value === undefined ? [] : [[name, value]],
  )
  return `${path}?${new URLSearchParams(filled).toString()}`
}

/** The same question as the command line asks it. */
export function commandOfQuestion({ work, first, last }: AskedQuestion): string[] {
  const words =
    'item' in work
      ? { item: work.item, saw: work.sawKind }
      : {
          work: work.workKind,
          diameter: writeInches(work.diameter),
          complexity: work.complexity,
          saw: work.sawKind,
          hands: work.hands,
          species: work.species,
          place: work.place,
        }
  return Object.entries({ ...words, from: first, through: last }).flatMap(([name, value]) =>
    value === undefined ? [] : [`--${name}`, value],
  )
}
