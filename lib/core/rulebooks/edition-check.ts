import type { CalendarDate } from '../calendar/dates.ts'
import { nearestName } from '../kernel/nearest-name.ts'
import type { ShippedEdition } from './books.schema.ts'
import { AT_MOST_ONCE, REQUIRED_ONCE, type Rule, type RuleKind, type RuleOf } from './rules.schema.ts'
import type { SawKind, WorkKind } from './words.ts'

/** Where in an edition a problem stands, as a path of names and positions from 0. */
type EditionPath = readonly (string | number)[]

/** What is wrong with an edition, with its figures. `nearest` is the known name nearest to an unknown one. */
export type EditionFault =
  | { kind: 'days-backwards'; firstDay: CalendarDate; lastDay: CalendarDate }
  | { kind: 'rule-missing'; ruleKind: RuleKind }
  | { kind: 'rule-repeated'; ruleKind: RuleKind; rule: string }
  | { kind: 'twin-rule'; rule: string }
  | { kind: 'twin-level'; level: string }
  | { kind: 'twin-rank'; rank: number; level: string }
  | { kind: 'unknown-level'; rule: string; level: string; nearest?: string }
  | { kind: 'twin-grant'; rule: string; level: string; workKind: WorkKind; sawKind: SawKind }
  | { kind: 'twin-least-age'; rule: string; sawKind: SawKind }
  | { kind: 'ages-backwards'; rule: string; from: number; under: number }
  | { kind: 'twin-term'; rule: string; level: string }
  | { kind: 'twin-evaluator'; rule: string; level: string; workKind: WorkKind }
  | { kind: 'recognises-itself'; rule: string; book: string }
  | { kind: 'twin-certificate'; rule: string; subject: string }
  | { kind: 'certificate-not-asked-for'; rule: string; subject: string; nearest?: string }
  | { kind: 'twin-factor'; rule: string; factor: string; workKind: WorkKind }
  | { kind: 'twin-option'; rule: string; option: string }
  | { kind: 'unknown-caution'; rule: string; caution: string; nearest?: string }
  | { kind: 'twin-size'; rule: string; limit: RuleOf<'course.size'>['limit']; workKind: WorkKind }
  | { kind: 'twin-field-days'; rule: string; workKind: WorkKind }
  | { kind: 'twin-share'; rule: string; level: string; workKind: WorkKind }
  | { kind: 'twin-module'; rule: string; module: string }
  | { kind: 'unknown-module'; rule: string; module: string; nearest?: string }
  | { kind: 'twin-training-record'; rule: string; basis: RuleOf<'training-record'>['basis'] }

/** A fault of an edition and where it stands. */
export type EditionProblem = { path: EditionPath } & EditionFault

/** What an edition holds before it was adopted, and after. */
type CheckedEdition = Omit<ShippedEdition, 'id'>

/**
 * Everything that is wrong with an edition beyond its shape, in the order of the edition.
 * `cautions` are the ids of the cautions that are known beside it.
 */
export function checkEdition(edition: CheckedEdition, cautions: readonly string[]): EditionProblem[] {
  const problems: EditionProblem[] = []
  const { firstDay, lastDay } = edition
  if (lastDay !== undefined && lastDay < firstDay) {
    problems.push({ path: ['lastDay'], kind: 'days-backwards', firstDay, lastDay })
  }
  problems.push(...checkLevels(edition), ...checkCounts(edition.rules))
  const once = new Once()
  const levels = edition.levels.map(({ level }) => level)
  const subjects = edition.rules.flatMap((rule) => (rule.kind === 'certificate' ? [rule.subject] : []))
  const modules = edition.rules.flatMap((rule) => (rule.kind === 'course.module' ? [rule.module] : []))
  for (const [position, rule] of edition.rules.entries()) {
    const path = ['rules', position]
    const report = (fault: EditionFault, ...deeper: (string | number)[]) => {
      problems.push({ path: [...path, ...deeper], ...fault })
    }
    if (once.isTwin('rule', rule.id)) report({ kind: 'twin-rule', rule: rule.id }, 'id')
    for (const named of levelsNamed(rule)) {
      if (levels.includes(named.level)) continue
      const fault = {
        kind: 'unknown-level',
        rule: rule.id,
        level: named.level,
        ...near(named.level, levels),
      } as const
      report(fault, ...named.path)
    }
    checkRule(rule, edition.book, once, report)
    checkCourseRule(rule, modules, once, report)
    if (rule.kind === 'certificate.delivery' || rule.kind === 'certificate.seen') {
      for (const [at, subject] of rule.subjects.entries()) {
        if (subjects.includes(subject)) continue
        const fault = {
          kind: 'certificate-not-asked-for',
          rule: rule.id,
          subject,
          ...near(subject, subjects),
        } as const
        report(fault, 'subjects', at)
      }
    }
    if (rule.kind === 'cautions.shown') {
      for (const [at, caution] of rule.cautions.entries()) {
        if (cautions.includes(caution)) continue
        const fault = { kind: 'unknown-caution', rule: rule.id, caution, ...near(caution, cautions) } as const
        report(fault, 'cautions', at)
      }
    }
  }
  return problems
}

