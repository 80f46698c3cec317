import { z } from 'zod'
import { isInReach, peopleInReach } from '../../access/reach.ts'
import { plusDays } from '../../core/calendar/dates.ts'
import { idField } from '../../core/kernel/fields.schema.ts'
import { success } from '../../core/kernel/result.ts'
import { recordsAt } from '../../core/program/known.ts'
import { authorityAt } from '../authority/known-authority.ts'
import { wordsOf } from '../authority/known-words.ts'
import { belonging } from '../door/admit.ts'
import { query } from '../door/use-case.ts'
import { belongsToday, type Belongs } from './belongs.ts'
import { lapsesOf, type Lapse } from './holdings.ts'
import { takenAway, type TakenAway } from './taken-away.ts'

/** By what the list may be ordered. */
export const AHEAD_SORTS = ['last', 'name', 'unit', 'what'] as const
/** What may be listed alone. */
export const AHEAD_KINDS = ['card', 'certificate', 'other'] as const
export type AheadKind = (typeof AHEAD_KINDS)[number]

/** How many days ahead may be looked at most, and are unless it is said otherwise. */
export const MOST_AHEAD = 457
export const USUAL_AHEAD = 183

/** How many rows one page holds. */
const AT_ONCE = 50

/** Something of somebody that lapses. */
export type AheadRow = Belongs & Lapse & { person: string; name: string; kind: AheadKind }

/** A month in which something lapses, with how much of each kind: `2027-06`. */
export type AheadMonth = { month: string; counts: Readonly<Record<AheadKind, number>> }

/** What lapses of people within reach in the time ahead, in order, with what each lapse takes away by itself. */
export const lapsesAhead = query({
  name: 'people/lapses-ahead',
  permission: 'read-record',
  input: z.strictObject({
    unit: z.exactOptional(idField),
    kind: z.exactOptional(z.enum(AHEAD_KINDS)),
    /** A month alone: `2027-06`. */
    month: z.exactOptional(z.string().regex(/^\d{4}-\d{2}$/, 'a month is written like 2027-06')),
    /** Through how many days ahead. */
    days: z.exactOptional(z.int().min(1).max(MOST_AHEAD)),
    sort: z.exactOptional(z.enum(AHEAD_SORTS)),
    descending: z.exactOptional(z.boolean()),
    page: z.exactOptional(z.int().min(1)),
    /** All rows at once, to be taken out. */
    whole: z.exactOptional(z.literal(true)),
  }),
  load: (world, asked, actor) => {
    const { authority } = authorityAt(world.snapshot, undefined)
    const { names } = wordsOf(authority, world.snapshot)
    const reach =
      actor === undefined ? 'everybody' : peopleInReach(actor, 'read-record', belonging(world), world.today)
    const through = plusDays(world.today, asked.days ?? USUAL_AHEAD)
    const all = authority.people
      .filter(({ id }) => isInReach(reach, id))
      .flatMap((index) => {
        const who = { person: index.id, name: names.person(index.id) }
        const belongs = belongsToday(index.memberships, world.today)
        return lapsesOf(index, world.today)
          .filter(({ last }) => last <= through)
          .map((lapse): AheadRow => ({ ...who, ...belongs, ...lapse, kind: kindOf(lapse) }))
      })
    const fitting = all.filter(
      ({ units, kind, last }) =>
        (asked.unit === undefined || units.includes(asked.unit)) &&
        (asked.kind === undefined || kind === asked.kind) &&
        (asked.month === undefined || last.startsWith(asked.month)),
    )
    return success({ asked, all, fitting, names, authority, through })
  },
  about: ({ fitting }) => ({
    kind: 'people',
    people: [...new Set(fitting.map(({ person }) => person))],
    asList: true,
  }),
  answer: ({ asked, all, fitting, names, authority, through }, { snapshot, today }) => {
    const rows = inOrder(fitting, asked, names)
    const atOnce = asked.whole === true ? Math.max(1, rows.length) : AT_ONCE
    const pages = Math.max(1, Math.ceil(rows.length / atOnce))
    const page = Math.min(asked.page ?? 1, pages)
    const cut = rows.slice((page - 1) * atOnce, page * atOnce)
    const lost = takenAway(recordsAt(snapshot.program, snapshot.n), authority, cut, today)
    return {
      today,
      through,
      names,
      rows: cut.map((row, at): AheadRow & { lost: readonly TakenAway[] } => ({
        ...row,
        lost: lost[at] ?? [],
      })),
      page: {
        page,
        pages,
        from: cut.length === 0 ? 0 : (page - 1) * atOnce + 1,
        through: (page - 1) * atOnce + cut.length,
        all: rows.length,
      },
      months: monthsOf(
        asked.unit === undefined ? all : all.filter(({ units }) => units.includes(asked.unit ?? '')),
      ),
      units: [...new Set(all.flatMap(({ units }) => units))]
        .map((id) => ({ id, name: names.place(id) }))
        .sort((one, other) => one.name.localeCompare(other.name, 'en')),
    }
  },
  looked: ({ rows }, { page: _page, ...asked }) => ({ question: { ahead: asked }, count: rows.length }),
})

/** Cards and certificates apart, and beside them agreements, designations and permissions. */
function kindOf({ what }: Lapse): AheadKind {
  return what.kind === 'card' || what.kind === 'certificate' ? what.kind : 'other'
}

function monthsOf(rows: readonly AheadRow[]): readonly AheadMonth[] {
  const months = new Map<string, Record<AheadKind, number>>()
  for (const { last, kind } of rows) {
    const month = last.slice(0, 7)
    const counts = months.get(month) ?? { card: 0, certificate: 0, other: 0 }
    counts[kind] += 1
    months.set(month, counts)
  }
  return [...months]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([month, counts]) => ({ month, counts }))
}

type Order = { sort?: (typeof AHEAD_SORTS)[number]; descending?: boolean }
type NamesOfRows = { place: (id: string) => string }

const collator = new Intl.Collator('en', { numeric: true })

function inOrder(rows: readonly AheadRow[], { sort = 'last', descending }: Order, names: NamesOfRows) {
  const keyOf: Record<(typeof AHEAD_SORTS)[number], (row: AheadRow) => string> = {
    last: ({ last }) => last,
    name: ({ name }) => name,
    unit: ({ units }) => units.map(names.place).join(', '),
    what: ({ kind, what }) => `${kind} ${what.kind} ${'subject' in what ? what.subject : ''}`,
  }
  const key = keyOf[sort]
  const turn = descending === true ? -1 : 1
  return [...rows].sort(
    (one, other) =>
      turn * collator.compare(key(one), key(other)) ||
      collator.compare(one.last, other.last) ||
      collator.compare(one.name, other.name),
  )
}
