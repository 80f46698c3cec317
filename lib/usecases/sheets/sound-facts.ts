import type { Instant } from '../../core/calendar/instants.ts'
import type { ProgramProblem } from '../../core/program/problems.ts'
import type { Program } from '../../core/program/program.schema.ts'
import { readProgram } from '../../core/program/read-program.ts'
import type { Fact } from '../../core/program/sections.ts'
import { problemSentence } from '../../wording/problems.ts'
import { mergedProgram, type FactToBring } from '../program/merged-program.ts'
import type { RecordSection } from '../records/record-kinds.ts'
import type { PlannedFact } from './plan.ts'

/** A fact of a row, before its place among the others is known. */
export type DraftFact = Omit<PlannedFact, 'index'>

/** What is wrong with a record of a row, at its field. */
export type RefusedAt = { path: string; message: string; section: RecordSection }

/** How often the rows that cannot stand are taken out and the others looked at again. */
const MOST_ROUNDS = 5

/**
 * Which facts make a sound program together with what is on record, by the checks of a program file. Rows that do not
 * are taken out, with why; the others are looked at again, since one may have rested on another.
 */
export function soundFacts(
  { program, n, now }: { program: Program; n: number; now: Instant },
  drafts: readonly DraftFact[],
): {
  facts: readonly PlannedFact[]
  refused: ReadonlyMap<number, readonly RefusedAt[]>
  problems: readonly string[]
} {
  const refused = new Map<number, RefusedAt[]>()
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const facts = drafts
      .filter(({ row }) => !refused.has(row))
      .map((fact, index): PlannedFact => ({ ...fact, index }))
    if (facts.length === 0) return { facts, refused, problems: [] }
    const read = readProgram(mergedProgram(program, n, facts, [], now))
    if (read.ok) return { facts, refused, problems: [] }
    const before = refused.size
    const strays = read.problem.filter((problem) => !refuse(problem, { program, facts, refused }))
    if (refused.size === before) return { facts: [], refused, problems: strays.map(problemSentence) }
  }
  return {
    facts: [],
    refused,
    problems: ['The rows contradict each other in too many ways. Bring in fewer at once.'],
  }
}

const FACT_PATH = /^([A-Za-z]+)\[(\d+)\]\.?(.*)$/

type Around = { program: Program; facts: readonly PlannedFact[]; refused: Map<number, RefusedAt[]> }

/** Takes the row out that a problem belongs to; false where it belongs to none. */
function refuse(problem: ProgramProblem, around: Around): boolean {
  const paths = [problem.path, ...('other' in problem ? [problem.other] : [])]
  for (const path of paths) {
    const found = factAt(path, around)
    if (found === undefined) continue
    const reason = { path: found.rest, message: problemSentence(problem), section: found.fact.section }
    const known = around.refused.get(found.fact.row)
    if (known === undefined) around.refused.set(found.fact.row, [reason])
    else if (!known.some(({ message }) => message === reason.message)) known.push(reason)
    return true
  }
  return false
}

function factAt(path: string, { program, facts }: Around): { fact: PlannedFact; rest: string } | undefined {
  const [, section, digits, rest = ''] = FACT_PATH.exec(path) ?? []
  if (section === undefined || !(section in program)) return undefined
  const index = Number(digits) - (program[section as RecordSection] as readonly Fact[]).length
  const added: readonly FactToBring[] = facts.filter((fact) => fact.section === section)
  const fact = index < 0 ? undefined : added[index]
  return fact === undefined ? undefined : { fact: fact as PlannedFact, rest }
}