type Report = (fault: EditionFault, ...deeper: (string | number)[]) => void

/** Finds what stands twice where it may stand once, and figures that run backwards, in one rule after another. */
function checkRule(rule: Rule, book: string, once: Once, report: Report): void {
  if (rule.kind === 'grant') {
    const { level, workKind, sawKind } = rule
    if (once.isTwin('grant', level, workKind, sawKind)) {
      report({ kind: 'twin-grant', rule: rule.id, level, workKind, sawKind })
    }
  }
  if (rule.kind === 'age.least' && once.isTwin('age.least', rule.sawKind)) {
    report({ kind: 'twin-least-age', rule: rule.id, sawKind: rule.sawKind })
  }
  if (rule.kind === 'age.capacity' && rule.from !== undefined && rule.from >= rule.under) {
    report({ kind: 'ages-backwards', rule: rule.id, from: rule.from, under: rule.under }, 'from')
  }
  if (rule.kind === 'term') {
    for (const level of rule.levels) {
      if (once.isTwin('term', level)) report({ kind: 'twin-term', rule: rule.id, level })
    }
  }
  if (rule.kind === 'evaluator') {
    for (const workKind of rule.workKinds) {
      if (!once.isTwin('evaluator', rule.holds, workKind)) continue
      report({ kind: 'twin-evaluator', rule: rule.id, level: rule.holds, workKind })
    }
  }
  if (rule.kind === 'recognition') {
    for (const [at, recognised] of rule.books.entries()) {
      if (recognised.book === book)
        report({ kind: 'recognises-itself', rule: rule.id, book }, 'books', at, 'book')
    }
  }
  if (rule.kind === 'certificate' && once.isTwin('certificate', rule.subject)) {
    report({ kind: 'twin-certificate', rule: rule.id, subject: rule.subject })
  }
  if (rule.kind === 'worksheet.factor') {
    for (const workKind of rule.workKinds) {
      if (!once.isTwin('factor', workKind, rule.factor)) continue
      report({ kind: 'twin-factor', rule: rule.id, factor: rule.factor, workKind }, 'factor')
    }
    const options = new Once()
    for (const [at, { option }] of rule.options.entries()) {
      if (options.isTwin(option))
        report({ kind: 'twin-option', rule: rule.id, option }, 'options', at, 'option')
    }
  }
}

/** The same of the rules for courses: `modules` are those that the edition states. */
function checkCourseRule(rule: Rule, modules: readonly string[], once: Once, report: Report): void {
  if (rule.kind === 'course.size' || rule.kind === 'course.field-days' || rule.kind === 'course.share') {
    for (const workKind of rule.workKinds) {
      if (rule.kind === 'course.size' && once.isTwin(rule.kind, rule.limit, workKind))
        report({ kind: 'twin-size', rule: rule.id, limit: rule.limit, workKind })
      if (rule.kind === 'course.field-days' && once.isTwin(rule.kind, workKind))
        report({ kind: 'twin-field-days', rule: rule.id, workKind })
      if (rule.kind === 'course.share' && once.isTwin(rule.kind, rule.level, workKind))
        report({ kind: 'twin-share', rule: rule.id, level: rule.level, workKind })
    }
  }
  if (rule.kind === 'course.module' && once.isTwin(rule.kind, rule.module)) {
    report({ kind: 'twin-module', rule: rule.id, module: rule.module }, 'module')
  }
  if (rule.kind === 'course.prerequisite' && rule.needs.need === 'modules') {
    for (const [at, module] of rule.needs.modules.entries()) {
      if (modules.includes(module)) continue
      const fault = { kind: 'unknown-module', rule: rule.id, module, ...near(module, modules) } as const
      report(fault, 'needs', 'modules', at)
    }
  }
  if (rule.kind === 'training-record' && once.isTwin(rule.kind, rule.basis)) {
    report({ kind: 'twin-training-record', rule: rule.id, basis: rule.basis })
  }
}

