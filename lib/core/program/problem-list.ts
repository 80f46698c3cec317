import { showValue, writePath, type PathStep } from './paths.ts'
import type { ProblemFigures, ProgramProblem } from './problems.ts'

/** How many problems are listed; the rest are counted. */
const MOST_PROBLEMS = 500

/** Collects the problems of one file, the first 500 in full and the number of the others. */
export class ProblemList {
  private readonly listed: ProgramProblem[] = []
  private unlisted = 0

  /** Adds a problem of the value at a path. A value of `undefined` is none. */
  add(steps: readonly PathStep[], value: unknown, figures: ProblemFigures): void {
    if (this.isFull) {
      this.count(1)
      return
    }
    const path = writePath(steps)
    this.listed.push(
      value === undefined ? { path, ...figures } : { path, value: showValue(value), ...figures },
    )
  }

  /** Counts problems that are not listed. */
  count(problems: number): void {
    this.unlisted += problems
  }

  /** Whether further problems are only counted. */
  get isFull(): boolean {
    return this.listed.length >= MOST_PROBLEMS
  }

  get isEmpty(): boolean {
    return this.listed.length === 0
  }

  /** The problems in the order in which they were found, and last how many are not listed. */
  all(): ProgramProblem[] {
    if (this.unlisted === 0) return [...this.listed]
    return [...this.listed, { path: '', kind: 'more-problems', count: this.unlisted }]
  }
}
