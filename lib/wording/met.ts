import type { Met } from '../core/authority/answer.ts'
import type { Gives } from '../core/rulebooks/words.ts'
import { dayText } from './days.ts'
import { capitalised } from './lists.ts'
import type { Names } from './names.ts'
import { complexityWords } from './work-words.ts'

type MetKind = Met['kind']
type MetOf<Kind extends MetKind> = Extract<Met, { kind: Kind }>

/** A requirement that is met: one plain sentence. */
export function metSentence(met: Met, names: Names): string {
  // The key picks the function for its own kind; TypeScript cannot follow that across the union.
  const sentence = SENTENCES[met.kind] as (met: Met, names: Names) => string
  return sentence(met, names)
}

const SENTENCES: { [Kind in MetKind]: (met: MetOf<Kind>, names: Names) => string } = {
  'age-reached': (met) => `The age of ${met.years} is reached.`,
  'agreement-covers': () => 'An agreement covers these days.',
  'guardian-permits': () => 'A guardian’s permission is on record.',
  'certificate-holds': (met, names) =>
    `${capitalised(names.subject(met.subject))} is on record through ${dayText(met.lastDay)}.`,
  'card-in-force': (met) =>
    `The card is in force from ${dayText(met.firstDay)} through ${dayText(met.lastDay)}.`,
  'cell-gives': (met) => `Level ${met.level}, ${complexityWords[met.complexity]} work: ${GIVEN[met.gives]}.`,
  'inside-restriction': (met) => `The work lies inside the restriction ${met.restriction} of the card.`,
}

const GIVEN: { [Given in Gives]: string } = {
  none: 'nothing',
  training: 'in training',
  'own-level': 'under a supervisor',
  independent: 'on their own',
}
