import { setImmediate as nextTurn } from 'node:timers/promises'
import {
  hasPermission,
  isInReach,
  peopleInReach,
  reachesBelonging,
  reachesPlace,
  reachesProgram,
} from '../../access/reach.ts'
import type { Actor } from '../../access/roles.ts'
import type { Permission } from '../../access/table.ts'
import { canonicalJson } from '../../core/kernel/canonical-json.ts'
import { sha256 } from '../../platform/secrets/sha256.ts'
import type { SheetKind } from '../../core/sheets/sheet-kinds.ts'
import { belonging } from '../door/admit.ts'
import type { World } from '../door/use-case.ts'
import { seesBirthDate } from '../people/told-age.ts'
import { handOf } from '../records/hand-of.ts'
import { RECORD_KINDS } from '../records/record-kinds.ts'
import type { SheetReach } from './ground-of-sheet.ts'
import type { KeptSheet } from './kept-sheet.ts'
import type { SheetPlan } from './plan.ts'
import { planSheet } from './plan-sheet.ts'

/** What the records of a kind of sheet want to be written. */
export function permissionFor(kind: SheetKind): Permission {
  return RECORD_KINDS[kind].permission
}

/** Whether somebody may bring in sheets of a kind at all. */
export function mayBringIn(actor: Actor | undefined, kind: SheetKind): boolean {
  return actor === undefined || hasPermission(actor, permissionFor(kind))
}

/** What bringing in a sheet would do for whoever asks; between rows others are served. */
export async function planFor(
  world: World,
  actor: Actor | undefined,
  { kind, sheet, settings, id }: Pick<KeptSheet, 'kind' | 'sheet' | 'settings' | 'id'>,
): Promise<SheetPlan> {
  const { snapshot, now, today, runtime } = world
  const underWay = runtime.sheetsUnderWay
  return planSheet({
    ...{ kind, sheet, settings, now, today },
    ...{
      program: snapshot.program,
      n: snapshot.n,
      hand: handOf(snapshot, actor),
      reach: reachFor(world, actor, kind),
    },
    pause: async (phase, done) => {
      if (underWay.has(id)) underWay.set(id, { phase, done, of: sheet.rows.length })
      await nextTurn()
    },
  })
}

/** What a plan says, so that what is done can be held against what was seen. */
export function digestOfPlan({ rows, problems }: SheetPlan): string {
  return sha256(
    canonicalJson(JSON.parse(JSON.stringify({ rows, problems })) as Parameters<typeof canonicalJson>[0]),
  )
}

/** How far somebody reaches who brings in a sheet of a kind, or takes one out. */
export function reachFor(world: World, actor: Actor | undefined, kind: SheetKind): SheetReach {
  if (actor === undefined)
    return { person: () => true, belongs: () => true, place: () => true, birthDate: () => true }
  const permission = permissionFor(kind)
  const known = belonging(world)
  const people = peopleInReach(actor, permission, known, world.today)
  const belongs = remembered(
    ({ organisation, unit }: { organisation: string; unit?: string }) => `${organisation} ${unit ?? ''}`,
    (to) => reachesBelonging(actor, permission, to, known.places),
  )
  const place = remembered(
    (id: string | undefined) => id ?? '',
    (id) =>
      id === undefined
        ? reachesProgram(actor, permission)
        : reachesPlace(actor, permission, id, known.places),
  )
  return {
    person: (id) => isInReach(people, id),
    belongs,
    place,
    birthDate: (id) => seesBirthDate(actor, id),
  }
}

/** Twenty thousand rows ask about the same few places. */
function remembered<Asked>(
  keyOf: (asked: Asked) => string,
  answer: (asked: Asked) => boolean,
): (asked: Asked) => boolean {
  const known = new Map<string, boolean>()
  return (asked) => {
    const key = keyOf(asked)
    const before = known.get(key)
    if (before !== undefined) return before
    const answered = answer(asked)
    known.set(key, answered)
    return answered
  }
}
