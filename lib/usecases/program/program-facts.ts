import { canonicalJson } from '../../core/kernel/canonical-json.ts'
import type { Remark } from '../../core/journal/remarks.schema.ts'
import type { AdoptedBook } from '../../core/program/adopt-book.ts'
import type { Entry, Program } from '../../core/program/program.schema.ts'
import { SECTION_NAMES, type Fact, type SectionName } from '../../core/program/sections.ts'
import type { NewFact, Withdrawal } from '../../store/write.ts'

/** A fact of a section as the journal takes it: when it is known is the entry's to say. */
export type SectionFact = { section: SectionName; fact: Fact }

/** What one entry of a file recorded, and what it ended without an heir. */
export type EntryFacts = { record: NewFact[]; withdraw: Withdrawal[] }

/** What each entry of a file did, by its number. */
export function factsByEntry(file: Program): ReadonlyMap<number, EntryFacts> {
  const entries = new Map<number, EntryFacts>(
    file.entries.map(({ n }) => [n, { record: [], withdraw: [] }] as const),
  )
  for (const section of SECTION_NAMES) {
    const facts: readonly Fact[] = file[section]
    const corrected = new Set(
      facts.flatMap(({ id, supersedes }) => (supersedes === undefined ? [] : [`${id} ${supersedes}`])),
    )
    for (const fact of facts) {
      entries.get(fact.recordedIn)?.record.push({ section, fact: withoutKnowing(fact) })
      if (fact.supersededIn === undefined || corrected.has(`${fact.id} ${fact.recordedIn}`)) continue
      entries.get(fact.supersededIn)?.withdraw.push({ section, id: fact.id, recordedIn: fact.recordedIn })
    }
  }
  return entries
}

/** A fact without the numbers of the entries in which it became known and ceased to be. */
export function withoutKnowing<Kind extends Fact>(fact: Kind): Omit<Kind, 'recordedIn' | 'supersededIn'> {
  const { recordedIn: _recordedIn, supersededIn: _supersededIn, ...rest } = fact
  return rest
}

/** What a fact says, without when that came to be known: the same text for the same content. */
export function contentOf(fact: Fact): string {
  const { supersedes: _supersedes, ...content } = withoutKnowing(fact)
  return canonicalJson(content)
}

/** The head of a program file as a fact. */
export function headFact({ program, invented }: Program): NewFact {
  return { section: 'program', fact: { ...program, invented: invented ?? false } }
}

/** What a file says of one of its entries: who did what, in its words, and why. */
export function statementFacts({ n, actor, event, why, paper }: Entry): NewFact[] {
  return [
    { section: 'statements', fact: { id: `entry-${n}`, actor, event } },
    ...remarkFacts(n, { why, paper }),
  ]
}

/** Why an entry was made, and the paper behind it; nothing where neither was said. */
export function remarkFacts(
  n: number,
  { why, paper }: { [Name in keyof Remark]: Remark[Name] | undefined },
): NewFact[] {
  if (why === undefined && paper === undefined) return []
  const said = { ...(why === undefined ? {} : { why }), ...(paper === undefined ? {} : { paper }) }
  return [{ section: 'remarks', fact: { id: `entry-${n}`, ...said } }]
}

/** The facts of a rule book as a program adopts it. */
export function bookFacts(adopted: AdoptedBook): NewFact[] {
  const sections = ['books', 'editions', 'extensions', 'cautions'] as const
  return sections.flatMap((section) =>
    adopted[section].map((fact): NewFact => ({ section, fact: withoutKnowing(fact) })),
  )
}
