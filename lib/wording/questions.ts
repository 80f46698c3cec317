import type { Work } from '../core/authority/answer.ts'
import type { Span } from '../core/calendar/spans.ts'
import { onDays } from './days.ts'
import { joinedByAnd } from './lists.ts'
import type { Names } from './names.ts'
import { complexityText, handsWords, inchesText, sawKindWords, workKindVerbs } from './work-words.ts'

/**
 * The question as one sentence: `Who may fell a tree, 22 in across, moderately complex, with a crosscut saw, from 8 to
 * 15 July 2027, at North Ashlar?` Those asked by name stand in the place of "who".
 */
export function questionSentence(work: Work, days: Span, names: Names, persons?: readonly string[]): string {
  const who = persons === undefined ? 'Who' : joinedByAnd(persons.map(names.person))
  const start = persons === undefined ? `${who} may` : `May ${who}`
  return `${start} ${workPhrase(work, names)}, ${onDays(days)}${atPlace(work, names)}?`
}

/** The work as a phrase: `fell a tree, 22 in across, moderately complex, with a crosscut saw`. */
function workPhrase(work: Work, names: Names): string {
  const item = work.item === undefined ? [] : [`(${names.item(work.item)})`]
  const complexity =
    work.complexity === undefined ? ['as complex as its ratings say'] : [complexityText(work.complexity)]
  const hands = work.hands === undefined ? [] : [handsWords[work.hands]]
  const species = work.species === undefined ? [] : [work.species]
  return [
    [workKindVerbs[work.workKind], ...item].join(' '),
    `${inchesText(work.diameter)} across`,
    ...complexity,
    ...hands,
    ...species,
    `with ${sawKindWords[work.sawKind]}`,
  ].join(', ')
}

function atPlace(work: Work, names: Names): string {
  return work.place === undefined ? '' : `, at ${names.place(work.place)}`
}
