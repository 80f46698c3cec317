import type { Question } from './question.ts'
import type { Caution } from '../cautions/cautions.schema.ts'
import { shownCautions } from '../cautions/shown-cautions.ts'
import type { WorkRun } from './work-runs.ts'

/** The cautions that the governing editions show beside this work, in the order of the book, each once. */
export function cautionsShown(
  runs: readonly WorkRun[],
  question: Question,
  cautions: readonly Caution[],
): Caution[] {
  const shown = runs.flatMap(({ edition, planned }) =>
    edition === undefined
      ? []
      : shownCautions(edition.edition.rules, cautions, question.work.workKind, planned).cautions,
  )
  return [...new Map(shown.map((caution) => [caution.id, caution])).values()]
}
