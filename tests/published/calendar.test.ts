import { readFileSync } from 'node:fs'
import {
  addDays,
  addMonths,
  addYears,
  differenceInCalendarDays,
  differenceInYears,
  format,
  lastDayOfMonth as lastDayOfMonthByDateFns,
} from 'date-fns'
import { Temporal } from 'temporal-polyfill'
import { afterAll, describe, expect, it } from 'vitest'
import { anniversary, dayOfAge, lastDayOfMonth } from '../../lib/core/calendar/anniversaries.ts'
import { dateOf, daysInMonth, daysUntil, plusDays, type CalendarDate } from '../../lib/core/calendar/dates.ts'
import { printFigure } from '../figures.ts'

const PAIRS = 10_000
const SEED = 20_270_503

type Library = {
  source: string
  daysUntil: (from: string, to: string) => number
  plusDays: (from: string, days: number) => string
  plusYears: (from: string, years: number) => string
  plusMonths: (from: string, months: number) => string
  fullYears: (birth: string, on: string) => number
  lastDayOfMonth: (date: string) => string
}

function version(library: string): string {
  const file = new URL(`../../node_modules/${library}/package.json`, import.meta.url)
  const read = JSON.parse(readFileSync(file, 'utf8')) as { version: string }
  return `${library} ${read.version}`
}

const plain = (text: string): Temporal.PlainDate => Temporal.PlainDate.from(text)

const temporal: Library = {
  source: version('temporal-polyfill'),
  daysUntil: (from, to) => plain(from).until(plain(to), { largestUnit: 'day' }).days,
  plusDays: (from, days) => plain(from).add({ days }).toString(),
  plusYears: (from, years) => plain(from).add({ years }).toString(),
  plusMonths: (from, months) => plain(from).add({ months }).toString(),
  fullYears: (birth, on) => plain(birth).until(plain(on), { largestUnit: 'year' }).years,
  lastDayOfMonth: (date) => plain(date).with({ day: 31 }).toString(),
}

// date-fns counts in the time of the machine; noon keeps clear of every change of clocks.
const noon = (text: string): Date => new Date(`${text}T12:00:00`)
const written = (date: Date): string => format(date, 'yyyy-MM-dd')

const dateFns: Library = {
  source: version('date-fns'),
  daysUntil: (from, to) => differenceInCalendarDays(noon(to), noon(from)),
  plusDays: (from, days) => written(addDays(noon(from), days)),
  plusYears: (from, years) => written(addYears(noon(from), years)),
  plusMonths: (from, months) => written(addMonths(noon(from), months)),
  fullYears: (birth, on) => differenceInYears(noon(on), noon(birth)),
  lastDayOfMonth: (date) => written(lastDayOfMonthByDateFns(noon(date))),
}

/** Marsaglia's xorshift on 32 bits: the same numbers on every machine. */
function randomNumbers(seed: number): (below: number) => number {
  let state = seed
  return (below) => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    return (state >>> 0) % below
  }
}

/** Days of the kept years; one in eight is a 29 February or the end of a month, where counting goes wrong. */
function randomDate(next: (below: number) => number): CalendarDate {
  const year = 1900 + next(300)
  const month = next(16) === 0 ? 2 : 1 + next(12)
  const last = daysInMonth(year, month)
  const day = next(8) === 0 ? last : 1 + next(last)
  return dateOf(`${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`)
}

function pairs(): readonly (readonly [CalendarDate, CalendarDate])[] {
  const next = randomNumbers(SEED)
  return Array.from({ length: PAIRS }, () => [randomDate(next), randomDate(next)] as const)
}

/** Full years reached on a day, by the days on which ages are reached. */
function ageOn(birth: CalendarDate, day: CalendarDate): number {
  const years = Number(day.slice(0, 4)) - Number(birth.slice(0, 4))
  return dayOfAge(birth, years) <= day ? years : years - 1
}

const earlier = (left: CalendarDate, right: CalendarDate): CalendarDate => (left < right ? left : right)
const later = (left: CalendarDate, right: CalendarDate): CalendarDate => (left < right ? right : left)

type Row = {
  name: string
  ours: (left: CalendarDate, right: CalendarDate) => string | number
  theirs: (library: Library, left: CalendarDate, right: CalendarDate) => string | number
}

const years = (count: number): Row => ({
  name: `anniversary of ${count} years`,
  ours: (left) => anniversary(left, { years: count }),
  theirs: (library, left) => library.plusYears(left, count),
})

const ROWS: readonly Row[] = [
  {
    name: 'difference in days',
    ours: daysUntil,
    theirs: (library, left, right) => library.daysUntil(left, right),
  },
  {
    name: 'days added',
    ours: (left, right) => plusDays(left, daysUntil(left, right)),
    theirs: (library, left, right) => library.plusDays(left, daysUntil(left, right)),
  },
  years(1),
  years(2),
  years(3),
  {
    name: 'anniversary of 12 months',
    ours: (left) => anniversary(left, { months: 12 }),
    theirs: (library, left) => library.plusMonths(left, 12),
  },
  {
    name: 'age on a day',
    ours: (left, right) => ageOn(earlier(left, right), later(left, right)),
    theirs: (library, left, right) => library.fullYears(earlier(left, right), later(left, right)),
  },
  {
    name: 'age on a birthday and the day before',
    ours: (left) => `${ageOn(left, dayOfAge(left, 18))} ${ageOn(left, plusDays(dayOfAge(left, 18), -1))}`,
    theirs: (library, left) => {
      const day = dayOfAge(left, 18)
      return `${library.fullYears(left, day)} ${library.fullYears(left, plusDays(day, -1))}`
    },
  },
  {
    name: 'last day of the month',
    ours: (left) => lastDayOfMonth(Number(left.slice(0, 4)), Number(left.slice(5, 7))),
    theirs: (library, left) => library.lastDayOfMonth(left),
  },
]

const TABLE = [temporal, dateFns].flatMap((library) =>
  ROWS.map((row) => ({ source: library.source, name: row.name, row, library })),
)

describe('the calendar against two other libraries', () => {
  const tried = pairs()

  afterAll(() => {
    const libraries = `${temporal.source} and ${dateFns.source}`
    printFigure(
      `calendar: ${TABLE.length} rows of ${PAIRS} pairs of dates against ${libraries}, seed ${SEED}`,
    )
  })

  it.each(TABLE)('$source: $name', ({ row, library }) => {
    const differing = tried.flatMap(([left, right]) => {
      const ours = row.ours(left, right)
      const theirs = row.theirs(library, left, right)
      return ours === theirs ? [] : [{ left, right, ours, theirs }]
    })
    expect(differing.slice(0, 5)).toEqual([])
  })
})
