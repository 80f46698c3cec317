import type { SheetFault } from '../core/sheets/sheet.ts'
import type { SheetKind } from '../core/sheets/sheet-kinds.ts'
import { hiddenCharacterText } from './problem-words.ts'

/** What a sheet may hold, for headings and links. */
export const sheetKindWords: Record<SheetKind, string> = {
  people: 'people',
  memberships: 'memberships',
  certificates: 'certificates',
  cards: 'cards',
  items: 'logs and trees',
  hitches: 'hitches',
}

/** Why a file is no sheet that can be read: everything between its bytes and its rows. */
export type FileFault =
  | SheetFault
  | { kind: 'not-text' }
  | { kind: 'quote-not-closed'; row: number }
  | { kind: 'hidden-character'; code: number }
  | { kind: 'not-a-workbook' }
  | { kind: 'inflates-too-far'; bytes: number; most: number }
  | { kind: 'too-many-parts'; parts: number; most: number }
  | { kind: 'no-such-sheet'; sheet: string; sheets: readonly string[] }
  | { kind: 'took-too-long'; seconds: number }
  | { kind: 'needs-too-much-memory' }
  | { kind: 'too-large'; bytes: number; most: number }

const grouped = (figure: number) => figure.toLocaleString('en')
const megabytes = (bytes: number) => `${grouped(Math.round(bytes / 1024 / 1024))} MB`

function hiddenText(code: number): string {
  return hiddenCharacterText(`U+${code.toString(16).toUpperCase().padStart(4, '0')}`)
}

/** What is wrong with a file, and what to do about it. Nothing of it is kept. */
export function fileFaultSentence(fault: FileFault): string {
  switch (fault.kind) {
    case 'empty':
      return 'There is nothing to bring in: a sheet has headings in its first row and at least one row below.'
    case 'too-many-rows':
      return `The sheet has ${grouped(fault.rows)} rows. At most ${grouped(fault.most)} are read at once: divide it.`
    case 'too-many-columns':
      return `The sheet has ${fault.columns} columns. At most ${fault.most} are read.`
    case 'heading-twice':
      return `The heading “${fault.heading}” stands over columns ${fault.columns.join(' and ')}. Give one of them another name.`
    case 'cells-without-heading':
      return `Row ${fault.row} has something in column ${fault.columns}, which has no heading. Is a comma missing its quotes?`
    case 'cell-too-long':
      return `Row ${fault.row}, “${fault.heading}”: the cell has ${grouped(fault.letters)} letters. It may have at most ${grouped(fault.most)}. Perhaps a quote never closes.`
    case 'hidden-character':
      return 'row' in fault
        ? `Row ${fault.row}, “${fault.heading}”: the cell holds ${hiddenText(fault.code)}, which nobody sees. Take it out.`
        : `The text holds ${hiddenText(fault.code)}, which nobody sees. Save the sheet again as CSV.`
    case 'not-text':
      return 'This is neither a workbook (XLSX) nor text in UTF-8 or Windows-1252. Save the sheet as CSV or XLSX.'
    case 'quote-not-closed':
      return `A quote that opens in row ${fault.row} never closes. Put a quote at the end of that cell, or take it away.`
    case 'not-a-workbook':
      return 'This begins like a workbook (XLSX) and is none that can be read. Save it again, without a password, or as CSV.'
    case 'inflates-too-far':
      return `The workbook would grow to more than ${megabytes(fault.most)} when it is unpacked, so it is not read. Save the sheet as CSV.`
    case 'too-many-parts':
      return `The workbook has ${grouped(fault.parts)} parts. At most ${grouped(fault.most)} are read. Save the sheet as CSV.`
    case 'no-such-sheet':
      return `The workbook has no sheet “${fault.sheet}”. It has: ${fault.sheets.join(', ')}.`
    case 'took-too-long':
      return `The workbook could not be read within ${fault.seconds} seconds. Save the sheet as CSV.`
    case 'needs-too-much-memory':
      return 'The workbook needs too much memory to be read. Save the sheet as CSV.'
    case 'too-large':
      return `The file has ${megabytes(fault.bytes)}. At most ${megabytes(fault.most)} are read: divide the sheet.`
  }
}
