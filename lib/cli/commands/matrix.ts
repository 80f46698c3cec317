import { success } from '../../core/kernel/result.ts'
import { AUTHORITY_IS_NOT_SAFETY, INVENTED } from '../../wording/notice.ts'
import { standingJson } from '../../core/authority/answer-json.ts'
import type { Command } from '../command.ts'
import { ENGINE_VERSION } from '../../core/authority/engine-version.ts'
import { PROGRAM } from '../help.ts'
import { buildMatrix, type Matrix } from '../matrix.ts'
import { openProgram, type OpenProgram } from '../open-program.ts'
import { misuse } from '../outcome.ts'
import { printableText } from '../printable.ts'
import { onlyOperand } from '../question.ts'
import { QUESTION_OPTIONS, readSawKind, readTimeWords, TIME_OPTIONS } from '../question-words.ts'
import { closingLines } from '../text/ask-text.ts'
import { matrixCsv, matrixText } from '../text/matrix-text.ts'

/** Everybody by every log, tree and expected work. */
export const matrixCommand: Command = {
  name: 'matrix',
  summary: 'everybody by every log, tree and expected work on record',
  usage: ['matrix FILE [--csv|--json]'],
  about: [
    'Every item is asked on its own days; where it leaves a side of them open, today stands in.',
    'CSV has a row for each person and a column for each item, headed by its id, name and days. Columns before them say the days of all items together, the entry and moment as known at which, and the notice.',
    'Text is cut into blocks as wide as the terminal (or COLUMNS).',
  ],
  options: {
    csv: { says: 'print CSV' },
    json: { says: 'print data, with the day each answer holds through' },
    saw: QUESTION_OPTIONS.saw,
    ...TIME_OPTIONS,
  },
  examples: [`${PROGRAM} matrix seeds/demo.json --csv`],
  run: (given, io) => {
    const file = onlyOperand(given, 'FILE')
    if (!file.ok) return file
    if (given.flags.has('csv') && given.flags.has('json')) return misuse('--csv or --json, not both.')
    const time = readTimeWords(given)
    if (!time.ok) return time
    const sawKind = readSawKind(given)
    if (!sawKind.ok) return sawKind
    const open = openProgram(file.value, time.value, io)
    if (!open.ok) return open
    const matrix = buildMatrix(open.value, sawKind.value)
    if (given.flags.has('csv')) return success(matrixCsv(matrix, saidInSheet(open.value)))
    if (given.flags.has('json'))
      return success(`${JSON.stringify(matrixJson(matrix, open.value), null, 2)}\n`)
    const lines = [...matrixText(matrix, open.value.names, io.width), ...closingLines(open.value)]
    return success(printableText(lines))
  },
}

/** What every row of a sheet says beside the answers: the entry and moment as known at which, and the notice. */
function saidInSheet({ program, knownAt }: OpenProgram): { knownAt: string; notice: string } {
  const stated = program.entries[knownAt - 1]?.statedAt
  return {
    knownAt: `entry ${knownAt}${stated === undefined ? '' : ` (${stated})`}`,
    notice: [AUTHORITY_IS_NOT_SAFETY, ...(program.invented === true ? [INVENTED] : [])].join(' '),
  }
}

function matrixJson({ people, columns }: Matrix, open: OpenProgram): object {
  return {
    format: 'kerfbook-matrix/1',
    notice: AUTHORITY_IS_NOT_SAFETY,
    engine: ENGINE_VERSION,
    knownAt: open.knownAt,
    today: open.today,
    people,
    items: columns.map(({ item, name, first, last, answers }) => ({
      item,
      name,
      first,
      last,
      answers: answers.map((answer) => ({
        person: answer.person,
        ...standingJson(answer.standing),
        holdsThrough: answer.holdsThrough,
        findings: [...new Set(answer.findings.map((finding) => finding.kind))],
      })),
    })),
  }
}
