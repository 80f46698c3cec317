import type { Work } from '../../lib/core/authority/answer.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import type { Edition } from '../../lib/core/rulebooks/books.schema.ts'
import type { RuleKind, RuleOf } from '../../lib/core/rulebooks/rules.schema.ts'
import type { Complexity } from '../../lib/core/rulebooks/words.ts'
import { dayNumber, isCovered } from './days.ts'

/** A class of complexity, or that nobody has rated the item. */
export type Planned = Complexity | 'not-rated'

const RISING: readonly Complexity[] = ['least', 'moderate', 'high']

/** The place of a class in the order, 0 least. */
export function rankOfComplexity(complexity: Complexity): number {
  return RISING.indexOf(complexity)
}

/** The class above; high stays high. */
export function oneClassHigher(complexity: Complexity): Complexity {
  return RISING[rankOfComplexity(complexity) + 1] ?? 'high'
}

const rulesByKind = new WeakMap<Edition, Map<string, unknown>>()

/** The rules of one kind in an edition, remembered for each edition. */
export function rulesOf<Kind extends RuleKind>(edition: Edition, kind: Kind): readonly RuleOf<Kind>[] {
  let kinds = rulesByKind.get(edition)
  if (kinds === undefined) {
    kinds = new Map()
    rulesByKind.set(edition, kinds)
  }
  const known = kinds.get(kind) as readonly RuleOf<Kind>[] | undefined
  if (known !== undefined) return known
  const rules = edition.rules.filter((rule): rule is RuleOf<Kind> => rule.kind === kind)
  kinds.set(kind, rules)
  return rules
}

/** The one rule of a kind that an edition must have; throws where a book lacks it. */
export function ruleOf<Kind extends RuleKind>(edition: Edition, kind: Kind): RuleOf<Kind> {
  const rule = rulesOf(edition, kind)[0]
  if (rule === undefined) throw new Error(`edition ${edition.id} has no rule of the kind ${kind}`)
  return rule
}

/** A place and the places it lies in, nearest first. */
export function placesUpwards(records: Records, place: string | undefined): string[] {
  const upwards: string[] = []
  let next = place
  while (next !== undefined && !upwards.includes(next)) {
    upwards.push(next)
    const id: string = next
    next = records.places.find((one) => one.id === id)?.parent
  }
  return upwards
}

/** The book in force on a day: that of the nearest place upwards that names one, else the program's. */
export function bookOn(records: Records, upwards: readonly string[], day: number): string {
  for (const id of upwards) {
    const books = records.places.find((place) => place.id === id)?.books ?? []
    const named = books.find((entry) => isCovered(day, entry.firstDay, entry.lastDay))
    if (named !== undefined) return named.book
  }
  return records.book
}

/** The edition of a book in force on a day; where an open-ended one is followed by another, the later. */
export function editionOn(records: Records, book: string, day: number): Edition | undefined {
  let found: Edition | undefined
  for (const edition of records.editions) {
    if (edition.book !== book || !isCovered(day, edition.firstDay, edition.lastDay)) continue
    if (found === undefined || dayNumber(edition.firstDay) > dayNumber(found.firstDay)) found = edition
  }
  return found
}

/** The level of an edition that a level of some book counts as, for a kind of work; nothing where it counts as none. */
export function levelHere(edition: Edition, book: string, level: string, work: Work): string | undefined {
  if (book === edition.book) return sameLevel(edition, level)
  for (const entry of ruleOf(edition, 'recognition').books) {
    if (entry.book !== book) continue
    if (!entry.workKinds.includes(work.workKind) || !entry.sawKinds.includes(work.sawKind)) continue
    const mapped = entry.levels.find((pair) => pair.theirs === level)
    if (mapped !== undefined && rankOfLevel(edition, mapped.ours) !== undefined) return mapped.ours
  }
  return undefined
}

/** The level of the same id in an edition, or the one that had this name before. */
export function sameLevel(edition: Edition, level: string): string | undefined {
  const same = edition.levels.find((one) => one.level === level)
  return (same ?? edition.levels.find((one) => one.aliases?.includes(level)))?.level
}

/** The rank of a level of an edition. */
export function rankOfLevel(edition: Edition, level: string): number | undefined {
  return edition.levels.find((one) => one.level === level)?.rank
}

/** The grants of an edition for a work kind and a saw kind. */
export function grantsFor(edition: Edition, work: Work): RuleOf<'grant'>[] {
  return rulesOf(edition, 'grant').filter(
    (rule) => rule.workKind === work.workKind && rule.sawKind === work.sawKind,
  )
}

/** The lowest level whose cell is independent: who may supervise. Nothing for an item that nobody has rated. */
export function supervisorLevel(edition: Edition, work: Work, complexity: Planned): string | undefined {
  if (complexity === 'not-rated') return undefined
  const grants = grantsFor(edition, work)
  const able = edition.levels.filter(
    (level) => grants.find((rule) => rule.level === level.level)?.cells[complexity] === 'independent',
  )
  return able.sort((left, right) => left.rank - right.rank)[0]?.level
}
