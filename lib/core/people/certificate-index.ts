import { toEpochDay, type CalendarDate, type EpochDay } from '../calendar/dates.ts'
import { byText } from '../kernel/order.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { RuleRef } from '../rulebooks/rule-ref.ts'
import type { RuleOf } from '../rulebooks/rules.schema.ts'
import type { Sink } from '../rulebooks/sink.ts'
import { INDEPENDENT, NONE, UNKNOWN, type StandingRank } from '../rulebooks/standing.ts'
import type { PersonFinding, PersonMet } from './findings.ts'
import type { Certificate } from './people.schema.ts'

/** A certificate with its days at hand; `skillsShown` is false for online-only without an earlier skills check. */
export type IndexedCertificate = {
  certificate: Certificate
  first: EpochDay | undefined
  last: EpochDay | undefined
  skillsShown: boolean
}

/** A person's certificates made ready; the skills check is looked for once, among those of the same subject. */
export function indexCertificates(certificates: readonly Certificate[]): IndexedCertificate[] {
  return certificates.map((certificate) => ({
    certificate,
    first: certificate.firstDay === undefined ? undefined : toEpochDay(certificate.firstDay),
    last: certificate.lastDay === undefined ? undefined : toEpochDay(certificate.lastDay),
    skillsShown:
      certificate.delivery !== 'online' || certificates.some((other) => isSkillsCheckFor(other, certificate)),
  }))
}

function isSkillsCheckFor(other: Certificate, online: Certificate): boolean {
  return (
    other.subject === online.subject &&
    (other.delivery === 'in-person' || other.delivery === 'blended') &&
    other.firstDay !== undefined &&
    online.firstDay !== undefined &&
    other.firstDay <= online.firstDay
  )
}

/** What is met only by a record whose delivery is not stated: a note, never a finding. */
export type DeliveryDoubt = { subject: string; rule: RuleRef; records: readonly string[] }

/** Where certificates are told, doubts of delivery among them. */
export type CertificateSink = Sink<PersonFinding, PersonMet> & { doubt(doubt: DeliveryDoubt): void }

/** How one record stands to a rule on a day; the first of these that any record reaches decides. */
type Reach =
  'counts' | 'counts-delivery-not-stated' | 'not-seen' | 'may-cover' | 'delivery' | 'ended' | 'not-begun'

/**
 * Judges one certificate rule on a day: met, or the first of not seen, not on record (undated), delivery, lapsed, not
 * on record that applies.
 */
export function judgeCertificate(
  rule: RuleOf<'certificate'>,
  edition: EditionIndex,
  certificates: readonly IndexedCertificate[],
  day: EpochDay,
  sink: CertificateSink | undefined,
): StandingRank {
  edition.lastTaken = rule
  let best: Reach | undefined
  let spoke: Certificate[] = []
  for (const indexed of certificates) {
    const subject = indexed.certificate.subject
    if (subject !== rule.subject && !(rule.servedBy?.includes(subject) ?? false)) continue
    const reach = reachOn(indexed, day, edition, rule.subject)
    if (reach === 'not-begun') continue
    const order = best === undefined ? -1 : REACHES.indexOf(reach) - REACHES.indexOf(best)
    if (order < 0) {
      best = reach
      spoke = [indexed.certificate]
    } else if (order === 0) {
      spoke.push(indexed.certificate)
    }
  }
  if (best === 'counts' || best === 'counts-delivery-not-stated') {
    sink?.met?.({
      kind: 'certificate-holds',
      rule: edition.ref(rule),
      records: idsOf(spoke),
      subject: rule.subject,
      lastDay: latestLastDay(spoke),
    })
    if (best === 'counts-delivery-not-stated')
      sink?.doubt({ subject: rule.subject, rule: edition.ref(rule), records: idsOf(spoke) })
    return INDEPENDENT
  }
  if (best === undefined || best === 'may-cover') {
    sink?.unmet({
      kind: 'certificate-not-on-record',
      subject: rule.subject,
      rule: edition.ref(rule),
      records: idsOf(spoke),
      allows: 'unknown',
    })
    return UNKNOWN
  }
  if (best === 'not-seen') {
    sink?.unmet({
      kind: 'certificate-not-seen',
      subject: rule.subject,
      rule: edition.ref(edition.seen(rule.subject) ?? rule),
      records: idsOf(spoke),
      allows: 'unknown',
    })
    return UNKNOWN
  }
  if (sink !== undefined) {
    const { subject } = rule
    if (best === 'delivery') {
      sink.unmet({
        kind: 'certificate-delivery',
        subject,
        rule: edition.ref(edition.delivery(subject) ?? rule),
        records: idsOf(spoke),
        allows: 'none',
      })
    } else {
      const lastDay = latestLastDay(spoke)
      sink.unmet({
        kind: 'certificate-lapsed',
        subject,
        lastDay,
        rule: edition.ref(rule),
        records: idsOf(spoke.filter((certificate) => certificate.lastDay === lastDay)),
        allows: 'none',
      })
    }
  }
  return NONE
}

const REACHES: readonly Reach[] = [
  'counts',
  'counts-delivery-not-stated',
  'not-seen',
  'may-cover',
  'delivery',
  'ended',
  'not-begun',
]

function reachOn(indexed: IndexedCertificate, day: EpochDay, edition: EditionIndex, subject: string): Reach {
  const { certificate, first, last } = indexed
  if (last !== undefined && last < day) return 'ended'
  if (first !== undefined && first > day) return 'not-begun'
  if (first === undefined || last === undefined) return 'may-cover'
  if (!certificate.seen && edition.seen(subject) !== undefined) return 'not-seen'
  if (!indexed.skillsShown && edition.delivery(subject) !== undefined) return 'delivery'
  return certificate.delivery === 'not-stated' ? 'counts-delivery-not-stated' : 'counts'
}

function idsOf(certificates: readonly Certificate[]): string[] {
  const ids = certificates.map((certificate) => certificate.id)
  return ids.length < 2 ? ids : ids.sort(byText)
}

function latestLastDay(certificates: readonly Certificate[]): CalendarDate {
  let latest = '' as CalendarDate
  for (const { lastDay } of certificates) if (lastDay !== undefined && lastDay > latest) latest = lastDay
  return latest
}
