/** How days in figures alone are meant: `2/3/27` is 2 March day first and 3 February month first. */
export const FIGURE_ORDERS = ['day-first', 'month-first'] as const
export type FigureOrder = (typeof FIGURE_ORDERS)[number]

const FIGURES = /^(\d{1,2})\s*[./-]\s*(\d{1,2})\s*[./-]\s*(\d{4}|\d{2})$/
const YEAR_FIRST = /^(\d{4})\s*[./-]\s*(\d{1,2})\s*[./-]\s*(\d{1,2})(?:[T ]00:00(?::00(?:\.0+)?)?Z?)?$/

/** What a day in figures alone may mean. */
export type FigureDay = { year: number; first: number; second: number }

/** The figures of a day written in figures alone, or nothing where it is written otherwise. */
export function figuresOf(text: string): FigureDay | undefined {
  const found = FIGURES.exec(text.trim())
  if (found === null) return undefined
  const [, first, second, year = ''] = found
  return {
    year: year.length === 2 ? 2000 + Number(year) : Number(year),
    first: Number(first),
    second: Number(second),
  }
}

/** A day with its year first, which is read one way only, as `YYYY-MM-DD`; nothing where it is written otherwise. */
export function yearFirst(text: string): string | undefined {
  const found = YEAR_FIRST.exec(text.trim())
  return found === null ? undefined : isoText(Number(found[1]), Number(found[2]), Number(found[3]))
}

/** A day in figures as `YYYY-MM-DD`; whether there is such a day is for its reader to say. */
export function isoOf({ year, first, second }: FigureDay, order: FigureOrder): string {
  return order === 'day-first' ? isoText(year, second, first) : isoText(year, first, second)
}

function isoText(year: number, month: number, day: number): string {
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`
}

/** What the days in figures of a sheet say of their order. */
export type FigureEvidence = {
  /** How many could be two different days. */
  ambiguous: number
  /** The first of them, as it stands. */
  example?: string
  /** The orders in which every one is a day of some month. */
  possible: readonly FigureOrder[]
}

/** Looks through cells for days in figures alone. Where none could be two days, nothing need be asked. */
export function figureEvidence(cells: Iterable<string>): FigureEvidence {
  let ambiguous = 0
  let example: string | undefined
  let mayBeDayFirst = true
  let mayBeMonthFirst = true
  for (const cell of cells) {
    const found = figuresOf(cell)
    if (found === undefined) continue
    if (found.first > 12) mayBeMonthFirst = false
    if (found.second > 12) mayBeDayFirst = false
    if (found.first > 12 || found.second > 12 || found.first === found.second) continue
    ambiguous += 1
    example ??= cell
  }
  const possible = FIGURE_ORDERS.filter((order) => (order === 'day-first' ? mayBeDayFirst : mayBeMonthFirst))
  return { ambiguous, possible, ...(example === undefined ? {} : { example }) }
}
