import { z } from 'zod'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import type { SectionName } from '../../core/program/sections.ts'
import { sheetBroughtIn } from '../../store/desk/sheets.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import { refusedBecause, type NotDone } from '../door/outcome.ts'
import { command, nothingToPrepare, type About } from '../door/use-case.ts'
import { keptSheet, type KeptSheet } from './kept-sheet.ts'
import type { PlannedFact, SheetPlan } from './plan.ts'
import { digestOfPlan, mayBringIn, planFor } from './plan-for.ts'

const input = z.strictObject({
  sheet: z.uuid(),
  /** The digest of the plan that was seen. */
  plan: z.string().regex(/^[0-9a-f]{64}$/),
})

type Loaded = { kept: KeptSheet; plan: SheetPlan; about: About }
type BroughtIn = { kept: KeptSheet; plan: SheetPlan; entry: number }

/**
 * Brings in the rows of a sheet that can be brought in, as one entry or not at all. It is planned again under the lock
 * and held against what was seen: where anything would come otherwise, nothing is written.
 */
export const bringInSheet = command({
  name: 'sheets/bring-in',
  permission: 'bring-in-sheets',
  input,
  prepare: nothingToPrepare,
  load: async (world, _prepared, { sheet }, actor): Promise<Result<Loaded, NotDone>> => {
    const kept = await keptSheet(world, actor, sheet)
    if (!kept.ok) return kept
    const { entry, kind } = kept.value
    if (entry !== undefined) return refusal(refusedBecause({ kind: 'sheet-brought-in-already', entry }))
    if (!mayBringIn(actor, kind)) return refusal({ kind: 'forbidden' })
    const plan = await planFor(world, actor, kept.value)
    return success({ kept: kept.value, plan, about: aboutFacts(world.snapshot, plan.facts) })
  },
  about: ({ about }) => about,
  decide: ({ kept, plan }, { plan: seen }, { snapshot, runtime }): Result<BroughtIn, NotDone> => {
    if (digestOfPlan(plan) !== seen) return refusal(refusedBecause({ kind: 'sheet-would-do-otherwise' }))
    if (plan.facts.length === 0) return refusal(refusedBecause({ kind: 'nothing-to-bring-in' }))
    if (runtime.sheetsUnderWay.has(kept.id))
      runtime.sheetsUnderWay.set(kept.id, { phase: 'writing', done: 0, of: plan.facts.length })
    return success({ kept, plan, entry: snapshot.n + 1 })
  },
  save: ({ plan }) => [
    { changes: { record: plan.facts.map(({ section, fact }) => ({ section, fact })), withdraw: [] } },
  ],
  journal: ({ kept, plan }) => ({
    event: 'sheet-brought-in',
    said: { section: kept.kind, added: plan.counts.add, changed: plan.counts.change },
  }),
  desk: ({ kept, entry }, tx) => sheetBroughtIn(tx, kept.id, entry),
  value: ({ plan, entry }) => ({ entry, added: plan.counts.add, changed: plan.counts.change }),
})

/** Whom and what facts are about: people on record, those whom the facts put there, where they belong, places. */
export function aboutFacts(
  { program, n }: Pick<Snapshot, 'program' | 'n'>,
  facts: readonly Pick<PlannedFact, 'section' | 'fact'>[],
): About {
  const onRecord = new Set(program.people.filter((person) => isKnownAt(person, n)).map(({ id }) => id))
  const named = new Set<string>()
  const places = new Set<string>()
  const belongs = new Map<string, { organisation: string; unit?: string }>()
  for (const { section, fact } of facts) {
    const person = section === 'people' ? fact.id : textOf(fact['person'])
    if (person !== undefined) named.add(person)
    const place = textOf(fact['place'])
    if (place !== undefined && PLACED.includes(section)) places.add(place)
    const organisation = textOf(fact['organisation'])
    const unit = textOf(fact['unit'])
    if (section === 'memberships' && organisation !== undefined)
      belongs.set(`${organisation} ${unit ?? ''}`, { organisation, ...(unit === undefined ? {} : { unit }) })
  }
  return {
    kind: 'records',
    people: [...named].filter((id) => onRecord.has(id)),
    added: [...named].filter((id) => !onRecord.has(id)),
    memberships: [...belongs.values()],
    places: [...places],
  }
}

const PLACED: readonly SectionName[] = ['items', 'hitches']

function textOf(value: unknown): string | undefined {
  return typeof value === 'string' ? value : undefined
}
