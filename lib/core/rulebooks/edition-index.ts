import type { EpochDay } from '../calendar/dates.ts'
import { hasDay, toDaySpan, type DaySpan } from '../calendar/spans.ts'
import { InvariantBroken } from '../kernel/result.ts'
import type { Edition, Level } from './books.schema.ts'
import type { RuleRef } from './rule-ref.ts'
import type { RequiredKind, Rule, RuleKind, RuleOf } from './rules.schema.ts'
import { COMPLEXITIES, type Complexity, type SawKind, type WorkKind } from './words.ts'

/** The rules of an edition on the shelf of their kind, in the order of the book. */
type Shelves = { [Kind in RuleKind]: RuleOf<Kind>[] }

/** An edition made ready to be asked: rules by kind, levels by id and alias, grants by cell. */
export class EditionIndex {
  readonly days: DaySpan
  readonly leastAges: ReadonlyMap<SawKind, RuleOf<'age.least'>>
  readonly capacityAges: readonly RuleOf<'age.capacity'>[]
  readonly certificates: readonly RuleOf<'certificate'>[]
  /** The rule taken from its shelf last: the one to name where what was asked of it fails. */
  lastTaken: Rule | undefined
  /** Every age that a rule of this edition asks about, in years. */
  readonly years: readonly number[]
  private readonly shelves: Shelves
  private readonly levels = new Map<string, Level>()
  private readonly grants: { [Saw in SawKind]?: { [Work in WorkKind]?: Map<string, RuleOf<'grant'>> } } = {}
  private readonly supervisors = new Map<string, Level | undefined>()
  private readonly byId: ReadonlyMap<string, Rule>
  private readonly refs = new Map<Rule, RuleRef>()
  private readonly deliveries = new Map<string, RuleOf<'certificate.delivery'>>()
  private readonly seens = new Map<string, RuleOf<'certificate.seen'>>()

  constructor(readonly edition: Edition) {
    this.days = toDaySpan(edition.firstDay, edition.lastDay)
    this.shelves = shelve(edition.rules)
    this.leastAges = new Map(this.all('age.least').map((rule) => [rule.sawKind, rule]))
    this.capacityAges = this.all('age.capacity')
    this.certificates = this.all('certificate')
    this.byId = new Map(edition.rules.map((rule) => [rule.id, rule]))
    for (const level of edition.levels) {
      this.levels.set(level.level, level)
      for (const alias of level.aliases ?? []) this.levels.set(alias, level)
    }
    for (const rule of this.all('grant')) {
      const ofSaw = (this.grants[rule.sawKind] ??= {})
      const ofWork = (ofSaw[rule.workKind] ??= new Map())
      ofWork.set(rule.level, rule)
    }
    for (const rule of this.all('certificate.delivery'))
      for (const subject of rule.subjects) this.deliveries.set(subject, rule)
    for (const rule of this.all('certificate.seen'))
      for (const subject of rule.subjects) this.seens.set(subject, rule)
    this.years = [
      ...new Set([
        ...this.all('age.least').map((rule) => rule.years),
        ...this.capacityAges.flatMap((rule) =>
          rule.from === undefined ? [rule.under] : [rule.from, rule.under],
        ),
        ...this.all('supervision').map((rule) => rule.ofAge),
      ]),
    ]
  }

  /** All rules of a kind, in the order of the book. */
  all<Kind extends RuleKind>(kind: Kind): readonly RuleOf<Kind>[] {
    return this.shelves[kind]
  }

  /** The rule of a kind that every edition holds; throws where the book lacks it, which makes an answer `unknown`. */
  one<Kind extends RequiredKind>(kind: Kind): RuleOf<Kind> {
    const rule = this.shelves[kind][0]
    if (rule === undefined) throw this.lacks(kind)
    this.lastTaken = rule
    return rule
  }

  /** The fault of an edition that lacks a rule it must hold. No rule is taken then, and so none is to be named. */
  lacks(kind: RuleKind): InvariantBroken {
    this.lastTaken = undefined
    return new InvariantBroken(`the edition ${this.edition.id} has no rule of kind ${kind}`)
  }

  /** Whether the edition grants anything with a saw kind. */
  hasGrantsFor(sawKind: SawKind): boolean {
    return this.grants[sawKind] !== undefined
  }

  /** The level of this edition that has the id, or has it as an alias. */
  level(id: string): Level | undefined {
    return this.levels.get(id)
  }

