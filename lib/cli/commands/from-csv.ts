import { renameSync, rmSync, writeFileSync } from 'node:fs'
import { dateIn, type Instant } from '../../core/calendar/instants.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { latestEntry } from '../../core/program/known.ts'
import { MOST_BYTES as MOST_MAP_BYTES } from '../../core/program/json-text.ts'
import type { Program } from '../../core/program/program.schema.ts'
import { readProgram } from '../../core/program/read-program.ts'
import { writeProgram } from '../../core/program/write-program.ts'
import { proposedColumns } from '../../core/sheets/match-columns.ts'
import { SHEET_KINDS, type SheetKind } from '../../core/sheets/sheet-kinds.ts'
import { MOST_BYTES, type Sheet } from '../../core/sheets/sheet.ts'
import { fileFaultSentence, sheetKindWords } from '../../wording/sheets.ts'
import type { SheetPlan } from '../../usecases/sheets/plan.ts'
import type { SheetSettings } from '../../usecases/sheets/settings.schema.ts'
import type { DatabaseCommand } from '../command.ts'
import { PROGRAM } from '../help.ts'
import { brokenFile, readProgramFile, readText } from '../open-program.ts'
import { misuse, refused, type Outcome, type Refusal } from '../outcome.ts'
import { printableLine, printableText } from '../printable.ts'
import { onlyOperand } from '../question.ts'
import { readFileBytes } from '../read-file.ts'
import { systemWords } from '../system-words.ts'

const MOST_SHOWN = 200

/** The rows of a sheet into a program file. */
export const fromCsvCommand: DatabaseCommand = {
  name: 'from-csv',
  summary: 'the rows of a sheet into a program file, as one entry more',
  usage: ['from-csv SHEET --as KIND [--map MAP] --into FILE [--by NAME] [--leave-behind]'],
  about: [
    `SHEET is CSV (commas, semicolons or tabs) or XLSX; KIND says what stands in it: ${SHEET_KINDS.join(', ')}.`,
    'MAP is a file of JSON: “columns” names for each field the heading of its column, “everyRow” what stands in all rows, “days” day-first or month-first, “matchBy” by what a person is found, “meant” who is meant by the row of a number. Without it columns are found by their headings.',
    'FILE is a program file. All of it comes in, or nothing: rows that cannot be are told by row and column, and so are names that may mean somebody on record. With --leave-behind the others come in.',
  ],
  options: {
    as: { value: 'KIND', says: 'what stands in the sheet' },
    map: { value: 'MAP', says: 'which column is what, as JSON' },
    into: { value: 'FILE', says: 'the program file that gets one entry more' },
    by: { value: 'NAME', says: 'who brings it in' },
    'leave-behind': { says: 'leave behind what cannot be brought in' },
  },
  examples: [`${PROGRAM} from-csv people.csv --as people --into program.json`],
  run: async (given, io) => {
    const path = onlyOperand(given, 'SHEET')
    if (!path.ok) return path
    const kind = SHEET_KINDS.find((known) => known === given.values.get('as'))
    if (kind === undefined) return misuse(`Say by --as what stands in it: ${SHEET_KINDS.join(', ')}.`)
    const into = given.values.get('into')
    if (into === undefined) return misuse('Name the program file by --into FILE.')
    const asked: Asked = {
      ...{ path: path.value, kind, into, now: io.now(), by: given.values.get('by') ?? 'the command line' },
      ...{ map: given.values.get('map'), leavesBehind: given.flags.has('leave-behind') },
    }
    return fromCsv(asked)
  },
}

type Asked = {
  path: string
  kind: SheetKind
  into: string
  map: string | undefined
  by: string
  leavesBehind: boolean
  now: Instant
}

async function fromCsv(asked: Asked): Promise<Outcome> {
  const sheet = await readSheet(asked.path)
  if (!sheet.ok) return sheet
  const settings = await readMap(asked, sheet.value)
  if (!settings.ok) return settings
  const read = readProgramFile(asked.into)
  if (!read.ok)
    return 'unread' in read.problem
      ? refusal(read.problem.unread)
      : brokenFile(asked.into, read.problem.problems)
  const program = read.value
  const n = latestEntry(program)
  const { planSheet } = await import('../../usecases/sheets/plan-sheet.ts')
  const plan = await planSheet({
    ...{ kind: asked.kind, sheet: sheet.value, settings: settings.value, program, n, now: asked.now },
    ...{ today: dateIn(asked.now, program.program.timeZone), hand: { name: asked.by } },
    // Whoever has the file may do with it as they like.
    reach: { person: () => true, belongs: () => true, place: () => true, birthDate: () => true },
  })
  const stands = plan.counts.cannot + plan.counts.asked
  if (plan.problems.length > 0 || (stands > 0 && !asked.leavesBehind))
    return refused(`Nothing was brought in from ${printableLine(asked.path)}:`, ...linesOf(plan))
  if (plan.facts.length === 0)
    return success(
      printableText([`Nothing was brought in: all that ${asked.path} says is on record in ${asked.into}.`]),
    )
  return writeInto(asked, program, plan)
}

