import { success } from '../../core/kernel/result.ts'
import type { BookFile } from '../../core/program/book-file.schema.ts'
import { latestEntry, recordsAt } from '../../core/program/known.ts'
import { programDoubts } from '../../core/program/doubts.ts'
import { SECTION_NAMES } from '../../core/program/sections.ts'
import type { Program } from '../../core/program/program.schema.ts'
import { doubtLine } from '../../wording/doubts.ts'
import { namesOf } from '../../wording/names.ts'
import type { Command } from '../command.ts'
import { PROGRAM } from '../help.ts'
import { problemLines, readProgramFile } from '../open-program.ts'
import { refused, type Outcome } from '../outcome.ts'
import { printableLine, printableText } from '../printable.ts'
import { onlyOperand } from '../question.ts'
import { shippedBooks } from '../shipped-books.ts'

/** Everything that is wrong with a program file, and what is doubtful. */
export const checkCommand: Command = {
  name: 'check',
  summary: 'everything that is wrong with a program file, and what is doubtful in it',
  usage: ['check FILE'],
  about: [
    'Every problem is said at once, with its path, its value and the reason; then the exit code is 1.',
    'A doubt is no problem: the file is good, and somebody should look.',
    'Copies of rule books that ship are compared with them.',
  ],
  options: {},
  examples: [`${PROGRAM} check seeds/demo.json`],
  run: (given) => {
    const file = onlyOperand(given, 'FILE')
    if (!file.ok) return file
    const read = readProgramFile(file.value)
    if (read.ok) {
      const shipped = shippedBooks()
      if (!shipped.ok) return shipped
      return success(printableText(goodFileLines(file.value, read.value, shipped.value)))
    }
    if ('unread' in read.problem) return { ok: false, problem: read.problem.unread }
    return brokenFile(file.value, problemLines(read.problem.problems))
  },
}

function brokenFile(path: string, lines: readonly string[]): Outcome {
  const count = lines.length === 1 ? '1 problem' : `${lines.length} problems`
  return refused(`${printableLine(path)}: ${count}`, ...lines)
}

function goodFileLines(path: string, program: Program, shipped: readonly BookFile[]): string[] {
  const records = recordsAt(program, latestEntry(program))
  const names = namesOf(records)
  const doubts = programDoubts(program, shipped)
  const facts = SECTION_NAMES.reduce((count, name) => count + program[name].length, 0)
  const counts = `${program.entries.length} entries, ${facts} facts, ${records.people.length} people`
  const doubtsText = doubts.length === 1 ? '1 doubt' : `${doubts.length} doubts`
  return [
    `${path}: no problems. ${program.program.name}: ${counts}.`,
    `${doubtsText}${doubts.length === 0 ? '.' : ', which stop nothing and want a look:'}`,
    ...doubts.map((doubt) => `  ${doubtLine(doubt, names)}`),
  ]
}
