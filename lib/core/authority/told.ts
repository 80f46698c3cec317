import type { DeliveryDoubt } from '../people/certificate-index.ts'
import type { Finding, Met } from './answer.ts'

/** What evaluators told about a day; what is met is kept only where the whole chain is wanted. */
export class Told {
  readonly findings: Finding[] = []
  readonly steps: Met[] = []
  readonly doubts: DeliveryDoubt[] = []

  unmet(finding: Finding): void {
    this.findings.push(finding)
  }

  doubt(doubt: DeliveryDoubt): void {
    this.doubts.push(doubt)
  }
}

/** What evaluators told, with everything that is met. */
export class WholeChain extends Told {
  met(step: Met): void {
    this.steps.push(step)
  }
}
