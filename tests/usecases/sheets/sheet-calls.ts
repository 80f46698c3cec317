import type { Caller } from '../../../lib/usecases/door/caller.ts'
import type { Outcome } from '../../../lib/usecases/door/outcome.ts'
import { bringInSheet } from '../../../lib/usecases/sheets/bring-in-sheet.ts'
import { settleSheetOf, trySheet, type Tried } from '../../../lib/usecases/sheets/desk-of-sheets.ts'
import { putInSheetOf } from '../../../lib/usecases/sheets/put-in.ts'
import type { SheetPlan } from '../../../lib/usecases/sheets/plan.ts'
import type { SheetSettings } from '../../../lib/usecases/sheets/settings.schema.ts'
import { undoSheet } from '../../../lib/usecases/sheets/undo-sheet.ts'
import { isKnownAt } from '../../../lib/core/kernel/versions.ts'
import { SECTION_NAMES, type Fact } from '../../../lib/core/program/sections.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { withoutKnowing } from '../../../lib/usecases/program/program-facts.ts'
import { callAny, callerAs } from '../../builders/call-any.ts'
import type { TestRuntime } from '../../builders/test-runtime.ts'

export const MARIT = callerAs('marit', [{ role: 'program-manager' }])
export const INES = callerAs('ines', [{ role: 'crew-coordinator', unit: 'quill-river' }])

export const lines = (...rows: string[]) => rows.join('\r\n')
export const statuses = (plan: { rows: readonly { status: string }[] }) =>
  plan.rows.map(({ status }) => status)

export function valueOf<Value>(outcome: Outcome<unknown>): Value {
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
  return outcome.value as Value
}

/** The calls by which a sheet is brought in, as a page makes them. */
export function sheetCalls(opened: Pick<TestRuntime, 'runtime'>, who: Caller = MARIT) {
  const call = (useCase: Parameters<typeof callAny>[1], input: unknown) =>
    callAny(opened.runtime, useCase, input, who)
  const putIn = (as: string, text: string | Uint8Array, name = 'a sheet of a test') =>
    call(putInSheetOf, { as, name, bytes: typeof text === 'string' ? Buffer.from(text) : text })
  const tried = async (sheet: string) => valueOf<Tried>(await call(trySheet, { sheet }))
  const settle = async (sheet: string, change: (settings: SheetSettings) => SheetSettings) => {
    const { kept } = await tried(sheet)
    return call(settleSheetOf, { sheet, settings: change(kept.settings) })
  }
  return {
    call,
    putIn,
    put: async (as: string, text: string | Uint8Array) => valueOf<{ id: string }>(await putIn(as, text)).id,
    tried,
    settle,
    planned: async (sheet: string): Promise<SheetPlan> => (await tried(sheet)).plan,
    /** Says of every name that whoever is on record is meant. */
    confirmAll: async (sheet: string) => {
      const { matches } = (await tried(sheet)).plan
      const meant = Object.fromEntries(
        matches.map(({ row, candidates }) => [row, { kind: 'person' as const, person: candidates[0]!.id }]),
      )
      return settle(sheet, (settings) => ({ ...settings, meant }))
    },
    bringIn: async (sheet: string) => call(bringInSheet, { sheet, plan: (await tried(sheet)).digest }),
    undo: (entry: number) => call(undoSheet, { entry }),
  }
}

/** Everything that is on record now, without when it came to be known. */
export async function standing(opened: Pick<TestRuntime, 'runtime'>): Promise<unknown> {
  const { program, n } = await snapshotOf(opened.runtime.store)
  return SECTION_NAMES.map((name) => [
    name,
    Object.fromEntries(
      (program[name] as readonly Fact[])
        .filter((fact) => isKnownAt(fact, n))
        .map((fact) => {
          const { supersedes: _supersedes, ...content } = withoutKnowing(fact)
          return [fact.id, content]
        }),
    ),
  ])
}
