import type { SubSpan } from '../../core/authority/answer.ts'
import type { Authority } from '../../core/authority/authority-index.ts'
import type { PersonIndex } from '../../core/authority/person-index.ts'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import { SAW_KINDS, WORK_KINDS, type Complexity } from '../../core/rulebooks/words.ts'
import { allLines, levelOfLine, type StandingLine } from './standing-line.ts'

/** One stratum of a person's authority: the complexities of a kind of work over which they stand alike. */
export type Stratum = StandingLine & {
  complexities: readonly Complexity[]
  /** The level that speaks today, with the card it stands on. */
  level?: { level: string; card: string }
}

/** A person's authority by work kind and saw kind: crosscut always, another saw where a card of theirs names it. */
export function strataOf(authority: Authority, person: PersonIndex, today: CalendarDate): Stratum[] {
  const named = new Set(person.cards.flatMap(({ card }) => card.sawKinds))
  const sawKinds = SAW_KINDS.filter((saw) => saw === 'crosscut' || named.has(saw))
  return sawKinds.flatMap((sawKind) =>
    WORK_KINDS.flatMap((workKind) =>
      joined(allLines(authority, person, { workKind, sawKind }, today)).map((stratum): Stratum => {
        const level = levelOfLine(authority, person.id, stratum.work, today)
        return level === undefined ? stratum : { ...stratum, level }
      }),
    ),
  )
}

/** Lines that follow each other and stand alike on every day shown are one stratum; the most complex speaks for it. */
function joined(lines: readonly StandingLine[]): (StandingLine & { complexities: Complexity[] })[] {
  const strata: (StandingLine & { complexities: Complexity[] })[] = []
  for (const line of lines) {
    const open = strata.at(-1)
    if (open !== undefined && isAlike(open, line)) {
      strata[strata.length - 1] = { ...line, complexities: [...open.complexities, line.work.complexity] }
    } else {
      strata.push({ ...line, complexities: [line.work.complexity] })
    }
  }
  return strata
}

function isAlike(left: StandingLine, right: StandingLine): boolean {
  return (
    left.through === right.through &&
    left.status === right.status &&
    JSON.stringify(left.spans.map(drawn)) === JSON.stringify(right.spans.map(drawn))
  )
}

/** What of a run of days a line shows. */
function drawn({ first, last, standing, findings }: SubSpan) {
  return [first, last, standing, findings.some(({ kind }) => kind === 'suspended')]
}
