import { z } from 'zod'
import type { Actor } from '../../access/roles.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import type { Sheet } from '../../core/sheets/sheet.ts'
import type { SheetKind } from '../../core/sheets/sheet-kinds.ts'
import { sheetOnDesk, type DeskSheet } from '../../store/desk/sheets.ts'
import type { NotDone } from '../door/outcome.ts'
import type { World } from '../door/use-case.ts'
import { kindField, settingsSchema, type SheetSettings } from './settings.schema.ts'

/** A sheet of the desk, read again. */
export type KeptSheet = {
  id: string
  kind: SheetKind
  name: string
  putInAt: Date
  sheet: Sheet
  settings: SheetSettings
  entry?: number
}

const contentSchema = z.object({
  head: z.array(z.string()),
  rows: z.array(z.object({ number: z.number(), cells: z.array(z.string()) })),
})

/** A sheet as the desk keeps it. */
export function contentOfSheet({ head, rows }: Sheet): string {
  return JSON.stringify({ head, rows })
}

/** The sheet of an id on the desk of whoever asks; nobody else's is there. */
export async function keptSheet(
  { runtime }: World,
  actor: Actor | undefined,
  id: string,
): Promise<Result<KeptSheet, NotDone>> {
  const row = actor === undefined ? undefined : await sheetOnDesk(runtime.store, actor.account, id)
  return row === undefined ? refusal({ kind: 'not-found' }) : success(readKept(row))
}

function readKept({ id, kind, name, putInAt, content, settings, entry }: DeskSheet): KeptSheet {
  return {
    ...{ id, name, putInAt, kind: kindField.parse(kind) },
    sheet: contentSchema.parse(JSON.parse(content)),
    settings: settingsSchema.parse(JSON.parse(settings)),
    ...(entry === undefined ? {} : { entry }),
  }
}
