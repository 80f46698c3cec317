import type { ShippedEdition } from './books.schema.ts'
import { figuresOf } from './rule-figures.ts'
import type { Rule } from './rules.schema.ts'

/** One figure that differs; a side is absent where that edition does not state it. */
export type FigureChange = { name: string; before?: string; after?: string }

/** What changes from one edition to another. */
export type EditionDiff = {
  /** Name, text, days and successor of the edition itself. */
  edition: readonly FigureChange[]
  levels: {
    added: readonly string[]
    removed: readonly string[]
    changed: readonly { level: string; changes: readonly FigureChange[] }[]
  }
  rules: {
    added: readonly Rule[]
    removed: readonly Rule[]
    changed: readonly { id: string; changes: readonly FigureChange[] }[]
    /** How many rules are the same in both. */
    same: number
  }
}

type Side = Omit<ShippedEdition, 'id'>

/** Compares two editions: levels by id, rules by id, each with the figures before and after. */
export function diffEditions(before: Side, after: Side): EditionDiff {
  const levels = pairUp(before.levels, after.levels, ({ level }) => level)
  const rules = pairUp(before.rules, after.rules, ({ id }) => id)
  const changedRules = rules.both
    .map(([was, is]) => ({ id: is.id, changes: changesBetween(ruleFacts(was), ruleFacts(is)) }))
    .filter(({ changes }) => changes.length > 0)
  return {
    edition: changesBetween(editionFacts(before), editionFacts(after)),
    levels: {
      added: levels.added.map(({ level }) => level),
      removed: levels.removed.map(({ level }) => level),
      changed: levels.both
        .map(([was, is]) => ({ level: is.level, changes: changesBetween(levelFacts(was), levelFacts(is)) }))
        .filter(({ changes }) => changes.length > 0),
    },
    rules: {
      added: rules.added,
      removed: rules.removed,
      changed: changedRules,
      same: rules.both.length - changedRules.length,
    },
  }
}

/** Whether nothing changes from one edition to another. */
export function isSameEdition({ edition, levels, rules }: EditionDiff): boolean {
  return [
    edition,
    levels.added,
    levels.removed,
    levels.changed,
    rules.added,
    rules.removed,
    rules.changed,
  ].every((list) => list.length === 0)
}

type Facts = ReadonlyMap<string, string | undefined>

function changesBetween(before: Facts, after: Facts): FigureChange[] {
  const names = new Set([...before.keys(), ...after.keys()])
  return [...names].flatMap((name) => {
    const was = before.get(name)
    const is = after.get(name)
    if (was === is) return []
    return [
      { name, ...(was === undefined ? {} : { before: was }), ...(is === undefined ? {} : { after: is }) },
    ]
  })
}

function editionFacts(edition: Side): Facts {
  return new Map([
    ['name', edition.name],
    ['says', edition.says],
    ['firstDay', edition.firstDay],
    ['lastDay', edition.lastDay],
    ['successor.name', edition.successor?.name],
    ['successor.day', edition.successor?.day],
  ])
}

function levelFacts(level: Side['levels'][number]): Facts {
  return new Map([
    ['name', level.name],
    ['rank', String(level.rank)],
    ['aliases', level.aliases?.join(', ')],
  ])
}

function ruleFacts(rule: Rule): Facts {
  return new Map([
    ['kind', rule.kind],
    ...figuresOf(rule).map(({ name, value }): [string, string] => [name, value]),
    ['says', rule.says],
    ['source', rule.source],
    ['mark', rule.mark],
    ['disagrees', rule.disagrees],
  ])
}

function pairUp<Item>(before: readonly Item[], after: readonly Item[], keyOf: (item: Item) => string) {
  const was = new Map(before.map((item) => [keyOf(item), item]))
  const is = new Map(after.map((item) => [keyOf(item), item]))
  return {
    added: after.filter((item) => !was.has(keyOf(item))),
    removed: before.filter((item) => !is.has(keyOf(item))),
    both: [...is].flatMap(([key, item]): [Item, Item][] => {
      const earlier = was.get(key)
      return earlier === undefined ? [] : [[earlier, item]]
    }),
  }
}
