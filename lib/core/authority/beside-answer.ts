import type { Caution } from '../cautions/cautions.schema.ts'
import type { Authority } from './authority-index.ts'
import { cautionsShown } from './cautions-shown.ts'
import { placesStopped } from './places-stopped.ts'
import type { Question } from './question.ts'
import { supervisors, workRuns, type WorkRun } from './work-runs.ts'

/** What stands beside the people of an answer. */
export type BesideAnswer = {
  /** What governs the work, by runs of days. */
  runs: readonly WorkRun[]
  /** The levels that may supervise this work on every day asked, lowest first. */
  supervisors: readonly string[]
  /** The edition by which levels in remedies are read; empty where none governs. */
  edition: string
  cautions: readonly Caution[]
  /** Where no place is named: the places stopped on a day asked, which the answer does not count. */
  placesNotCounted?: readonly string[]
}

/** Gathers what stands beside the answer to a question. */
export function besideAnswer(authority: Authority, question: Question): BesideAnswer {
  const runs = workRuns(authority, question)
  return {
    runs,
    supervisors: supervisors(runs, question),
    edition: runs.find((run) => run.edition !== undefined)?.edition?.edition.id ?? '',
    cautions: cautionsShown(runs, question, authority.records.cautions),
    ...(question.work.place === undefined ? { placesNotCounted: placesStopped(authority, question) } : {}),
  }
}