function checkLevels(edition: CheckedEdition): EditionProblem[] {
  const problems: EditionProblem[] = []
  const once = new Once()
  for (const [position, level] of edition.levels.entries()) {
    const path = ['levels', position]
    if (once.isTwin('rank', String(level.rank))) {
      problems.push({ path: [...path, 'rank'], kind: 'twin-rank', rank: level.rank, level: level.level })
    }
    // A card names a level by its id or an alias, so both share one set of names.
    if (once.isTwin('level', level.level)) {
      problems.push({ path: [...path, 'level'], kind: 'twin-level', level: level.level })
    }
    for (const [at, alias] of (level.aliases ?? []).entries()) {
      if (once.isTwin('level', alias)) {
        problems.push({ path: [...path, 'aliases', at], kind: 'twin-level', level: alias })
      }
    }
  }
  return problems
}

function checkCounts(rules: readonly Rule[]): EditionProblem[] {
  const problems: EditionProblem[] = []
  const single = new Set<RuleKind>([...REQUIRED_ONCE, ...AT_MOST_ONCE])
  const seen = new Set<RuleKind>()
  for (const [position, rule] of rules.entries()) {
    if (single.has(rule.kind) && seen.has(rule.kind)) {
      problems.push({ path: ['rules', position], kind: 'rule-repeated', ruleKind: rule.kind, rule: rule.id })
    }
    seen.add(rule.kind)
  }
  for (const ruleKind of REQUIRED_ONCE) {
    if (!seen.has(ruleKind)) problems.push({ path: ['rules'], kind: 'rule-missing', ruleKind })
  }
  if (lacksLeastAge(rules)) problems.push({ path: ['rules'], kind: 'rule-missing', ruleKind: 'age.least' })
  return problems
}

/** Whether a saw kind for which something is granted has no least age: then nobody's age would be asked. */
function lacksLeastAge(rules: readonly Rule[]): boolean {
  const aged = new Set(rules.flatMap((rule) => (rule.kind === 'age.least' ? [rule.sawKind] : [])))
  return aged.size === 0 || rules.some((rule) => rule.kind === 'grant' && !aged.has(rule.sawKind))
}

/** The levels of its own edition that a rule names, and where in the rule. */
function levelsNamed(rule: Rule): { level: string; path: (string | number)[] }[] {
  if (rule.kind === 'grant') return [{ level: rule.level, path: ['level'] }]
  if (rule.kind === 'term') return rule.levels.map((level, at) => ({ level, path: ['levels', at] }))
  if (rule.kind === 'evaluator') {
    const recommended = rule.recommends.map((level, at) => ({ level, path: ['recommends', at] }))
    return [{ level: rule.holds, path: ['holds'] }, ...recommended]
  }
  if (rule.kind === 'course.share') return [{ level: rule.level, path: ['level'] }]
  if (rule.kind === 'course.prerequisite' && rule.needs.need === 'card') {
    return rule.needs.levels.map((level, at) => ({ level, path: ['needs', 'levels', at] }))
  }
  if (rule.kind !== 'recognition') return []
  return rule.books.flatMap(({ levels }, book) =>
    levels.map(({ ours }, at) => ({ level: ours, path: ['books', book, 'levels', at, 'ours'] })),
  )
}

function near(name: string, known: readonly string[]): { nearest?: string } {
  const nearest = nearestName(name, known)
  return nearest === undefined ? {} : { nearest }
}

/** Remembers what has been met, so that a second one is told. */
class Once {
  private readonly met = new Set<string>()

  isTwin(...parts: string[]): boolean {
    const key = parts.join('|')
    if (this.met.has(key)) return true
    this.met.add(key)
    return false
  }
}
