import type { EndedBy, Finding, HoldsThrough } from '../core/authority/answer.ts'
import { daysUntil, plusDays, type CalendarDate } from '../core/calendar/dates.ts'
import { rankOf, TRAINING, type Standing } from '../core/rulebooks/standing.ts'
import type { Complexity } from '../core/rulebooks/words.ts'
import { dayText, daysText } from './days.ts'
import { findingSentence } from './findings.ts'
import { capitalised, joinedByAnd } from './lists.ts'
import type { Names } from './names.ts'
import { standingText } from './standings.ts'
import { complexityWords } from './work-words.ts'

/** What is told of a person's standing for a kind of work, today and until when. */
export type ToldLine = {
  standing: Standing
  findings: readonly Finding[]
  through: HoldsThrough
  endedBy?: EndedBy
  supervisors: readonly string[]
  /** The last day of what ended. */
  lapsedOn?: CalendarDate
}

/** How far ahead an end is worth counting in days. */
const COUNTED_DAYS = 366

/**
 * A day with the time left until it, or that is over: `11 July 2027, in 69 days`. Where it is told as of another day
 * than today there is no today to count from, and the day stands alone.
 */
export function dayFromToday(day: CalendarDate, today: CalendarDate | undefined): string {
  if (today === undefined) return dayText(day)
  const days = daysUntil(today, day)
  if (days === 0) return `${dayText(day)}, today`
  return days < 0 || days > COUNTED_DAYS ? dayText(day) : `${dayText(day)}, in ${daysText(days)}`
}

/** Several complexities that stand alike: `least and moderately complex`, `however complex`. */
export function complexitiesText(complexities: readonly Complexity[]): string {
  if (complexities.length === 3) return 'however complex'
  const words = complexities.map((one) => complexityWords[one])
  return joinedByAnd([...words.slice(0, -1).map((one) => one.replace(/ complex$/, '')), ...words.slice(-1)])
}

/** The standing of the day and until when: `on their own, through 11 July 2027, in 69 days`. */
export function lineText(line: ToldLine, today: CalendarDate | undefined): string {
  const standing = standingText(line.standing, line.supervisors)
  return `${standing}${untilText(line, today)}`
}

function untilText(
  { standing, through, endedBy, lapsedOn }: ToldLine,
  today: CalendarDate | undefined,
): string {
  if (lapsedOn !== undefined) return `, since ${dayText(plusDays(lapsedOn, 1))}`
  if (through === 'open') return rankOf(standing) >= TRAINING ? ', with no end on record' : ''
  if (rankOf(standing) >= TRAINING) return `, through ${dayFromToday(through, today)}`
  return endedBy === undefined ? '' : `, until ${dayText(through)}`
}

/** The reason behind a line, in one or two sentences: what ends it, or why it is no or not on record. */
export function lineReasons(line: ToldLine, names: Names): string[] {
  const { standing, findings, endedBy } = line
  if (rankOf(standing) >= TRAINING) {
    return endedBy === undefined ? [] : sentences(endedBy.came, names)
  }
  return sentences(
    findings.filter(({ allows }) => allows === standing),
    names,
  )
}

/**
 * The same for a table: `On their own, up to moderately complex.` and `Through 11 July 2027, in 69 days: CPR.`; of what
 * is no or not on record, why.
 */
export function shortLineTexts(
  line: ToldLine,
  greatest: Complexity,
  today: CalendarDate | undefined,
  names: Names,
): string[] {
  const { standing, supervisors, through, endedBy, lapsedOn } = line
  if (rankOf(standing) < TRAINING) {
    const until = through === 'open' || endedBy === undefined ? '' : ` until ${dayText(through)}`
    const said =
      lapsedOn === undefined && until !== '' ? [`${capitalised(standingText(standing))}${until}.`] : []
    return [...said, ...lineReasons(line, names)]
  }
  const ends = joinedByAnd([...new Set((endedBy?.came ?? []).map((finding) => endWord(finding, names)))])
  const until =
    through === 'open'
      ? 'No end on record.'
      : `Through ${dayFromToday(through, today)}${ends === '' ? '' : `: ${ends}`}.`
  return [`${capitalised(standingText(standing, supervisors))}, ${reachText(greatest)}.`, until]
}

/** What ends a line, in a word or two; what has no short word in its sentence. */
function endWord(finding: Finding, names: Names): string {
  if (finding.kind === 'certificate-lapsed') return names.subject(finding.subject)
  if (finding.kind === 'card-no-longer-valid') return 'card'
  if (finding.kind === 'no-agreement') return 'agreement'
  if (finding.kind === 'suspended') return finding.form
  return findingSentence(finding, names).replace(/\.$/, '')
}

/** Up to which complexity a standing reaches: `up to moderately complex`, `however complex`. */
function reachText(greatest: Complexity): string {
  if (greatest === 'high') return 'however complex'
  return greatest === 'least' ? 'least complex only' : `up to ${complexityWords[greatest]}`
}

function sentences(findings: readonly Finding[], names: Names): string[] {
  return [...new Set(findings.map((finding) => findingSentence(finding, names)))]
}
