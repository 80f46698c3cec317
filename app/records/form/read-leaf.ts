import { daysInMonth } from '../../../lib/core/calendar/dates.ts'
import { foldedName } from '../../../lib/core/kernel/folded.ts'
import { refusal, success, type Result } from '../../../lib/core/kernel/result.ts'
import type { Named, RecordChoices } from '../../../lib/usecases/records/record-choices.ts'
import { readDay } from '../../../lib/wording/read-day.ts'
import { readInches } from '../../../lib/wording/read-inches.ts'
import { readMonth } from '../../../lib/wording/read-month.ts'
import { typedText } from '../../_door/form-outcome.ts'
import type { ChoiceList, Leaf } from './parts.ts'

/** What a field holds, nothing where nothing was typed, or a sentence that says what is wrong with it. */
type Read = Result<unknown, string>

/** How many lines of one field are read. */
const MOST_LINES = 200

/** Reads one thing that was typed as what its record holds. */
export function readLeaf(leaf: Leaf, name: string, typed: FormData, choices: RecordChoices): Read {
  if (leaf.kind === 'some') return readSome(leaf, name, typed)
  const text = typedText(typed, name).trim()
  if (text === '') return success(undefined)
  switch (leaf.kind) {
    case 'text':
    case 'long-text':
    case 'one':
      return success(text)
    case 'day':
      return leaf.isLast === true ? readLastDay(text) : readDay(text)
    case 'inches':
      return readInches(text)
    case 'number':
      return /^\d{1,9}(?:\.\d{1,4})?$/.test(text)
        ? success(Number(text))
        : refusal('This is written in figures, for example 12.')
    case 'degrees':
      return /^-?\d{1,3}(?:\.\d{1,8})?$/.test(text)
        ? success(Number(text))
        : refusal('Degrees are written in figures, for example 45.25 or -114.5.')
    case 'yes-no':
      return success(text === 'yes')
    case 'named':
      return meant(text, leaf.of, choices)
    case 'lines':
      return readLines(text, leaf.of, choices)
  }
}

function readSome(leaf: Extract<Leaf, { kind: 'some' }>, name: string, typed: FormData): Read {
  const chosen = leaf.of.map(({ value }) => value).filter((value) => typed.get(`${name}.${value}`) !== null)
  const { instead } = leaf
  if (instead === undefined || typed.get(`${name}.${instead.value}`) === null)
    return success(chosen.length === 0 ? undefined : chosen)
  return chosen.length === 0
    ? success(instead.value)
    : refusal(`“${instead.label}” stands alone: take it away, or the others.`)
}

/** A day, or the last one of a month that stands alone, as cards and certificates print it. */
function readLastDay(text: string): Read {
  const month = readMonth(text)
  if (month === undefined) return readDay(text)
  return readDay(`${month.year}-${month.month}-${daysInMonth(month.year, month.month)}`)
}

function readLines(text: string, of: ChoiceList | undefined, choices: RecordChoices): Read {
  const lines = text
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '')
  if (lines.length > MOST_LINES) return refusal(`At most ${MOST_LINES} lines are read.`)
  if (of === undefined) return success(lines)
  const read = lines.map((line) => meant(line, of, choices))
  const [first] = read.flatMap((one) => (one.ok ? [] : [one.problem]))
  return first === undefined ? success(read.flatMap((one) => (one.ok ? [one.value] : []))) : refusal(first)
}

/** How many that share a name are listed. */
const MOST_NAMED = 5

/** The id of what was typed by its name or its id. */
export function meant(text: string, of: ChoiceList, choices: RecordChoices): Result<string, string> {
  const all: readonly Named[] = choices[of]
  const byId = all.find(({ id }) => id === text)
  if (byId !== undefined) return success(byId.id)
  const wanted = foldedName(text)
  const whole = all.filter(({ name }) => foldedName(name) === wanted)
  // Two who share a name are shown as `name (id)`: the name alone is theirs together.
  const found =
    whole.length > 0 ? whole : all.filter(({ id, name }) => foldedName(name) === `${wanted} (${id})`)
  const [only] = found
  if (only === undefined)
    return refusal(`Nothing within your reach is called “${text}”; write the name or the id as on record.`)
  if (found.length === 1) return success(only.id)
  const ids = found.slice(0, MOST_NAMED).map(({ id }) => id)
  return refusal(
    `${found.length} are called “${text}”; write the id of the one who is meant: ${ids.join(', ')}.`,
  )
}
