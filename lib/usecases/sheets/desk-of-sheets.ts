import { z } from 'zod'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { SHEET_FIELDS } from '../../core/sheets/sheet-fields.ts'
import { SHEET_KINDS } from '../../core/sheets/sheet-kinds.ts'
import {
  rememberColumns,
  settleSheet,
  sheetsOnDesk,
  throwAwaySheet,
  type ListedSheet,
} from '../../store/desk/sheets.ts'
import { done, refusedBecause, type NotDone } from '../door/outcome.ts'
import { deskCommand, nothingToPrepare, query } from '../door/use-case.ts'
import { keptSheet, type KeptSheet } from './kept-sheet.ts'
import type { SheetPlan } from './plan.ts'
import { digestOfPlan, mayBringIn, planFor } from './plan-for.ts'
import { headingsOf } from './put-in.ts'
import { askedRows, rememberedSchema, settingsSchema, type SheetSettings } from './settings.schema.ts'

export type { ListedSheet }

const idOfSheet = z.uuid()

/** Says how a sheet on the desk is to be read; the columns are remembered for the next one with the same headings. */
export const settleSheetOf = deskCommand({
  name: 'sheets/settle',
  permission: 'bring-in-sheets',
  input: z.strictObject({
    sheet: idOfSheet,
    settings: settingsSchema,
    /** The rows whose names were asked about now; what was said of others before stays. */
    asked: z.exactOptional(askedRows),
  }),
  prepare: nothingToPrepare,
  logged: 'sheet-settled',
  load: async (world, _prepared, { sheet }, actor): Promise<Result<KeptSheet, NotDone>> => {
    const kept = await keptSheet(world, actor, sheet)
    if (!kept.ok || kept.value.entry === undefined) return kept
    return refusal(refusedBecause({ kind: 'sheet-brought-in-already', entry: kept.value.entry }))
  },
  about: () => ({ kind: 'nothing' }),
  act: async ({ runtime }, { id, kind, sheet, settings: before }, { settings: typed, asked }, caller) => {
    if (caller.kind !== 'account') return { kind: 'sign-in-wanted' }
    const settings = withEarlier(typed, before, asked)
    const twice = columnTwice(settings.columns, kind)
    if (twice !== undefined) return { kind: 'invalid', fields: [twice] }
    await settleSheet(runtime.store, id, JSON.stringify(settings))
    const kept = rememberedSchema.parse(
      Object.fromEntries(Object.entries(settings).filter(([name]) => name in rememberedSchema.shape)),
    )
    await rememberColumns(runtime.store, caller.actor.account, {
      ...{ kind, headings: headingsOf(sheet), settings: JSON.stringify(kept) },
    })
    return done({ id })
  },
})

/** A page asks about some names at a time. */
function withEarlier(
  typed: SheetSettings,
  before: SheetSettings,
  asked: readonly number[] | undefined,
): SheetSettings {
  if (asked === undefined || before.meant === undefined) return typed
  const now = new Set(asked.map(String))
  const earlier = Object.entries(before.meant).filter(([row]) => !now.has(row))
  const meant = { ...Object.fromEntries(earlier), ...typed.meant }
  return Object.keys(meant).length === 0 ? typed : { ...typed, meant }
}

/** One column cannot be two things; the second of them is told. */
function columnTwice(
  columns: Readonly<Record<string, string>>,
  kind: KeptSheet['kind'],
): { path: string; message: string } | undefined {
  const taken = new Map<string, string>()
  for (const { key, label } of SHEET_FIELDS[kind]) {
    const heading = columns[key]
    if (heading === undefined) continue
    const other = taken.get(heading)
    if (other !== undefined)
      return {
        path: `column.${key}`,
        message: `The column “${heading}” is “${other}” already; it cannot be “${label}” too.`,
      }
    taken.set(heading, label)
  }
  return undefined
}

/** Throws a sheet on the desk away; what it brought in stays. */
export const throwAwaySheetOf = deskCommand({
  name: 'sheets/throw-away',
  permission: 'bring-in-sheets',
  input: z.strictObject({ sheet: idOfSheet }),
  prepare: nothingToPrepare,
  logged: 'sheet-thrown-away',
  load: (world, _prepared, { sheet }, actor) => keptSheet(world, actor, sheet),
  about: () => ({ kind: 'nothing' }),
  act: async ({ runtime }, { id }) => {
    await throwAwaySheet(runtime.store, id)
    return done({ id })
  },
})

/** The sheets on one's desk, and what sheets one may bring in. */
export const listSheets = query({
  name: 'sheets/list',
  permission: 'bring-in-sheets',
  input: z.strictObject({}),
  load: async ({ runtime }, _input, actor) =>
    success({
      sheets: actor === undefined ? [] : await sheetsOnDesk(runtime.store, actor.account),
      kinds: SHEET_KINDS.filter((kind) => mayBringIn(actor, kind)),
    }),
  about: () => ({ kind: 'nothing' }),
  answer: (facts) => facts,
})

/** What bringing in a sheet of one's desk would do. Nothing is written. */
export const trySheet = query({
  name: 'sheets/try',
  permission: 'bring-in-sheets',
  input: z.strictObject({ sheet: idOfSheet }),
  load: async (world, { sheet }, actor): Promise<Result<Tried, NotDone>> => {
    const kept = await keptSheet(world, actor, sheet)
    if (!kept.ok) return kept
    if (!mayBringIn(actor, kept.value.kind)) return refusal({ kind: 'forbidden' })
    const plan = await planFor(world, actor, kept.value)
    return success({ kept: kept.value, plan, digest: digestOfPlan(plan) })
  },
  about: () => ({ kind: 'nothing' }),
  answer: (tried) => tried,
  // Whoever has the name of somebody is shown who on record has it.
  looked: ({ kept, plan }) => ({
    question: { sheet: kept.kind },
    count: plan.rows.filter(({ person }) => person !== undefined).length + plan.matches.length,
  }),
})

/** A sheet of the desk with what it would do, as it would be brought in now. */
export type Tried = { kept: KeptSheet; plan: SheetPlan; digest: string }
