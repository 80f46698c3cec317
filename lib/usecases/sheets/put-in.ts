import { randomUUID } from 'node:crypto'
import { z } from 'zod'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { proposedColumns } from '../../core/sheets/match-columns.ts'
import { MOST_BYTES, MOST_ROWS, sheetOf, type Sheet } from '../../core/sheets/sheet.ts'
import { readTextTable } from '../../platform/sheets/read-text.ts'
import type { readWorkbook } from '../../platform/sheets/read-workbook.ts'
import { isZip } from '../../platform/sheets/zip-mark.ts'
import { putInSheet, rememberedColumns } from '../../store/desk/sheets.ts'
import { fileFaultSentence, type FileFault } from '../../wording/sheets.ts'
import { done, invalidField, type NotDone } from '../door/outcome.ts'
import { deskCommand } from '../door/use-case.ts'
import { contentOfSheet } from './kept-sheet.ts'
import { mayBringIn } from './plan-for.ts'
import { kindField, rememberedSchema } from './settings.schema.ts'

/** How long a sheet lies on a desk, in days. It may hold more than is kept of anybody, so it does not stay. */
export const DAYS_ON_DESK = 14

const input = z.strictObject({
  as: kindField,
  /** What the file is called, for whoever has several. */
  name: z.string().trim().min(1).max(200),
  /** The file, or what was pasted, in UTF-8. */
  bytes: z.instanceof(Uint8Array),
  /** Which sheet of a workbook; the first where none is named. */
  sheet: z.exactOptional(z.string().max(200)),
})

/** Puts a sheet on the desk of whoever brings it in; nothing is recorded. */
export const putInSheetOf = deskCommand({
  name: 'sheets/put-in',
  permission: 'bring-in-sheets',
  input,
  prepare: async ({ bytes, sheet }, runtime): Promise<Result<Sheet, NotDone>> => {
    const read = await readSheetFile(bytes, sheet, runtime.readWorkbook)
    return read.ok ? read : refusal(invalidField('bytes', fileFaultSentence(read.problem)))
  },
  logged: 'sheet-put-in',
  load: (_world, sheet, { as }, actor) =>
    mayBringIn(actor, as) ? success(sheet) : refusal<NotDone>({ kind: 'forbidden' }),
  about: () => ({ kind: 'nothing' }),
  act: async ({ runtime, realNow }, sheet, { as, name }, caller) => {
    if (caller.kind !== 'account') return { kind: 'sign-in-wanted' }
    const id = randomUUID()
    const { account } = caller.actor
    const remembered = await rememberedColumns(runtime.store, account, as, headingsOf(sheet))
    const known = remembered === undefined ? undefined : rememberedSchema.safeParse(JSON.parse(remembered))
    const settings = known?.success === true ? known.data : { columns: proposedColumns(as, sheet.head) }
    await putInSheet(
      runtime.store,
      account,
      {
        id,
        name,
        kind: as,
        putInAt: realNow,
        content: contentOfSheet(sheet),
        settings: JSON.stringify(settings),
      },
      new Date(realNow.getTime() - DAYS_ON_DESK * 86_400_000),
    )
    return done({ id })
  },
})

/** Under what the columns of a sheet are remembered. */
export function headingsOf({ head }: Sheet): string {
  return JSON.stringify(head)
}

/** The rows of a file: a workbook, or text of commas, semicolons or tabs. */
export async function readSheetFile(
  bytes: Uint8Array,
  sheet: string | undefined,
  read: typeof readWorkbook,
): Promise<Result<Sheet, FileFault>> {
  if (bytes.length > MOST_BYTES) return refusal({ kind: 'too-large', bytes: bytes.length, most: MOST_BYTES })
  const table = await tableOf(bytes, sheet, read)
  if (!table.ok) return table
  const made = sheetOf(table.value)
  return 'sheet' in made ? success(made.sheet) : refusal(made.fault)
}

async function tableOf(
  bytes: Uint8Array,
  sheet: string | undefined,
  readBook: typeof readWorkbook,
): Promise<Result<readonly (readonly string[])[], FileFault>> {
  if (!isZip(bytes)) return readTextTable(bytes)
  const read = await readBook(bytes, sheet, MOST_ROWS)
  return read.ok ? success(read.value.table) : read
}