/** Why rows stay behind, each in a line. */
function linesOf({ rows, problems, matches, missing }: SheetPlan): string[] {
  const cannot = rows
    .filter(({ status }) => status === 'cannot')
    .flatMap(({ number, reasons }) =>
      reasons.map(
        ({ heading, message }) => `  row ${number}${heading === undefined ? '' : `, ${heading}`}: ${message}`,
      ),
    )
  const asked = matches
    .filter(({ answered }) => answered === undefined)
    .map(
      ({ row, typed, candidates }) =>
        `  row ${row}: “${typed}” may be ${candidates.map(({ id, name }) => `${name} (${id})`).join(' or ')}; say so under “meant” in the map.`,
    )
  const all = [...problems.map((problem) => `  ${problem}`), ...cannot, ...asked]
  const shown = all.slice(0, MOST_SHOWN)
  return [
    ...(missing.length === 0 ? [] : [`  Not found in it: ${missing.map(({ label }) => label).join(', ')}.`]),
    ...shown,
    ...(all.length > shown.length ? [`  … and ${all.length - shown.length} more.`] : []),
  ]
}

async function readSheet(path: string): Promise<Result<Sheet, Refusal>> {
  const bytes = readFileBytes(path, MOST_BYTES)
  if (!bytes.ok) return bytes
  const { readSheetFile } = await import('../../usecases/sheets/put-in.ts')
  const { readWorkbook } = await import('../../platform/sheets/read-workbook.ts')
  const read = await readSheetFile(bytes.value, undefined, readWorkbook)
  return read.ok ? read : refused(`${printableLine(path)}: ${fileFaultSentence(read.problem)}`)
}

async function readMap({ map, kind }: Asked, { head }: Sheet): Promise<Result<SheetSettings, Refusal>> {
  if (map === undefined) return success({ columns: proposedColumns(kind, head) })
  const { settingsSchema } = await import('../../usecases/sheets/settings.schema.ts')
  const text = readText(map)
  if (!text.ok) return text
  if (text.value.length > MOST_MAP_BYTES)
    return refused(`${printableLine(map)} is too large for a map of columns.`)
  let value: unknown
  try {
    value = JSON.parse(text.value)
  } catch {
    return refused(`${printableLine(map)} is no JSON.`)
  }
  const read = settingsSchema.safeParse(value)
  if (!read.success) {
    const lines = read.error.issues.map(({ path, message }) => `  ${path.join('.')}: ${message}`)
    return refused(`${printableLine(map)} is no map of columns:`, ...lines)
  }
  const unknown = Object.values(read.data.columns).filter((heading) => !head.includes(heading))
  return unknown.length === 0
    ? success(read.data)
    : refused(`The sheet has no column ${unknown.map((heading) => `“${heading}”`).join(', ')}.`)
}

async function writeInto(
  { into, path, kind, by, now }: Asked,
  program: Program,
  plan: SheetPlan,
): Promise<Outcome> {
  const { mergedProgram } = await import('../../usecases/program/merged-program.ts')
  const n = latestEntry(program)
  const merged = mergedProgram(program, n, plan.facts, [], now) as Program
  const { add, change } = plan.counts
  const event = `brought in a sheet of ${sheetKindWords[kind]}: ${add} added, ${change} changed`
  const entries = merged.entries.map((entry) => (entry.n === n + 1 ? { ...entry, actor: by, event } : entry))
  const read = readProgram({ ...merged, entries })
  // INVARIANT: the plan was checked by the same reader, with another name and sentence.
  if (!read.ok) return brokenFile(into, read.problem)
  const part = `${into}.part`
  let isMade = false
  try {
    writeFileSync(part, '', { mode: 0o600, flag: 'wx' })
    isMade = true
    writeFileSync(part, writeProgram(read.value))
    renameSync(part, into)
  } catch (error) {
    if (isMade) rmSync(part, { force: true })
    return refused(`${printableLine(into)} was not written: ${systemWords('write', error)}`)
  }
  return success(
    printableText([
      `Brought in ${path} into ${into} as entry ${n + 1}: ${add} added, ${change} changed.`,
      ...linesOf(plan),
    ]),
  )
}
