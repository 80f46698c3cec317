import { doubtsOfCut } from '../../core/evaluations/check-cut.ts'
import { findingsOf, type CutFindings } from '../../core/evaluations/cut-findings.ts'
import type { CutFile } from '../../core/evaluations/cut-file.schema.ts'
import { success, type Result } from '../../core/kernel/result.ts'
import type { ShippedEdition } from '../../core/rulebooks/books.schema.ts'
import { cutRulesOf } from '../../core/rulebooks/cut-rules.ts'
import { stumpSvg } from '../../drawings/stump-svg.ts'
import {
  allowedSentence,
  cutDoubtSentence,
  FINDINGS_DO_NOT_JUDGE,
  inchesWords,
  laySentence,
  measuredSentence,
} from '../../wording/cut-findings.ts'
import { faceTypeWords } from '../../wording/cut-words.ts'
import { AUTHORITY_IS_NOT_SAFETY, LOCAL_RULES_FIRST } from '../../wording/notice.ts'
import { stumpWords } from '../../wording/stump-drawing.ts'
import type { Command } from '../command.ts'
import { PROGRAM } from '../help.ts'
import { latestEdition, openBooks } from '../open-books.ts'
import { refused, type Refusal } from '../outcome.ts'
import { printableLine, printableText } from '../printable.ts'
import { onlyOperand } from '../question.ts'
import { readCutFile } from '../read-cut.ts'
import { writeNew } from '../write-new.ts'

/** The book by which a cut is told where the command names none; the answer says so. */
const USUAL_BOOK = 'federal-crosscut'

/** What the measurements of a stump say beside the rules of a book, and its drawing. */
export const cutCommand: Command = {
  name: 'cut',
  summary: 'what the measurements of a stump say beside the rules, and its drawing',
  usage: ['cut FILE [--book FILE-OR-ID] [--svg FILE]'],
  about: [
    'FILE is a JSON file of the format kerfbook-cut/1: the stump’s diameter, its type of face, and what else was measured, in inches (whole sixteenths) and degrees (whole or half). What nobody measured is left out.',
    `Each figure stands beside what every rule of the latest edition of the book allows; the book is ${USUAL_BOOK}, or what --book names (a book file, a program file, or the id of a book that ships). Nothing passes or fails.`,
  ],
  options: {
    book: { value: 'FILE-OR-ID', says: 'the book whose rules stand beside the figures' },
    svg: { value: 'FILE', says: 'the file for the drawing, which must not be there yet' },
    json: { says: 'print data' },
  },
  examples: [`${PROGRAM} cut seeds/examples/stump.json`],
  run: (given) => {
    const path = onlyOperand(given, 'FILE')
    if (!path.ok) return path
    const file = readCutFile(path.value)
    if (!file.ok) return file
    const edition = editionOf(given.values.get('book') ?? USUAL_BOOK)
    if (!edition.ok) return edition
    const found = findingsOf(file.value.stump, cutRulesOf(edition.value.rules))
    const svg = given.values.get('svg')
    if (svg !== undefined) {
      const { name, stump } = file.value
      const written = writeNew(svg, stumpSvg(stump, found.findings, stumpWords(name, stump, found)))
      if (!written.ok) return written
    }
    return success(
      given.flags.has('json')
        ? `${JSON.stringify(cutJson(file.value, edition.value, found), null, 2)}\n`
        : printableText([
            ...cutLines(file.value, edition.value, found),
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

function cutLines(
  { name, stump, invented }: CutFile,
  edition: ShippedEdition,
  { findings, lay }: CutFindings,
): string[] {
  const doubts = doubtsOfCut(stump).map(cutDoubtSentence)
  return [
    ...(invented === true ? ['This cut is invented.'] : []),
    `${name}: a stump ${inchesWords(stump.diameter)} across, face: ${faceTypeWords[stump.faceType]}, beside the edition “${edition.name}”.`,
    '',
    ...findings.flatMap((finding) => [
      measuredSentence(finding),
      ...finding.allowed.map((allowed) => `  ${allowedSentence(allowed, finding.unit)}`),
      ...(finding.measured !== undefined && finding.allowed.length === 0
        ? ['  This edition states no rule on it.']
        : []),
    ]),
    ...(lay === undefined ? [] : [laySentence(lay)]),
    ...(doubts.length === 0 ? [] : ['', ...doubts]),
    '',
    FINDINGS_DO_NOT_JUDGE,
    AUTHORITY_IS_NOT_SAFETY,
    LOCAL_RULES_FIRST,
  ]
}

function cutJson(
  { name, stump, invented }: CutFile,
  { book, id }: ShippedEdition,
  { findings, lay }: CutFindings,
): object {
  return {
    format: 'kerfbook-cut-findings/1',
    notice: `${FINDINGS_DO_NOT_JUDGE} ${AUTHORITY_IS_NOT_SAFETY} ${LOCAL_RULES_FIRST}`,
    invented: invented === true,
    ...{ book, edition: id, name },
    findings: findings.map(({ allowed, ...finding }) => ({
      ...finding,
      allowed: allowed.map(({ rule, ...band }) => ({ rule: rule.id, ...band })),
    })),
    ...(lay === undefined ? {} : { lay }),
    doubts: doubtsOfCut(stump),
  }
}
