import { readDate } from '../core/calendar/dates.ts'
import type { FigureChange } from '../core/rulebooks/edition-diff.ts'
import type { Rule } from '../core/rulebooks/rules.schema.ts'
import { COMPLEXITIES } from '../core/rulebooks/words.ts'
import { dayText } from './days.ts'
import { capitalised } from './lists.ts'
import { ruleFigures, type FigureNames } from './rule-figures.ts'
import { standingText } from './standings.ts'
import { complexityWords, markWords } from './work-words.ts'

const EDITION_WORDS: Readonly<Record<string, string>> = {
  name: 'Name',
  says: 'What it is',
  firstDay: 'First day',
  lastDay: 'Last day',
  'successor.name': 'Its successor',
  'successor.day': 'Day of its successor',
}

const LEVEL_WORDS: Readonly<Record<string, string>> = {
  name: 'Name',
  rank: 'Rank among the levels',
  aliases: 'Also called',
}

/** What changes of the edition itself, in words. */
export function editionChanges(changes: readonly FigureChange[]): FigureChange[] {
  return changes.map((change) => inWords(change, EDITION_WORDS))
}

/** What changes of a level, in words. */
export function levelChanges(changes: readonly FigureChange[]): FigureChange[] {
  return changes.map((change) => inWords(change, LEVEL_WORDS))
}

/**
 * What changes of a rule that both editions have, in words. Where the words of both are the same the figures stand as
 * the book states them, so that no change is hidden by how it is said.
 */
export function ruleChanges(
  before: Rule | undefined,
  after: Rule | undefined,
  figures: readonly FigureChange[],
  names: FigureNames,
): readonly FigureChange[] {
  const was = before === undefined ? new Map<string, string>() : ruleWords(before, names)
  const is = after === undefined ? new Map<string, string>() : ruleWords(after, names)
  const changes = [...new Set([...was.keys(), ...is.keys()])].flatMap((name): FigureChange[] => {
    const [said, says] = [was.get(name), is.get(name)]
    if (said === says) return []
    return [
      {
        name,
        ...(said === undefined ? {} : { before: said }),
        ...(says === undefined ? {} : { after: says }),
      },
    ]
  })
  return changes.length === 0 ? figures : changes
}

function ruleWords(rule: Rule, names: FigureNames): Map<string, string> {
  const cells =
    rule.kind === 'grant'
      ? COMPLEXITIES.map((one) => [capitalised(complexityWords[one]), standingText(rule.cells[one])] as const)
      : []
  return new Map<string, string>([
    ['What it says', rule.says],
    ...cells,
    ...ruleFigures(rule, names).map(({ name, value }) => [name, value] as const),
    ['Source', rule.source],
    ['How well it is supported', capitalised(markWords[rule.mark])],
    ...(rule.disagrees === undefined ? [] : [['Another source says', rule.disagrees] as const]),
  ])
}

function inWords(
  { name, before, after }: FigureChange,
  words: Readonly<Record<string, string>>,
): FigureChange {
  return {
    name: words[name] ?? name,
    ...(before === undefined ? {} : { before: dayOrText(before) }),
    ...(after === undefined ? {} : { after: dayOrText(after) }),
  }
}

function dayOrText(text: string): string {
  const read = readDate(text)
  return 'date' in read ? dayText(read.date) : text
}
