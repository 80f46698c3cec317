import type { Finding } from '../../lib/core/authority/answer.ts'
import type { Suspension } from '../../lib/core/cards/cards.schema.ts'
import type { Membership } from '../../lib/core/people/people.schema.ts'
import type { Edition } from '../../lib/core/rulebooks/books.schema.ts'
import type { Asked } from './asked.ts'
import { ruleOf } from './books-day.ts'
import { dayOfMoment } from './days.ts'
import { findingOf } from './findings.ts'

/** Whom the suspensions of a day are asked for. */
type Stopped = {
  memberships: readonly Membership[]
  /** The card numbers that are used; a suspension of another number does not matter. */
  numbers: readonly string[]
  /** Training under an assignment is stopped by a suspension of any work kind. */
  isAnyWorkKind: boolean
}

/** What is suspended or stood down on a day. */
export function suspensionFindings(asked: Asked, edition: Edition, day: number, stopped: Stopped): Finding[] {
  const findings: Finding[] = []
  for (const { suspension, first, last } of asked.suspensions) {
    if (day < first || day > last) continue
    if (!namesPart(asked, suspension, stopped) || !namesSubject(asked, suspension, stopped)) continue
    const notice = noticeOn(asked, suspension, day)
    const figures = { kind: 'suspended', form: suspension.form, because: suspension.kind, notice } as const
    findings.push(findingOf(edition, ruleOf(edition, 'suspension'), 'none', [suspension.id], figures))
  }
  return findings
}

function namesPart({ work }: Asked, suspension: Suspension, { isAnyWorkKind }: Stopped): boolean {
  const { workKinds, sawKinds } = suspension
  const isWorkKind = workKinds === undefined || isAnyWorkKind || workKinds.includes(work.workKind)
  return isWorkKind && (sawKinds === undefined || sawKinds.includes(work.sawKind))
}

function namesSubject(asked: Asked, { subject }: Suspension, stopped: Stopped): boolean {
  switch (subject.kind) {
    case 'person':
      return subject.person === asked.id
    case 'organisation':
      return stopped.memberships.some((one) => one.organisation === subject.organisation)
    case 'unit':
      return stopped.memberships.some((one) => one.unit === subject.unit)
    case 'place':
      return asked.upwards.includes(subject.place)
    case 'work-kind':
      return stopped.isAnyWorkKind || subject.workKind === asked.work.workKind
    case 'saw-kind':
      return subject.sawKind === asked.work.sawKind
    case 'everybody':
      return true
    case 'card':
      return stopped.numbers.includes(subject.number)
  }
}

function noticeOn(asked: Asked, suspension: Suspension, day: number): 'before' | 'after' | 'not-recorded' {
  const arrivals = (suspension.notices ?? [])
    .filter((notice) => notice.person === asked.id)
    .map((notice) => dayOfMoment(notice.at, asked.records.timeZone))
  if (arrivals.length === 0) return 'not-recorded'
  return day < Math.min(...arrivals) ? 'before' : 'after'
}
