import { refusal, success, type Result } from '../../lib/core/kernel/result.ts'
import { FIGURE_ORDERS } from '../../lib/core/sheets/figure-days.ts'
import { SHEET_FIELDS } from '../../lib/core/sheets/sheet-fields.ts'
import { MATCH_BY, SHEET_KINDS } from '../../lib/core/sheets/sheet-kinds.ts'
import type { Meant, SheetSettings } from '../../lib/usecases/sheets/settings.schema.ts'
import { readDay } from '../../lib/wording/read-day.ts'
import { typedText } from '../_door/form-outcome.ts'
import type { FormProblem } from '../_parts/form-state.ts'
import { ATTESTED } from './attested.ts'

const MOST_ROW = 10_000_000

/** How a sheet is to be read, as it was typed on its page. */
export function typedSettings(typed: FormData): Result<SheetSettings, readonly FormProblem[]> {
  const problems: FormProblem[] = []
  const keys = new Set(SHEET_KINDS.flatMap((kind) => SHEET_FIELDS[kind].map(({ key }) => key)))
  const texts = (prefix: string) =>
    Object.fromEntries(
      [...keys].flatMap((key) => {
        const text = typedText(typed, `${prefix}.${key}`).trim()
        return text === '' ? [] : [[key, text]]
      }),
    )
  const everyRow = texts('every')
  const order = FIGURE_ORDERS.find((one) => one === typedText(typed, 'days'))
  const matchBy = MATCH_BY.filter((by) => typed.get(`matchBy.${by}`) !== null)
  const attest = typedAttest(typed, problems)
  const meant = typedMeant(typed)
  if (problems.length > 0) return refusal(problems)
  return success({
    columns: texts('column'),
    ...(Object.keys(everyRow).length === 0 ? {} : { everyRow }),
    ...(order === undefined ? {} : { days: order }),
    ...(matchBy.length === 0 ? {} : { matchBy }),
    ...(Object.keys(meant).length === 0 ? {} : { meant }),
    ...(attest === undefined ? {} : { attest }),
  })
}

/** Who is meant by each name; one tick confirms all names that one person alone has, where nothing else was said. */
function typedMeant(typed: FormData): Record<string, Meant> {
  const meant: Record<string, Meant> = {}
  const isAll = typed.get('meant.all') !== null
  for (const name of typed.keys()) {
    const row = /^(?:meant|only)\.(\d{1,8})$/.exec(name)?.[1]
    if (row === undefined || Object.hasOwn(meant, row)) continue
    const said = typedText(typed, `meant.${row}`)
    const only = typedText(typed, `only.${row}`)
    const answer = said === '' && isAll && only !== '' ? only : said
    if (answer === '') continue
    meant[row] =
      answer === 'new' || answer === 'left-out' ? { kind: answer } : { kind: 'person', person: answer }
  }
  return meant
}

/** The rows whose names the page asked about, whatever was answered. */
export function askedAbout(typed: FormData): number[] {
  return [...typed.keys()].flatMap((name) => {
    const row = /^meant\.(\d{1,8})$/.exec(name)?.[1]
    return row === undefined ? [] : [Number(row)]
  })
}

function typedAttest(typed: FormData, problems: FormProblem[]): SheetSettings['attest'] {
  const rows = (name: keyof typeof ATTESTED) => {
    const text = typedText(typed, name).trim()
    const read = readRows(text)
    if (!read.ok) problems.push({ field: name, message: `${ATTESTED[name]}: ${read.problem}` })
    return read.ok && read.value.length > 0 ? read.value : undefined
  }
  const ofAge = rows('attest.ofAge')
  const agreement = rows('attest.agreement')
  const seen = rows('attest.seen')
  if (ofAge === undefined && agreement === undefined && seen === undefined) return undefined
  const by = typedText(typed, 'attest.by').trim()
  if (by === '') problems.push({ field: 'attest.by', message: 'Who attests it: write the name.' })
  const typedDay = typedText(typed, 'attest.through')
  const through = agreement === undefined ? undefined : readDay(typedDay)
  if (through?.ok === false)
    problems.push({ field: 'attest.through', message: `In force through: ${through.problem}` })
  return {
    by,
    ...(ofAge === undefined ? {} : { ofAge }),
    ...(seen === undefined ? {} : { seen }),
    ...(agreement === undefined || through?.ok !== true
      ? {}
      : { agreement: { through: through.value, rows: agreement } }),
  }
}

/** Numbers of rows as people write them: `2-14, 20`. */
function readRows(text: string): Result<number[], string> {
  if (text === '') return success([])
  const rows = new Set<number>()
  for (const part of text.split(/[,;\s]+/).filter((each) => each !== '')) {
    const found = /^(\d{1,8})(?:[-–](\d{1,8}))?$/.exec(part)
    const first = Number(found?.[1])
    const last = Number(found?.[2] ?? found?.[1])
    if (found === null || first < 1 || last < first || last > MOST_ROW || last - first > 20_000)
      return refusal(`write the numbers of rows like 2-14, 20; “${part}” is none.`)
    for (let row = first; row <= last; row += 1) rows.add(row)
  }
  return success([...rows])
}

/** The same the other way: numbers that follow each other stand as one range. */
export function rowsText(rows: readonly number[]): string {
  const sorted = [...rows].sort((left, right) => left - right)
  const ranges: [number, number][] = []
  for (const row of sorted) {
    const last = ranges.at(-1)
    if (last?.[1] === row - 1) last[1] = row
    else ranges.push([row, row])
  }
  return ranges.map(([first, last]) => (first === last ? `${first}` : `${first}-${last}`)).join(', ')
}
