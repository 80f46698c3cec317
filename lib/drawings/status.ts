import type { Answer, Finding } from '../core/authority/answer.ts'
import { plusDays, type CalendarDate } from '../core/calendar/dates.ts'
import { rankOf, TRAINING } from '../core/rulebooks/standing.ts'

/** The six marks: each a word, a shape and a fill, never a colour alone. */
export const STATUSES = ['current', 'lapses-soon', 'lapsed', 'suspended', 'not-yet', 'not-on-record'] as const
export type Status = (typeof STATUSES)[number]

/** How many days ahead of its last day something is said to lapse soon. */
const SOON_DAYS = 60

/**
 * The mark of something that counts from one day through another. A side that is not on record is without limit, but
 * where neither is known nothing is.
 */
export function statusOfDays(
  first: CalendarDate | undefined,
  last: CalendarDate | undefined,
  today: CalendarDate,
): Status {
  if (first === undefined && last === undefined) return 'not-on-record'
  if (first !== undefined && first > today) return 'not-yet'
  if (last === undefined) return 'current'
  if (last < today) return 'lapsed'
  return last <= plusDays(today, SOON_DAYS) ? 'lapses-soon' : 'current'
}

/**
 * The mark of an answer. What holds and ends within sixty days of today, or by the last day asked, lapses soon; a no
 * is a suspension where one stands in the way, a lapse where something ended, and otherwise not yet.
 */
export function statusOfAnswer(
  {
    standing,
    spans,
    holdsThrough,
    findings,
  }: Pick<Answer, 'standing' | 'spans' | 'holdsThrough' | 'findings'>,
  last: CalendarDate,
  today: CalendarDate,
): Status {
  if (standing === 'unknown') return 'not-on-record'
  const soon = plusDays(today, SOON_DAYS)
  if (standing !== 'none') {
    return holdsThrough !== 'open' && (holdsThrough <= last || holdsThrough <= soon)
      ? 'lapses-soon'
      : 'current'
  }
  if (findings.some(({ kind }) => kind === 'suspended')) return 'suspended'
  const [opening] = spans
  if (opening !== undefined && rankOf(opening.standing) >= TRAINING) return 'lapses-soon'
  // Whoever has no card for this work has nothing that could have lapsed.
  if (findings.some(({ kind }) => kind === 'no-card')) return 'not-yet'
  return findings.some(isEnd) ? 'lapsed' : 'not-yet'
}

/** Whether a finding says that something counted once and ended. */
function isEnd(finding: Finding): boolean {
  if (finding.kind === 'no-agreement') return finding.says === 'ended'
  return finding.kind === 'card-no-longer-valid' || finding.kind === 'certificate-lapsed'
}

/** The mark of one requirement that is not met. */
export function statusOfFinding(finding: Finding): Status {
  if (finding.allows === 'unknown') return 'not-on-record'
  if (finding.kind === 'suspended') return 'suspended'
  return isEnd(finding) ? 'lapsed' : 'not-yet'
}
