import { askBriefly, openRecords } from '../../core/authority/ask.ts'
import type { Authority } from '../../core/authority/authority-index.ts'
import type { Records } from '../../core/authority/records.ts'
import { plusDays, type CalendarDate } from '../../core/calendar/dates.ts'
import type { Standing } from '../../core/rulebooks/standing.ts'
import { COMPLEXITIES, WORK_KINDS, type Complexity, type WorkKind } from '../../core/rulebooks/words.ts'
import type { Lapse } from './holdings.ts'
import { LISTED_SAW } from './people-rows.ts'
import { usualWork, workOf } from './usual-work.ts'

/** Something of a person that lapses. */
export type LapseOf = Lapse & { person: string }

/** What goes with a lapse: for a kind of work, from the day after, what somebody would have been and what they are. */
export type TakenAway = {
  workKind: WorkKind
  complexities: readonly Complexity[]
  from: Standing
  to: Standing
}

/** How many days longer something holds where it is asked what its lapse takes away. */
const LONGER = 400

/**
 * What each lapse takes away by itself: the standings of the day after, beside those of the same records with this one
 * thing going on. Standing never depends on the company, so the records of those asked about are enough.
 */
export function takenAway(
  records: Records,
  authority: Authority,
  lapses: readonly LapseOf[],
  today: CalendarDate,
): readonly (readonly TakenAway[])[] {
  const own = recordsOf(records, new Set(lapses.map(({ person }) => person)))
  const found = new Map<LapseOf, readonly TakenAway[]>()
  // Of each person one thing at a time goes on, of all people together.
  for (const round of rounds(lapses)) {
    const longer = openRecords(goingOn(own, round))
    for (const lapse of round) found.set(lapse, differences(authority, longer, lapse, today))
  }
  return lapses.map((lapse) => found.get(lapse) ?? [])
}

/** A person's records as they would be asked about if these things had gone on, for so many days past their last. */
export function asIfRenewed(
  records: Records,
  person: string,
  lapses: readonly Lapse[],
  days: number,
): Authority {
  const own = lapses.map((lapse) => ({ ...lapse, person }))
  return openRecords(goingOn(recordsOf(records, new Set([person])), own, days))
}

function rounds(lapses: readonly LapseOf[]): readonly (readonly LapseOf[])[] {
  const sorted: LapseOf[][] = []
  const counts = new Map<string, number>()
  for (const lapse of lapses) {
    const at = counts.get(lapse.person) ?? 0
    counts.set(lapse.person, at + 1)
    sorted[at] = [...(sorted[at] ?? []), lapse]
  }
  return sorted
}

function recordsOf(records: Records, people: ReadonlySet<string>): Records {
  const of = <Fact extends { person: string }>(facts: readonly Fact[]) =>
    facts.filter(({ person }) => people.has(person))
  return {
    ...records,
    people: records.people.filter(({ id }) => people.has(id)),
    memberships: of(records.memberships),
    permissions: of(records.permissions),
    certificates: of(records.certificates),
    designations: of(records.designations),
    cards: of(records.cards),
  }
}

/** The same records with these things going on past their last days. */
function goingOn(records: Records, lapses: readonly LapseOf[], days = LONGER): Records {
  const longer = <Fact extends { person: string; lastDay?: CalendarDate }>(
    facts: readonly Fact[],
    isIt: (fact: Fact, lapse: LapseOf) => boolean,
  ) =>
    facts.map((fact) => {
      const lapse = lapses.find((one) => one.person === fact.person && isIt(fact, one))
      return lapse !== undefined ? { ...fact, lastDay: plusDays(lapse.last, days) } : fact
    })
  return {
    ...records,
    // A decision that ends a card stays: only its days go on.
    cards: longer(records.cards, ({ id }, { what }) => what.kind === 'card' && what.card === id),
    certificates: longer(
      records.certificates,
      ({ subject, lastDay }, { what, last }) =>
        what.kind === 'certificate' && what.subject === subject && lastDay === last,
    ),
    memberships: longer(
      records.memberships,
      ({ organisation, lastDay }, { what, last }) =>
        what.kind === 'agreement' && what.organisation === organisation && lastDay === last,
    ),
    permissions: longer(
      records.permissions,
      ({ lastDay }, { what, last }) => what.kind === 'permission' && lastDay === last,
    ),
    designations: longer(
      records.designations,
      ({ role, lastDay }, { what, last }) =>
        what.kind === 'designation' && what.role === role && lastDay === last,
    ),
  }
}

/** Which standings of the day after a last day differ between two ways in which records may stand. */
export function differences(
  authority: Authority,
  longer: Authority,
  { person, last }: Pick<LapseOf, 'person' | 'last'>,
  today: CalendarDate,
): readonly TakenAway[] {
  const index = authority.person(person)
  if (index === undefined) return []
  const usual = usualWork(authority, index, today)
  const day = plusDays(last, 1)
  const alike = new Map<string, TakenAway>()
  for (const workKind of WORK_KINDS)
    for (const complexity of COMPLEXITIES) {
      const work = { ...workOf(usual, { workKind, sawKind: LISTED_SAW }), complexity }
      const asked = { work, first: day, last: day, today, persons: [person] }
      const [is] = askBriefly(authority, asked)
      const [was] = askBriefly(longer, asked)
      if (is === undefined || was === undefined || is.standing === was.standing) continue
      const key = `${workKind} ${was.standing} ${is.standing}`
      const known = alike.get(key)
      alike.set(key, {
        workKind,
        complexities: [...(known?.complexities ?? []), complexity],
        from: was.standing,
        to: is.standing,
      })
    }
  return [...alike.values()]
}
