/**
 * Where an evaluator tells what it found: what is not shown to be met and, where the whole chain is wanted, what is.
 * Evaluators run without one where only the standing is wanted, so that nothing is built that nobody reads.
 */
export type Sink<Unmet, Met> = {
  unmet(finding: Unmet): void
  met?(step: Met): void
}
