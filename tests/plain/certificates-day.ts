import type { Finding } from '../../lib/core/authority/answer.ts'
import type { Certificate } from '../../lib/core/people/people.schema.ts'
import type { Edition } from '../../lib/core/rulebooks/books.schema.ts'
import type { Rule, RuleOf } from '../../lib/core/rulebooks/rules.schema.ts'
import type { Asked } from './asked.ts'
import { rulesOf } from './books-day.ts'
import { dayNumber, isCovered } from './days.ts'
import { compareTexts, findingOf } from './findings.ts'

/** What the certificates say on a day. */
export type CertificatesDay = {
  findings: Finding[]
  /** Subjects that hold only by records whose delivery is not stated. */
  deliveryNotStated: { rule: Rule; subject: string; records: string[] }[]
}

/** Judges each certificate that the book asks for. */
export function certificatesOn(asked: Asked, edition: Edition, day: number): CertificatesDay {
  const said: CertificatesDay = { findings: [], deliveryNotStated: [] }
  for (const rule of rulesOf(edition, 'certificate')) judgeSubject(asked, edition, day, rule, said)
  return said
}

function judgeSubject(
  asked: Asked,
  edition: Edition,
  day: number,
  rule: RuleOf<'certificate'>,
  said: CertificatesDay,
): void {
  const { subject } = rule
  const records = asked.certificates.filter((one) => servesFor(rule, one))
  const covering = records.filter(
    (one) =>
      one.firstDay !== undefined && one.lastDay !== undefined && isCovered(day, one.firstDay, one.lastDay),
  )
  const unseen = covering.filter((one) => seenRule(edition, rule, one) !== undefined && !one.seen)
  const onlineOnly = covering.filter((one) => isOnlineOnly(asked, edition, rule, one))
  const counting = covering.filter((one) => !unseen.includes(one) && !onlineOnly.includes(one))
  if (counting.length > 0) {
    if (counting.every((one) => one.delivery === 'not-stated')) {
      const ids = counting.map((one) => one.id)
      said.deliveryNotStated.push({ rule, subject, records: ids })
    }
    return
  }
  if (unseen[0] !== undefined) {
    const byRule = seenRule(edition, rule, unseen[0]) ?? rule
    const ids = unseen.map((one) => one.id)
    said.findings.push(findingOf(edition, byRule, 'unknown', ids, { kind: 'certificate-not-seen', subject }))
    return
  }
  const mayCover = records.filter(
    (one) =>
      (one.firstDay === undefined || one.lastDay === undefined) && isCovered(day, one.firstDay, one.lastDay),
  )
  const notOnRecord = { kind: 'certificate-not-on-record', subject } as const
  if (mayCover.length > 0) {
    const ids = mayCover.map((one) => one.id)
    said.findings.push(findingOf(edition, rule, 'unknown', ids, notOnRecord))
    return
  }
  if (onlineOnly[0] !== undefined) {
    const byRule = deliveryRule(edition, rule, onlineOnly[0]) ?? rule
    const ids = onlineOnly.map((one) => one.id)
    said.findings.push(findingOf(edition, byRule, 'none', ids, { kind: 'certificate-delivery', subject }))
    return
  }
  const lastDay = records
    .flatMap((one) => (one.lastDay === undefined || dayNumber(one.lastDay) >= day ? [] : [one.lastDay]))
    .sort(compareTexts)
    .at(-1)
  if (lastDay !== undefined) {
    const ids = records.filter((one) => one.lastDay === lastDay).map((one) => one.id)
    const lapsed = { kind: 'certificate-lapsed', subject, lastDay } as const
    said.findings.push(findingOf(edition, rule, 'none', ids, lapsed))
    return
  }
  said.findings.push(findingOf(edition, rule, 'unknown', [], notOnRecord))
}

/** Whether a record is of the subject of a rule or of one that serves for it. */
function servesFor(rule: RuleOf<'certificate'>, one: Certificate): boolean {
  return one.subject === rule.subject || rule.servedBy?.includes(one.subject) === true
}

/** The rule that wants a record seen: it names the subject asked for, or the subject of the record. */
function seenRule(
  edition: Edition,
  rule: RuleOf<'certificate'>,
  one: Certificate,
): RuleOf<'certificate.seen'> | undefined {
  return naming(rulesOf(edition, 'certificate.seen'), rule, one)
}

function deliveryRule(
  edition: Edition,
  rule: RuleOf<'certificate'>,
  one: Certificate | undefined,
): RuleOf<'certificate.delivery'> | undefined {
  return naming(rulesOf(edition, 'certificate.delivery'), rule, one)
}

function naming<Named extends { subjects: string[] }>(
  rules: readonly Named[],
  rule: RuleOf<'certificate'>,
  one: Certificate | undefined,
): Named | undefined {
  const ofRule = rules.find((named) => named.subjects.includes(rule.subject))
  return ofRule ?? rules.find((named) => one !== undefined && named.subjects.includes(one.subject))
}

/** Whether a record was given online and no skills check of its own subject was taken on or before its first day. */
function isOnlineOnly(
  asked: Asked,
  edition: Edition,
  rule: RuleOf<'certificate'>,
  one: Certificate,
): boolean {
  if (one.delivery !== 'online' || deliveryRule(edition, rule, one) === undefined) return false
  const first = one.firstDay === undefined ? -Infinity : dayNumber(one.firstDay)
  return !asked.certificates.some(
    (other) =>
      other.subject === one.subject &&
      (other.delivery === 'in-person' || other.delivery === 'blended') &&
      other.firstDay !== undefined &&
      dayNumber(other.firstDay) <= first,
  )
}
