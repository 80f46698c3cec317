import { readDate, type CalendarDate, FIRST_YEAR, LAST_YEAR } from '../core/calendar/dates.ts'
import { readInstant } from '../core/calendar/instants.ts'
import type { Inches } from '../core/kernel/measures.ts'
import { nearestName } from '../core/kernel/nearest-name.ts'
import { refusal, success, type Result } from '../core/kernel/result.ts'
import type { KnownMoment } from '../core/program/known.ts'
import {
  COMPLEXITIES,
  HANDS,
  SAW_KINDS,
  WORK_KINDS,
  type Complexity,
  type Hands,
  type SawKind,
  type WorkKind,
} from '../core/rulebooks/words.ts'
import { joinedByAnd, joinedByOr } from '../wording/lists.ts'
import type { Given, OptionSpecs } from './arguments.ts'
import { misuse, type Refusal } from './outcome.ts'
import { printableLine } from './printable.ts'
import { readInches } from '../wording/read-inches.ts'

/** The options that say as of when: shared by every command that answers from a program. */
export const TIME_OPTIONS = {
  'known-at': {
    value: 'N|INSTANT|DAY',
    says: 'answer from what was on record at an entry, a moment (UTC) or the end of a day (of the program’s time zone)',
  },
  today: { value: 'DAY', says: 'the day remedies count from (else today, in the program’s time zone)' },
} as const satisfies OptionSpecs

/** The options of a question about one piece of work. */
export const QUESTION_OPTIONS = {
  work: { value: WORK_KINDS.join('|'), says: 'cutting felled or fallen wood, or standing trees' },
  diameter: { value: 'IN', says: 'inches across, like 22, 22.5 or 22 1/2' },
  complexity: { value: COMPLEXITIES.join('|'), says: 'how complex the log or tree is' },
  saw: { value: SAW_KINDS.join('|'), says: 'the kind of saw (crosscut unless said)' },
  from: { value: 'DAY', says: 'first day of the work, YYYY-MM-DD' },
  through: { value: 'DAY', says: 'last day of the work, that day included' },
  hands: { value: HANDS.join('|'), says: 'one or two people on the saw' },
  species: { value: 'NAME', says: 'the species that is cut' },
  place: { value: 'ID', says: 'where the work is (an id or an exact name)' },
  item: { value: 'ID', says: 'a log, tree or expected work on record, instead of the work in words' },
  person: { value: 'ID', says: 'ask about one person (an id or an exact name)' },
  company: { value: 'ID,…', says: 'who is there: also answers who supervises whom' },
  ...TIME_OPTIONS,
} as const satisfies OptionSpecs

/** As of when somebody asks. */
export type TimeWords = { knownAt?: KnownMoment; today?: CalendarDate }

/** The work as stated in words; the place is not yet looked up. */
export type StatedWork = {
  workKind: WorkKind
  diameter: Inches
  complexity: Complexity
  hands?: Hands
  species?: string
  place?: string
}

/** A question as it stood on the command line: values read, names not yet looked up in the program. */
export type QuestionWords = TimeWords & {
  about:
    | { stated: StatedWork; from: CalendarDate; through: CalendarDate }
    | {
        item: string
        from?: CalendarDate
        through?: CalendarDate
      }
  sawKind: SawKind
  person?: string
  company?: readonly string[]
}

/** What an item of the record says itself, and a question about one may not say again. */
const SAID_BY_ITEM = ['work', 'diameter', 'complexity', 'hands', 'species', 'place'] as const

/** Reads the options of a question; every misuse is said at once. */
export function readQuestionWords(given: Given): Result<QuestionWords, Refusal> {
  const read = new OptionReader(given)
  const item = given.values.get('item')
  const sawKind = read.oneOf('saw', SAW_KINDS) ?? 'crosscut'
  const from = read.day('from')
  const through = read.day('through')
  if (from !== undefined && through !== undefined && through < from) {
    read.faults.push(`--through ${through} lies before --from ${from}.`)
  }
  const rest = {
    sawKind,
    ...read.time(),
    ...present('person', given.values.get('person')),
    ...present('company', read.list('company')),
  }
  if (item !== undefined) {
    const twice = SAID_BY_ITEM.filter((name) => given.values.has(name)).map((name) => `--${name}`)
    if (twice.length > 0) {
      const them = twice.length === 1 ? 'it is' : 'they are'
      read.faults.push(`--item says ${joinedByAnd(twice)} already, so ${them} not given beside it.`)
    }
    if (read.faults.length > 0) return misuse(...read.faults)
    return success({ about: { item, ...present('from', from), ...present('through', through) }, ...rest })
  }
  const workKind = read.oneOf('work', WORK_KINDS)
  const diameter = read.inches('diameter')
  const complexity = read.oneOf('complexity', COMPLEXITIES)
  const hands = read.oneOf('hands', HANDS)
  for (const name of ['work', 'diameter', 'complexity', 'from', 'through'] as const) {
    if (!given.values.has(name)) read.faults.push(`--${name} ${QUESTION_OPTIONS[name].value} is missing.`)
  }
  if (
    read.faults.length > 0 ||
    workKind === undefined ||
    diameter === undefined ||
    complexity === undefined ||
    from === undefined ||
    through === undefined
  ) {
    return misuse(...read.faults)
  }
  const stated: StatedWork = {
    workKind,
    diameter,
    complexity,
    ...present('hands', hands),
    ...present('species', given.values.get('species')),
    ...present('place', given.values.get('place')),
  }
  return success({ about: { stated, from, through }, ...rest })
}

