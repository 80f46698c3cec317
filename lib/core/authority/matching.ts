/**
 * Learners and the supervisors each of them may have. Both are numbered from 0; `may[learner]` lists supervisors in
 * any order. Every supervisor serves at most `capacity` learners.
 */
export type MatchingProblem = {
  learners: number
  supervisors: number
  capacity: number
  may: readonly (readonly number[])[]
}

/** Learners who together may have only these supervisors, and are more than the supervisors' places. */
type Deficiency = { learners: readonly number[]; supervisors: readonly number[] }

/** A matching of greatest size, in the order of the learners; `deficient` proves that not everybody can be served. */
export type Matching = {
  pairs: readonly { learner: number; supervisor: number }[]
  deficient?: Deficiency
}

/**
 * A matching of greatest size, by augmenting paths (H. W. Kuhn, The Hungarian method for the assignment problem, 1955;
 * P. Hall, On representatives of subsets, 1935). Of all such matchings it is the one that serves the lowest learners,
 * and of those the one in which each learner in turn has the lowest supervisor. Where a learner is left out it names
 * a deficient set, from which no learner can be taken away: of those found from each learner left out, the smallest,
 * and of equal ones that of the lowest learner.
 */
export function matchLearners(problem: MatchingProblem): Matching {
  const state = new State(problem)
  // Who has been served stays served on every later path, so the lowest learners are served first.
  for (let learner = 0; learner < problem.learners; learner += 1) state.serve(learner)
  for (let learner = 0; learner < problem.learners; learner += 1) state.settle(learner)
  const pairs = [...state.supervisorOf].flatMap((supervisor, learner) =>
    supervisor === NOBODY ? [] : [{ learner, supervisor }],
  )
  const deficient = smallest(
    [...state.supervisorOf].flatMap((supervisor, learner) =>
      supervisor === NOBODY ? [state.reachedFrom(learner)] : [],
    ),
  )
  return deficient === undefined ? { pairs } : { pairs, deficient }
}

const NOBODY = -1

function smallest(found: readonly Deficiency[]): Deficiency | undefined {
  let best: Deficiency | undefined
  for (const set of found) if (best === undefined || set.learners.length < best.learners.length) best = set
  return best
}

class State {
  /** The supervisor of each learner, or `NOBODY`. */
  readonly supervisorOf: Int32Array
  private readonly learnersOf: Set<number>[]
  private readonly choices: readonly (readonly number[])[]
  private readonly capacity: number
  /** Learners below this number keep their supervisor. */
  private settledBelow = 0

  constructor(problem: MatchingProblem) {
    this.capacity = problem.capacity
    this.supervisorOf = new Int32Array(problem.learners).fill(NOBODY)
    this.learnersOf = Array.from({ length: problem.supervisors }, () => new Set<number>())
    this.choices = Array.from({ length: problem.learners }, (_, learner) =>
      [...new Set(problem.may[learner])].sort((left, right) => left - right),
    )
  }

  /** Gives the learner a supervisor along an alternating path, if there is one. */
  serve(learner: number): boolean {
    return this.search(learner, new Set())
  }

  /** Gives a served learner the lowest supervisor with whom everybody else who is served still is. */
  settle(learner: number): void {
    this.settledBelow = learner + 1
    const current = this.supervisorOf[learner] ?? NOBODY
    if (current === NOBODY) return
    for (const supervisor of this.choices[learner] ?? []) {
      if (supervisor === current) return
      this.leave(learner)
      if (this.admit(learner, supervisor, new Set())) return
      this.take(learner, current)
    }
  }

  /** All learners and supervisors on alternating paths from a learner left out. */
  reachedFrom(learner: number): Deficiency {
    const learners = new Set([learner])
    const supervisors = new Set<number>()
    // A set may grow while it is walked: the walk takes in what is added.
    for (const reached of learners) {
      for (const supervisor of this.choices[reached] ?? []) {
        supervisors.add(supervisor)
        for (const served of this.learnersOf[supervisor] ?? []) learners.add(served)
      }
    }
    return { learners: ascending(learners), supervisors: ascending(supervisors) }
  }

  private search(learner: number, tried: Set<number>): boolean {
    return (this.choices[learner] ?? []).some((supervisor) => this.admit(learner, supervisor, tried))
  }

  /** Makes room with the supervisor, moving somebody else on if need be. */
  private admit(learner: number, supervisor: number, tried: Set<number>): boolean {
    const served = this.learnersOf[supervisor]
    if (served === undefined || tried.has(supervisor)) return false
    tried.add(supervisor)
    if (served.size < this.capacity) {
      this.take(learner, supervisor)
      return true
    }
    for (const other of ascending(served)) {
      if (other < this.settledBelow || !this.search(other, tried)) continue
      this.take(learner, supervisor)
      return true
    }
    return false
  }

  private take(learner: number, supervisor: number): void {
    this.leave(learner)
    this.supervisorOf[learner] = supervisor
    this.learnersOf[supervisor]?.add(learner)
  }

  private leave(learner: number): void {
    const before = this.supervisorOf[learner] ?? NOBODY
    if (before === NOBODY) return
    this.learnersOf[before]?.delete(learner)
    this.supervisorOf[learner] = NOBODY
  }
}

function ascending(numbers: Iterable<number>): number[] {
  return [...numbers].sort((left, right) => left - right)
}
