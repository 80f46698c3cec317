import { ROW_STATUSES, type SheetPlan, type PlannedRow } from './plan.ts'
import { groundOf, type PlanInput } from './ground-of-sheet.ts'
import { planRow } from './plan-row.ts'
import { placed } from './row-cells.ts'
import { soundFacts, type DraftFact } from './sound-facts.ts'

const ROWS_BETWEEN_PAUSES = 250

/** What bringing in a sheet would do: every row is read, matched, made into records, and all are checked together. */
export async function planSheet(input: PlanInput): Promise<SheetPlan> {
  const ground = groundOf(input)
  const drafts: DraftFact[] = []
  const rows: PlannedRow[] = []
  const { sheet, pause } = input
  for (const [at, row] of sheet.rows.entries()) {
    if (at % ROWS_BETWEEN_PAUSES === 0) await pause?.('rows', at)
    const { planned, facts } = planRow(row, ground)
    rows.push(planned)
    drafts.push(...facts)
  }
  await pause?.('together', sheet.rows.length)
  const { facts, refused, problems } = soundFacts(input, drafts)
  const settled = rows.map((row) => {
    const reasons = refused.get(row.number)
    return reasons === undefined
      ? row
      : { ...row, status: 'cannot' as const, reasons: reasons.map((one) => placed(one, ground)) }
  })
  const counts = Object.fromEntries(
    ROW_STATUSES.map((status) => [status, settled.filter((row) => row.status === status).length]),
  )
  return {
    kind: input.kind,
    rows: settled,
    matches: [...ground.matches.values()].filter(({ candidates }) => candidates.length > 0),
    facts,
    // INVARIANT: the names are those of the statuses.
    counts: counts as SheetPlan['counts'],
    days: ground.days,
    missing: ground.missing,
    problems,
  }
}