  /** What a level is granted for a work kind with a saw kind. */
  grant(level: string, workKind: WorkKind, sawKind: SawKind): RuleOf<'grant'> | undefined {
    const rule = this.grants[sawKind]?.[workKind]?.get(level)
    if (rule !== undefined) this.lastTaken = rule
    return rule
  }

  /** Whether the edition says anything about the work kind with the saw kind. */
  hasGrants(workKind: WorkKind, sawKind: SawKind): boolean {
    return this.grants[sawKind]?.[workKind] !== undefined
  }

  /** The lowest level that does the work on its own: the rank of whom a supervised person needs. */
  supervisor(workKind: WorkKind, sawKind: SawKind, complexity: Complexity): Level | undefined {
    const key = `${workKind}|${sawKind}|${complexity}`
    if (!this.supervisors.has(key))
      this.supervisors.set(key, this.independents(workKind, sawKind, complexity)[0])
    return this.supervisors.get(key)
  }

  /** The levels that do the work on their own, lowest rank first. */
  independents(workKind: WorkKind, sawKind: SawKind, complexity: Complexity): Level[] {
    return this.edition.levels
      .filter((level) => this.grant(level.level, workKind, sawKind)?.cells[complexity] === 'independent')
      .sort((left, right) => left.rank - right.rank)
  }

  /** Whether a level is given anything at all for the work kind, at any complexity. */
  givesAnything(grant: RuleOf<'grant'> | undefined): boolean {
    return grant !== undefined && COMPLEXITIES.some((complexity) => grant.cells[complexity] !== 'none')
  }

  /** The rule that says how delivery of a subject's certificate counts, where one does. */
  delivery(subject: string): RuleOf<'certificate.delivery'> | undefined {
    return this.deliveries.get(subject)
  }

  /** The rule that a self-stated certificate of the subject must have been seen, where one does. */
  seen(subject: string): RuleOf<'certificate.seen'> | undefined {
    return this.seens.get(subject)
  }

  /** The rule of an id, where the edition has it. */
  rule(id: string): Rule | undefined {
    return this.byId.get(id)
  }

  /** The rule as an answer names it. */
  ref(rule: Rule): RuleRef {
    const known = this.refs.get(rule)
    if (known !== undefined) return known
    const ref = { edition: this.edition.id, rule: rule.id, source: rule.source, mark: rule.mark }
    this.refs.set(rule, ref)
    return ref
  }
}

/** The edition of those given that is in force on a day. */
export function inForceOn(editions: readonly EditionIndex[], day: EpochDay): EditionIndex | undefined {
  return editions.find(({ days }) => hasDay(days, day))
}

/** The edition in force on a day or, before all of them and in a gap, the earliest: what a card was issued by. */
export function inForceOrEarliest(
  editions: readonly EditionIndex[],
  day: EpochDay,
): EditionIndex | undefined {
  const earliest = [...editions].sort((left, right) => left.days.first - right.days.first)[0]
  return inForceOn(editions, day) ?? earliest
}

/** One place for each kind: a kind of rule that nothing asks about does not compile. */
function shelve(rules: readonly Rule[]): Shelves {
  const shelves: Shelves = {
    'age.least': [],
    'age.capacity': [],
    'capacity.outside': [],
    agreement: [],
    certificate: [],
    'certificate.delivery': [],
    'certificate.seen': [],
    assignment: [],
    evaluator: [],
    decider: [],
    grant: [],
    'card.needed': [],
    'card.days': [],
    restriction: [],
    'restriction.words': [],
    suspension: [],
    term: [],
    recognition: [],
    'card.reconciled': [],
    supervision: [],
    'supervision.partner': [],
    'supervision.trainer': [],
    'complexity.rated': [],
    'complexity.provisional': [],
    'worksheet.factor': [],
    'worksheet.stacking': [],
    'cautions.shown': [],
    'cut.share': [],
    'cut.angle': [],
    'cut.back-cut': [],
    'cut.length': [],
    'log.order': [],
    'log.offset': [],
    'log.wedges': [],
    'course.size': [],
    'course.field-days': [],
    'course.field-groups': [],
    'course.module': [],
    'course.prerequisite': [],
    'course.share': [],
    'training-record': [],
    'training-record.kept': [],
  }
  for (const rule of rules) (shelves[rule.kind] as Rule[]).push(rule)
  return shelves
}