/** Reads the options that say as of when. */
export function readTimeWords(given: Given): Result<TimeWords, Refusal> {
  const read = new OptionReader(given)
  const time = read.time()
  return read.faults.length > 0 ? misuse(...read.faults) : success(time)
}

/** Reads the kind of saw, crosscut unless it is said. */
export function readSawKind(given: Given): Result<SawKind, Refusal> {
  const read = new OptionReader(given)
  const sawKind = read.oneOf('saw', SAW_KINDS) ?? 'crosscut'
  return read.faults.length > 0 ? misuse(...read.faults) : success(sawKind)
}

/** Reads single options and collects what is wrong with them. */
class OptionReader {
  readonly faults: string[] = []

  constructor(private readonly given: Given) {}

  oneOf<Word extends string>(name: string, words: readonly Word[]): Word | undefined {
    const text = this.given.values.get(name)
    if (text === undefined) return undefined
    const word = words.find((known) => known === text)
    if (word === undefined) {
      const nearest = nearestName(text, words)
      const suggestion = nearest === undefined ? '' : ` Is ${nearest} meant?`
      this.faults.push(`--${name} is ${joinedByOr(words)}, not “${printableLine(text)}”.${suggestion}`)
    }
    return word
  }

  day(name: string): CalendarDate | undefined {
    const text = this.given.values.get(name)
    if (text === undefined) return undefined
    const day = readDay(text)
    if (day.ok) return day.value
    this.faults.push(`--${name} “${printableLine(text)}”: ${day.problem}`)
    return undefined
  }

  inches(name: string): Inches | undefined {
    const text = this.given.values.get(name)
    if (text === undefined) return undefined
    const inches = readInches(text)
    if (inches.ok) return inches.value
    this.faults.push(`--${name} “${printableLine(text)}”: ${inches.problem}`)
    return undefined
  }

  list(name: string): readonly string[] | undefined {
    const text = this.given.values.get(name)
    if (text === undefined) return undefined
    const parts = text.split(',').map((part) => part.trim())
    if (parts.every((part) => part !== '')) return parts
    this.faults.push(`--${name} is ids with one comma between them, like anna-lind,bo-marsh.`)
    return undefined
  }

  time(): TimeWords {
    return { ...present('knownAt', this.moment('known-at')), ...present('today', this.day('today')) }
  }

  private moment(name: string): KnownMoment | undefined {
    const text = this.given.values.get(name)
    if (text === undefined) return undefined
    if (/^\d{1,9}$/.test(text)) return { n: Number(text) }
    if (text.includes('T')) {
      const instant = readInstant(text)
      if (instant !== undefined) return { instant }
      const inUtc = [`${text}Z`, `${text}:00Z`].find((moment) => readInstant(moment) !== undefined)
      this.faults.push(
        `--${name} “${printableLine(text)}”: A moment is written in UTC and ends with Z: ${inUtc ?? '2027-04-14T16:40:00Z'}.`,
      )
      return undefined
    }
    const day = readDay(text)
    if (day.ok) return { day: day.value }
    this.faults.push(
      `--${name} “${printableLine(text)}”: Known-at is the number of an entry, a moment in UTC or a day. ${day.problem}`,
    )
    return undefined
  }
}

function readDay(text: string): Result<CalendarDate, string> {
  const read = readDate(text)
  if ('date' in read) return success(read.date)
  const problems = {
    shape: 'A day is written YYYY-MM-DD.',
    'no-such-day': 'There is no such day.',
    'outside-years': `A day lies in the years ${FIRST_YEAR} to ${LAST_YEAR}.`,
  }
  return refusal(problems[read.fault])
}

function present<Name extends string, Value>(
  name: Name,
  value: Value | undefined,
): { [Key in Name]?: Value } {
  return value === undefined ? {} : ({ [name]: value } as { [Key in Name]?: Value })
}
