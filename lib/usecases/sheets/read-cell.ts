import type { CalendarDate } from '../../core/calendar/dates.ts'
import { daysInMonth } from '../../core/calendar/dates.ts'
import { foldedName } from '../../core/kernel/folded.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { CAPACITIES, DELIVERIES, HANDS } from '../../core/rulebooks/words.ts'
import { figuresOf, isoOf, yearFirst, type FigureOrder } from '../../core/sheets/figure-days.ts'
import type { CellReading, NamedList, WordList } from '../../core/sheets/sheet-kinds.ts'
import { joinedByOr } from '../../wording/lists.ts'
import { readDay } from '../../wording/read-day.ts'
import { readInches } from '../../wording/read-inches.ts'
import { readMonth } from '../../wording/read-month.ts'
import { capacityWords, deliveryWords } from '../../wording/work-words.ts'

/** What cells are read with: names of lists by how they are typed, the order of figures, the day it is. */
export type CellGround = {
  list: (of: NamedList, text: string) => readonly string[]
  order: FigureOrder | undefined
  today: CalendarDate
}

/** A cell that holds something, as its record keeps it, or a sentence that says what is wrong with it. */
export function readCell(text: string, reading: CellReading, ground: CellGround): Result<unknown, string> {
  switch (reading.kind) {
    case 'text':
    case 'person':
      return success(text)
    case 'day':
      return readSheetDay(text, ground, reading.isBirth === true)
    case 'last-day':
      return readLastDay(text, ground)
    case 'inches':
      return readInches(text)
    case 'whole':
      return wholeNumber(text, reading.most)
    case 'feet':
      return /^\d{1,3}(?:\.\d{1,2})?(?: *(?:ft|'))?$/.test(text)
        ? success(Number.parseFloat(text))
        : refusal('Feet are written in figures, for example 62.')
    case 'yes-no':
      return yesOrNo(text)
    case 'named':
      return oneOfList(text, reading.of, ground)
    case 'word':
      return oneWord(text, reading.of)
    case 'work-kind':
      return oneWorkKind(text)
    case 'work-kinds':
      return workKinds(text)
    case 'saw-kinds':
      return sawKinds(text)
  }
}

/** A day as a sheet holds it: as people type it, with its year first, or in figures alone once their order is known. */
export function readSheetDay(
  text: string,
  ground: CellGround,
  isBirth = false,
): Result<CalendarDate, string> {
  const figures = figuresOf(text)
  if (figures !== undefined && ground.order === undefined && isTwoDays(figures))
    return refusal(`“${text}” can be two different days. Say above how days in figures are meant.`)
  const read = readDay(
    figures === undefined ? (yearFirst(text) ?? text) : isoOf(figures, ground.order ?? orderOf(figures)),
  )
  if (!read.ok) return refusal(`“${text}”: ${read.problem}`)
  // Two digits of a year are of this century to all other days; nobody is born in a year to come.
  return isBirth && read.value > ground.today && /(?:^|\D)\d{2}$/.test(text)
    ? success(`19${read.value.slice(2)}` as CalendarDate)
    : read
}

function isTwoDays({ first, second }: { first: number; second: number }): boolean {
  return first <= 12 && second <= 12 && first !== second
}

/** Figures that can be one day only are read as that day, whatever order others have. */
function orderOf({ second }: { second: number }): FigureOrder {
  return second > 12 ? 'month-first' : 'day-first'
}

function readLastDay(text: string, ground: CellGround): Result<CalendarDate, string> {
  const month = readMonth(text)
  if (month === undefined) return readSheetDay(text, ground)
  return readDay(`${month.year}-${month.month}-${daysInMonth(month.year, month.month)}`)
}

function wholeNumber(text: string, most: number): Result<number, string> {
  const value = Number(text)
  return /^\d{1,9}$/.test(text) && value >= 1 && value <= most
    ? success(value)
    : refusal(`“${text}” must be a whole number from 1 to ${most}.`)
}

const YES: ReadonlySet<string> = new Set(['yes', 'y', 'true', 'x', '1', 'seen'])
const NO: ReadonlySet<string> = new Set(['no', 'n', 'false', '0', 'not seen'])

function yesOrNo(text: string): Result<boolean, string> {
  const typed = text.toLowerCase()
  if (YES.has(typed)) return success(true)
  if (NO.has(typed)) return success(false)
  return refusal(`“${text}” must be yes or no.`)
}

function oneOfList(text: string, of: NamedList, { list }: CellGround): Result<string, string> {
  const found = list(of, text)
  const [only] = found
  if (only === undefined) return refusal(`No ${LIST_WORDS[of]} on record is called “${text}”.`)
  return found.length === 1
    ? success(only)
    : refusal(
        `${found.length} are called “${text}”; write the number of the one that is meant: ${found.slice(0, 5).join(', ')}.`,
      )
}

const LIST_WORDS: Record<NamedList, string> = {
  organisations: 'organisation',
  units: 'unit',
  books: 'rule book',
  levels: 'level',
  subjects: 'kind of certificate',
  places: 'place',
  hitches: 'hitch',
}

const WORDS: Record<WordList, { words: readonly string[]; said: Readonly<Record<string, string>> }> = {
  capacities: { words: CAPACITIES, said: capacityWords },
  deliveries: { words: DELIVERIES, said: deliveryWords },
  hands: { words: HANDS, said: { one: 'one-person', two: 'two-person' } },
}

function oneWord(text: string, of: WordList): Result<string, string> {
  const { words, said } = WORDS[of]
  const typed = plainWord(text)
  const found = words.find((word) => [plainWord(word), plainWord(said[word] ?? '')].includes(typed))
  return found === undefined
    ? refusal(`“${text}” must be ${joinedByOr(words.map((word) => word.replaceAll('-', ' ')))}.`)
    : success(found)
}

/** A word without its article and hyphens. */
function plainWord(text: string): string {
  return foldedName(text.replace(/[-_]/g, ' ')).replace(/^an? /, '')
}

const BUCK = /^(?:b|buck|bucking|buck a log)$/
const FELL = /^(?:f|fell|felling|fell a tree)$/

function oneWorkKind(text: string): Result<string, string> {
  const typed = plainWord(text)
  if (BUCK.test(typed)) return success('bucking')
  if (FELL.test(typed)) return success('felling')
  return refusal(`“${text}” must be bucking or felling.`)
}

/** Several in one cell stand with a comma, a stroke, a plus, an ampersand or “and” between them. */
const BETWEEN = /\s*(?:[,;/+&]|\band\b)\s*/

function workKinds(text: string): Result<unknown, string> {
  const typed = plainWord(text)
  if (typed === 'not stated') return success('not-stated')
  if (typed === 'both') return success(['bucking', 'felling'])
  const read = typed.split(BETWEEN).map(oneWorkKind)
  return read.every((one) => one.ok)
    ? success([...new Set(read.map(({ value }) => value))].sort())
    : refusal(`“${text}” must be bucking, felling, both, or not stated.`)
}

function sawKinds(text: string): Result<unknown, string> {
  const typed = plainWord(text)
  if (typed === 'both') return success(['crosscut', 'chain-saw'])
  const found = typed.split(BETWEEN).map((word) => {
    if (/^crosscut(?: saw)?$/.test(word)) return 'crosscut'
    return /^(?:chain ?saw|power saw)$/.test(word) ? 'chain-saw' : undefined
  })
  return found.includes(undefined)
    ? refusal(`“${text}” must be crosscut, chain saw, or both.`)
    : success([...new Set(found)])
}
