import { canonicalJson } from '../../core/journal/canonical-json.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import type { Program } from '../../core/program/program.schema.ts'
import { SECTION_NAMES, type Fact, type SectionName } from '../../core/program/sections.ts'
import type { NewFact } from '../../store/write.ts'
import { withoutKnowing, type SectionFact } from './program-facts.ts'

/** Which of some facts are new here or say something else than what is current here, and how many say the same. */
export function newFactsOf(
  here: Program,
  n: number,
  facts: readonly SectionFact[],
): { record: (NewFact & { section: SectionName })[]; same: number } {
  const current = new Map<string, Fact>()
  for (const section of SECTION_NAMES) {
    for (const fact of here[section] as readonly Fact[]) {
      if (isKnownAt(fact, n)) current.set(`${section} ${fact.id}`, fact)
    }
  }
  const record: (NewFact & { section: SectionName })[] = []
  let same = 0
  for (const { section, fact } of facts) {
    const known = current.get(`${section} ${fact.id}`)
    if (known !== undefined && contentOf(known) === contentOf(fact)) {
      same += 1
      continue
    }
    const { supersedes: _supersedes, ...rest } = withoutKnowing(fact)
    record.push({
      section,
      fact: known === undefined ? rest : { ...rest, supersedes: known.recordedIn },
    })
  }
  return { record, same }
}

/** The program as it would be after one more entry with these facts, to be read and checked like any file. */
export function mergedProgram(
  here: Program,
  n: number,
  record: readonly (NewFact & { section: SectionName })[],
): unknown {
  const next = n + 1
  const last = here.entries.at(-1)
  const closed = new Map(
    record.flatMap(({ section, fact }) =>
      fact.supersedes === undefined ? [] : [[`${section} ${fact.id} ${fact.supersedes}`, next] as const],
    ),
  )
  const sections = SECTION_NAMES.map((section) => {
    const facts = (here[section] as readonly Fact[]).map((fact) => {
      const supersededIn = closed.get(`${section} ${fact.id} ${fact.recordedIn}`)
      return supersededIn === undefined ? fact : { ...fact, supersededIn }
    })
    const added = record
      .filter((one) => one.section === section)
      .map(({ fact }) => ({ ...fact, recordedIn: next }))
    return [section, [...facts, ...added]] as const
  })
  return {
    ...here,
    ...Object.fromEntries(sections),
    entries: [
      ...here.entries,
      { n: next, statedAt: last?.statedAt, actor: 'Kerfbook', event: 'what is to be brought in' },
    ],
  }
}

/** What a fact says, without the times of knowing it. */
function contentOf(fact: Fact): string {
  const { supersedes: _supersedes, ...rest } = withoutKnowing(fact)
  return canonicalJson(rest)
}
