import type { Instant } from '../../core/calendar/instants.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import type { ProgramProblem } from '../../core/program/problems.ts'
import type { Program } from '../../core/program/program.schema.ts'
import { SECTION_NAMES, type Fact, type SectionName } from '../../core/program/sections.ts'
import type { NewFact, Withdrawal } from '../../store/write.ts'
import { contentOf, withoutKnowing, type SectionFact } from './program-facts.ts'

/** A fact and its place in the list of its section in the file that brings it. */
export type FactOfFile = SectionFact & { index: number }

/** The same as an entry is to record it. */
export type FactToBring = NewFact & { section: SectionName; index: number }

/** The facts of a file that are current by it. */
export function currentFactsOf(file: Program): FactOfFile[] {
  return SECTION_NAMES.flatMap((section) =>
    (file[section] as readonly Fact[])
      .map((fact, index) => ({ section, fact, index }))
      .filter(({ fact }) => isKnownAt(fact, file.entries.length)),
  )
}

/** Which of some facts are new here or say something else than what is current here, and how many say the same. */
export function newFactsOf(
  here: Program,
  n: number,
  facts: readonly FactOfFile[],
): { record: FactToBring[]; same: number } {
  const current = new Map<string, Fact>()
  for (const section of SECTION_NAMES) {
    for (const fact of here[section] as readonly Fact[]) {
      if (isKnownAt(fact, n)) current.set(`${section} ${fact.id}`, fact)
    }
  }
  const record: FactToBring[] = []
  let same = 0
  for (const { section, fact, index } of facts) {
    const known = current.get(`${section} ${fact.id}`)
    if (known !== undefined && contentOf(known) === contentOf(fact)) {
      same += 1
      continue
    }
    const { supersedes: _supersedes, ...rest } = withoutKnowing(fact)
    record.push({
      section,
      index,
      fact: known === undefined ? rest : { ...rest, supersedes: known.recordedIn },
    })
  }
  return { record, same }
}

/**
 * The program as it would be after one more entry that records and withdraws these facts, to be read and checked like
 * any file; the entry is of the moment given, or of that of the last one.
 */
export function mergedProgram(
  here: Program,
  n: number,
  record: readonly FactToBring[],
  withdraw: readonly Withdrawal[] = [],
  statedAt: Instant | undefined = here.entries.at(-1)?.statedAt,
): unknown {
  const next = n + 1
  const closed = new Map([
    ...record.flatMap(({ section, fact }) =>
      fact.supersedes === undefined ? [] : [[`${section} ${fact.id} ${fact.supersedes}`, next] as const],
    ),
    ...withdraw.map(({ section, id, recordedIn }) => [`${section} ${id} ${recordedIn}`, next] as const),
  ])
  const sections = SECTION_NAMES.map((section) => {
    const facts = (here[section] as readonly Fact[]).map((fact) => {
      const supersededIn = closed.get(`${section} ${fact.id} ${fact.recordedIn}`)
      return supersededIn === undefined ? fact : { ...fact, supersededIn }
    })
    const added = broughtTo(section, record).map(({ fact }) => ({ ...fact, recordedIn: next }))
    return [section, [...facts, ...added]] as const
  })
  return {
    ...here,
    ...Object.fromEntries(sections),
    entries: [...here.entries, { n: next, statedAt, actor: 'Kerfbook', event: 'what is to be brought in' }],
  }
}

/**
 * A problem of the merged program with the paths by which somebody who holds the file finds the place: a fact of the
 * file by its place there, one that is on record here by its section and id.
 */
export function problemOfFile(
  problem: ProgramProblem,
  here: Program,
  record: readonly FactToBring[],
): ProgramProblem {
  const path = pathOfFile(problem.path, here, record)
  return 'other' in problem
    ? { ...problem, path, other: pathOfFile(problem.other, here, record) }
    : { ...problem, path }
}

const FACT_PATH = /^([A-Za-z]+)\[(\d+)\](.*)$/

function pathOfFile(path: string, here: Program, record: readonly FactToBring[]): string {
  const [, name, digits, rest = ''] = FACT_PATH.exec(path) ?? []
  const section = SECTION_NAMES.find((known) => known === name)
  if (section === undefined) return path
  const index = Number(digits)
  const onRecord = here[section] as readonly Fact[]
  const known = onRecord[index]
  if (known !== undefined) return `${section}/${known.id}${rest}, on record here`
  const brought = broughtTo(section, record)[index - onRecord.length]
  return brought === undefined ? path : `${section}[${brought.index}]${rest}`
}

function broughtTo(section: SectionName, record: readonly FactToBring[]): FactToBring[] {
  return record.filter((one) => one.section === section)
}
