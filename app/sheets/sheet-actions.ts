'use server'

import { redirect } from 'next/navigation'
import { callCommand } from '../../lib/usecases/door/call-command.ts'
import { callDeskCommand } from '../../lib/usecases/door/call-desk.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import { settleSheetOf, throwAwaySheetOf } from '../../lib/usecases/sheets/desk-of-sheets.ts'
import { putInSheetOf } from '../../lib/usecases/sheets/put-in.ts'
import { startBringingIn } from '../../lib/usecases/sheets/start-bringing-in.ts'
import { undoSheet } from '../../lib/usecases/sheets/undo-sheet.ts'
import { formAfter, formAgain, typedText } from '../_door/form-outcome.ts'
import { caller } from '../_door/visitor.ts'
import type { FormState } from '../_parts/form-state.ts'
import { askedAbout, typedSettings } from './typed-settings.ts'

const LABELS = { as: 'What stands in it', bytes: 'The sheet', name: 'The sheet' }

/** Puts a file, or what was pasted, on the desk, and goes on to what it would do. */
export async function putInAction(before: FormState, typed: FormData): Promise<FormState> {
  const file = typed.get('file')
  const pasted = typedText(typed, 'pasted')
  const isFile = file instanceof File && file.size > 0
  if (isFile === (pasted.trim() !== '')) {
    const message = isFile
      ? 'The sheet: choose a file or paste it, not both: which of the two is meant?'
      : 'The sheet: choose a file, or paste the rows with their headings.'
    return formAgain(before, typed, { problems: [{ field: isFile ? 'pasted' : 'file', message }] })
  }
  const bytes = isFile ? new Uint8Array(await file.arrayBuffer()) : new TextEncoder().encode(pasted)
  const sheet = typedText(typed, 'sheet').trim()
  const input = {
    ...{ as: typedText(typed, 'as'), bytes, name: isFile ? file.name.slice(0, 200) : 'pasted rows' },
    ...(sheet === '' ? {} : { sheet }),
  }
  const outcome = await callDeskCommand(runtime(), putInSheetOf, { input }, await caller())
  if (outcome.kind === 'done') redirect(`/sheets/${outcome.value.id}`)
  const again = formAfter(before, typed, outcome, LABELS)
  const field = isFile ? 'file' : 'pasted'
  return {
    ...again,
    problems: again.problems.map((one) => (one.field === 'bytes' ? { ...one, field } : one)),
  }
}

/** Keeps how a sheet is to be read, and shows what it would do. */
export async function settleAction(
  { sheet }: { sheet: string },
  before: FormState,
  typed: FormData,
): Promise<FormState> {
  const read = typedSettings(typed)
  if (!read.ok) return formAgain(before, typed, { problems: read.problem })
  const input = { sheet, settings: read.value, asked: askedAbout(typed) }
  const outcome = await callDeskCommand(runtime(), settleSheetOf, { input }, await caller())
  if (outcome.kind === 'done') redirect(`/sheets/${sheet}?did=settled#rows`)
  return formAfter(before, typed, outcome)
}

/** Brings in the rows that can be; where that takes longer, the page says how far it has come. */
export async function bringInAction(
  { sheet }: { sheet: string },
  before: FormState,
  typed: FormData,
): Promise<FormState> {
  const call = { input: { sheet, plan: typedText(typed, 'plan') }, command: typedText(typed, 'command') }
  const outcome = await startBringingIn(runtime(), call, await caller())
  if (outcome === 'under-way') redirect(`/sheets/${sheet}`)
  if (outcome.kind === 'done') redirect(`/sheets/${sheet}?did=brought-in`)
  return formAfter(before, typed, outcome)
}

/** Throws a sheet on the desk away. */
export async function throwAwayAction(
  { sheet }: { sheet: string },
  before: FormState,
  typed: FormData,
): Promise<FormState> {
  const outcome = await callDeskCommand(runtime(), throwAwaySheetOf, { input: { sheet } }, await caller())
  if (outcome.kind === 'done') redirect('/sheets?did=thrown-away')
  return formAfter(before, typed, outcome)
}

/** Undoes what a sheet brought in. */
export async function undoAction(
  { entry }: { entry: number },
  before: FormState,
  typed: FormData,
): Promise<FormState> {
  const call = { input: { entry }, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), undoSheet, call, await caller())
  if (outcome.kind === 'done') redirect('/sheets?did=undone')
  return formAfter(before, typed, outcome)
}
