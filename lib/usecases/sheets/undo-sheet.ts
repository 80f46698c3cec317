import { z } from 'zod'
import { hasPermission } from '../../access/reach.ts'
import type { Actor } from '../../access/roles.ts'
import type { Sections } from '../../core/authority/records.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { readProgram } from '../../core/program/read-program.ts'
import { sheetUndone } from '../../store/desk/sheets.ts'
import { entryRows } from '../../store/entries.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import type { Withdrawal } from '../../store/write.ts'
import { problemSentence } from '../../wording/problems.ts'
import { refusedBecause, type NotDone } from '../door/outcome.ts'
import { command, nothingToPrepare, query, type About, type World } from '../door/use-case.ts'
import { mergedProgram, type FactToBring } from '../program/merged-program.ts'
import { namesIn, recordName } from '../records/record-name.ts'
import { RECORD_KINDS, RECORD_SECTIONS, type RecordSection } from '../records/record-kinds.ts'
import { factToRecord } from '../records/typed-record.ts'
import { aboutFacts } from './bring-in-sheet.ts'
import { restingOn } from './resting-on.ts'

const input = z.strictObject({ entry: z.int().min(1) })

/** How many of the records that stand in the way are named. */
const MOST_NAMED = 20

type FactOfEntry = { section: RecordSection; fact: Sections[RecordSection] }
type Undoing = { entry: number; facts: readonly FactOfEntry[]; about: About }
type Undone = { entry: number; record: readonly FactToBring[]; withdraw: readonly Withdrawal[] }

/**
 * Undoes what a sheet brought in, exactly: what it added is withdrawn, what it changed says again what it said before.
 * Nothing is lost: what stood meanwhile stays known as it was. Refused where a later record rests on any of it.
 */
export const undoSheet = command({
  name: 'sheets/undo',
  permission: 'bring-in-sheets',
  input,
  prepare: nothingToPrepare,
  load: (world, _prepared, { entry }, actor) => loadUndoing(world, entry, actor),
  about: ({ about }) => about,
  decide: (undoing, _input, { snapshot, now }): Result<Undone, NotDone> => {
    const rested = standingInTheWay(snapshot, undoing)
    if (rested.length > 0)
      return refusal(
        refusedBecause({
          kind: 'rested-on',
          records: rested.slice(0, MOST_NAMED),
          more: Math.max(0, rested.length - MOST_NAMED),
        }),
      )
    const undone = undoneBy(snapshot, undoing)
    const read = readProgram(mergedProgram(snapshot.program, snapshot.n, undone.record, undone.withdraw, now))
    if (read.ok) return success(undone)
    const problems = [...new Set(read.problem.map(problemSentence))]
    return refusal({
      kind: 'invalid',
      fields: problems.slice(0, MOST_NAMED).map((message) => ({ path: '', message })),
    })
  },
  save: ({ record, withdraw }) => [
    { changes: { record: record.map(({ section, fact }) => ({ section, fact })), withdraw } },
  ],
  journal: ({ entry }) => ({ event: 'sheet-undone', said: { entry } }),
  desk: ({ entry }, tx) => sheetUndone(tx, entry),
  value: ({ entry, record, withdraw }) => ({ entry, changed: record.length, withdrawn: withdraw.length }),
})

/** What undoing would do, and what stands in its way. Nothing is written. */
export const aboutUndoing = query({
  name: 'sheets/about-undoing',
  permission: 'bring-in-sheets',
  input,
  load: (world, { entry }, actor) => loadUndoing(world, entry, actor),
  about: ({ about }) => about,
  answer: (undoing, { snapshot }) => {
    const { record, withdraw } = undoneBy(snapshot, undoing)
    const rested = standingInTheWay(snapshot, undoing)
    return {
      entry: undoing.entry,
      statedAt: snapshot.program.entries[undoing.entry - 1]?.statedAt,
      changed: record.length,
      withdrawn: withdraw.length,
      rested: rested.slice(0, MOST_NAMED),
      more: Math.max(0, rested.length - MOST_NAMED),
    }
  },
  looked: ({ entry, changed, withdrawn }) => ({ question: { undo: entry }, count: changed + withdrawn }),
})

async function loadUndoing(
  { snapshot, runtime }: World,
  entry: number,
  actor: Actor | undefined,
): Promise<Result<Undoing, NotDone>> {
  const [row] = await entryRows(runtime.store.prisma, entry - 1, 1)
  const facts = factsOf(snapshot, entry)
  const isUndone = facts.length === 0 || facts.every(({ fact }) => fact.supersededIn !== undefined)
  if (row?.n !== entry || row.event !== 'sheet-brought-in' || isUndone)
    return refusal(refusedBecause({ kind: 'no-sheet-entry', entry }))
  const mayNot = facts.find(
    ({ section }) => actor !== undefined && !hasPermission(actor, RECORD_KINDS[section].permission),
  )
  if (mayNot !== undefined) return refusal({ kind: 'forbidden' })
  const flat = facts.map(({ section, fact }) => ({ section, fact: { ...fact } }))
  return success({ entry, facts, about: aboutFacts(snapshot, flat) })
}

/** The facts that an entry recorded. */
function factsOf({ program }: Snapshot, entry: number): FactOfEntry[] {
  return RECORD_SECTIONS.flatMap((section) =>
    (program[section] as readonly Sections[RecordSection][])
      .filter(({ recordedIn }) => recordedIn === entry)
      .map((fact) => ({ section, fact })),
  )
}

/** Records corrected or withdrawn since, and later ones that name what the sheet added, as people call them. */
function standingInTheWay(snapshot: Snapshot, { entry, facts }: Undoing): readonly string[] {
  const names = namesIn(snapshot)
  const corrected = facts.filter(({ fact }) => fact.supersededIn !== undefined)
  const added = facts.filter(({ fact }) => fact.supersedes === undefined)
  return [
    ...corrected.map(({ section, fact }) => `${recordName(names, section, fact)}, corrected since`),
    ...restingOn(snapshot, entry, added),
  ]
}

function undoneBy({ program, n }: Snapshot, { entry, facts }: Undoing): Undone {
  const standing = facts.filter(({ fact }) => isKnownAt(fact, n))
  const closed = new Map(
    RECORD_SECTIONS.flatMap((section) =>
      (program[section] as readonly Sections[RecordSection][])
        .filter(({ supersededIn }) => supersededIn === entry)
        .map((fact) => [`${section} ${fact.id}`, fact] as const),
    ),
  )
  const withdraw: Withdrawal[] = []
  const record: FactToBring[] = []
  for (const { section, fact } of standing) {
    const before = closed.get(`${section} ${fact.id}`)
    if (before === undefined) withdraw.push({ section, id: fact.id, recordedIn: entry })
    else record.push({ section, index: record.length, fact: factToRecord(section, before, entry).fact })
  }
  return { entry, record, withdraw }
}
