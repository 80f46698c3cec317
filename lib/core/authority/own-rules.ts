import type { EpochDay } from '../calendar/dates.ts'
import { stopsOn, tellSuspended, type IndexedSuspension } from '../cards/suspensions.ts'
import { judgeCertificate, type DeliveryDoubt } from '../people/certificate-index.ts'
import { judgeCapacity, judgeLeastAge, wantsAgreement, type AgeSupervision } from '../people/person-rules.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import { INDEPENDENT, NONE, UNKNOWN, worse, type StandingRank } from '../rulebooks/standing.ts'
import type { SawKind, WorkKind } from '../rulebooks/words.ts'
import type { Finding, Met } from './answer.ts'
import { countAtOrBefore, sortedDays } from './elementary-pieces.ts'
import type { PersonIndex } from './person-index.ts'
import { ruleFailed } from './rule-failed.ts'
import { isAbout } from './suspended-on.ts'
import { Told, WholeChain } from './told.ts'

/** What a person must meet whatever the card: what it allows on a day, and why. */
export type OwnJudgement = {
  rank: StandingRank
  /** Rules of age that want a supervisor; whether that is said depends on the card. */
  supervision: readonly AgeSupervision[]
  findings: readonly Finding[]
  doubts: readonly DeliveryDoubt[]
  met: readonly Met[]
}

/** What was judged under an edition so far, by the stretch between two changes. */
type JudgedUnder = {
  edition: EditionIndex
  ranks: (StandingRank | undefined)[]
  judgements: (OwnJudgement | undefined)[]
}

/**
 * The rules of age, capacity, certificates and suspensions for one person and one kind of work. They do not depend on
 * card, complexity or diameter, so that one judgement of a day serves every question that is alike in the rest.
 */
export class OwnRules {
  /** Sorted: the days on which the judgement may change; between two of them one judgement serves. */
  private readonly changes: readonly number[]
  private readonly judged: JudgedUnder[] = []

  constructor(
    private readonly person: PersonIndex,
    private readonly workKind: WorkKind,
    private readonly sawKind: SawKind,
    private readonly placeSuspensions: readonly IndexedSuspension[],
  ) {
    this.changes =
      placeSuspensions.length === 0
        ? person.ownChanges
        : sortedDays([
            ...person.ownChanges,
            ...placeSuspensions.flatMap(({ days, noticeDays }) => [
              days.first,
              days.last + 1,
              ...noticeDays.values(),
            ]),
          ])
  }

  /** What the rules allow on a day. */
  rankOn(edition: EditionIndex, day: EpochDay): StandingRank {
    const { ranks } = this.under(edition)
    const at = countAtOrBefore(this.changes, day)
    const known = ranks[at]
    if (known !== undefined) return known
    const { rank } = this.judge(edition, day, undefined)
    ranks[at] = rank
    return rank
  }

  /** What the rules allow on a day, and why. */
  judgedOn(edition: EditionIndex, day: EpochDay): OwnJudgement {
    const { judgements, ranks } = this.under(edition)
    const at = countAtOrBefore(this.changes, day)
    const known = judgements[at]
    if (known !== undefined) return known
    const judgement = this.told(edition, day, new Told())
    judgements[at] = judgement
    ranks[at] = judgement.rank
    return judgement
  }

  private under(edition: EditionIndex): JudgedUnder {
    for (const known of this.judged) if (known.edition === edition) return known
    const judged: JudgedUnder = { edition, ranks: [], judgements: [] }
    this.judged.push(judged)
    return judged
  }

  /** The same with everything that is met, for the whole chain of reasons. */
  chainOn(edition: EditionIndex, day: EpochDay): OwnJudgement {
    return this.told(edition, day, new WholeChain())
  }

  private told(edition: EditionIndex, day: EpochDay, told: Told): OwnJudgement {
    const { rank, supervision } = this.judge(edition, day, told)
    return { rank, supervision, findings: told.findings, doubts: told.doubts, met: told.steps }
  }

  private judge(
    edition: EditionIndex,
    day: EpochDay,
    told: Told | undefined,
  ): { rank: StandingRank; supervision: readonly AgeSupervision[] } {
    const { person, workKind, sawKind } = this
    let rank: StandingRank = INDEPENDENT
    let supervision: readonly AgeSupervision[] = []
    try {
      rank = judgeLeastAge(edition, person, sawKind, day, told)
    } catch (fault) {
      rank = failed(edition, fault, told)
    }
    try {
      const judged = judgeCapacity(edition, person, workKind, sawKind, day, told)
      supervision = judged.supervision
      rank = worse(rank, judged.rank)
    } catch (fault) {
      rank = worse(rank, failed(edition, fault, told))
    }
    for (const rule of edition.certificates) {
      if (rank === NONE && told === undefined) return { rank, supervision }
      try {
        rank = worse(rank, judgeCertificate(rule, edition, person.certificates, day, told))
      } catch (fault) {
        rank = worse(rank, failed(edition, fault, told))
      }
    }
    try {
      if (this.isSuspended(edition, person.suspensions, day, told)) rank = NONE
      if (this.isSuspended(edition, this.placeSuspensions, day, told)) rank = NONE
    } catch (fault) {
      rank = worse(rank, failed(edition, fault, told))
    }
    return { rank, supervision }
  }

  private isSuspended(
    edition: EditionIndex,
    suspensions: readonly IndexedSuspension[],
    day: EpochDay,
    told: Told | undefined,
  ): boolean {
    let isStopped = false
    for (const suspension of suspensions) {
      if (!stopsOn(suspension, day, this.workKind, this.sawKind)) continue
      if (!isAbout(suspension, this.person, day, wantsAgreement(edition))) continue
      isStopped = true
      if (told !== undefined) tellSuspended(edition, suspension, this.person.id, day, told)
    }
    return isStopped
  }
}

function failed(edition: EditionIndex, fault: unknown, told: Told | undefined): StandingRank {
  told?.unmet(ruleFailed(edition, fault))
  return UNKNOWN
}
