import { success, type Result } from '../../core/kernel/result.ts'
import type { ShippedEdition } from '../../core/rulebooks/books.schema.ts'
import { FINDINGS_DO_NOT_JUDGE } from '../../wording/cut-findings.ts'
import { AUTHORITY_IS_NOT_SAFETY, LOCAL_RULES_FIRST } from '../../wording/notice.ts'
import type { Command } from '../command.ts'
import { PROGRAM } from '../help.ts'
import { latestEdition, openBooks } from '../open-books.ts'
import { refused, type Refusal } from '../outcome.ts'
import { printableLine, printableText } from '../printable.ts'
import { onlyOperand } from '../question.ts'
import { readCutFile } from '../read-cut.ts'
import { logText } from '../text/log-lines.ts'
import { stumpText } from '../text/stump-lines.ts'
import { writeNew } from '../write-new.ts'

/** The book by which a cut is told where the command names none; the answer says so. */
const USUAL_BOOK = 'federal-crosscut'

const NOTICES = [FINDINGS_DO_NOT_JUDGE, AUTHORITY_IS_NOT_SAFETY, LOCAL_RULES_FIRST]

/** What the measurements of a stump or of a log say beside the rules of a book, and their drawing. */
export const cutCommand: Command = {
  name: 'cut',
  summary: 'what the measurements of a stump or of a log say beside the rules, and its drawing',
  usage: ['cut FILE [--book FILE-OR-ID] [--svg FILE]'],
  about: [
    'FILE is a JSON file of the format kerfbook-cut/1 with a stump or a log: its diameter and what else was measured or seen, in inches (whole sixteenths) and degrees (whole or half). What nobody measured is left out.',
    `Each figure stands beside what every rule of the latest edition of the book says; the book is ${USUAL_BOOK}, or what --book names (a book file, a program file, or the id of a book that ships). Nothing passes or fails.`,
  ],
  options: {
    book: { value: 'FILE-OR-ID', says: 'the book whose rules stand beside the figures' },
    svg: { value: 'FILE', says: 'the file for the drawing, which must not be there yet' },
    json: { says: 'print data' },
  },
  examples: [`${PROGRAM} cut seeds/examples/stump.json`, `${PROGRAM} cut seeds/examples/log.json`],
  run: (given) => {
    const path = onlyOperand(given, 'FILE')
    if (!path.ok) return path
    const cut = readCutFile(path.value)
    if (!cut.ok) return cut
    const edition = editionOf(given.values.get('book') ?? USUAL_BOOK)
    if (!edition.ok) return edition
    const { name, invented } = cut.value
    const { book, id, name: editionName, rules } = edition.value
    const text =
      cut.value.of === 'stump' ? stumpText(name, cut.value.stump, rules) : logText(name, cut.value.log, rules)
    const svg = given.values.get('svg')
    if (svg !== undefined) {
      const written = writeNew(svg, text.svg)
      if (!written.ok) return written
    }
    if (given.flags.has('json')) {
      const format = 'kerfbook-cut-findings/1'
      const notice = NOTICES.join(' ')
      return success(
        `${JSON.stringify({ format, notice, invented, book, edition: id, name, ...text.json }, null, 2)}\n`,
      )
    }
    return success(
      printableText([
        ...(invented ? ['This cut is invented.'] : []),
        `${name}: ${text.head}, beside the edition “${editionName}”.`,
        '',
        ...text.lines,
        ...(text.doubts.length === 0 ? [] : ['', ...text.doubts]),
        '',
        ...NOTICES,
        ...(svg === undefined ? [] : [`The drawing is in ${printableLine(svg)}.`]),
      ]),
    )
  },
}

function editionOf(fileOrId: string): Result<ShippedEdition, Refusal> {
  const open = openBooks(fileOrId)
  if (!open.ok) return open
  const latest = latestEdition(open.value.books[0])
  return latest === undefined
    ? refused(`${printableLine(fileOrId)} holds no book with an edition.`)
    : success(latest)
}
