import type { Finding, FindingKind, MissingFact } from '../core/authority/answer.ts'
import type { Capacity, Complexity } from '../core/rulebooks/words.ts'
import { dayText } from './days.ts'
import { capitalised, joinedByAnd, joinedByOr } from './lists.ts'
import { supervisorText, type Names } from './names.ts'
import { capacityWords, complexityWords, inchesText, sawKindWords, workKindWords } from './work-words.ts'

type FindingOf<Kind extends FindingKind> = Extract<Finding, { kind: Kind }>

/** Why somebody may not, may only under somebody, or cannot be told to: one plain sentence. */
export function findingSentence(finding: Finding, names: Names): string {
  // The key picks the function for its own kind; TypeScript cannot follow that across the union.
  const sentence = SENTENCES[finding.kind] as (finding: Finding, names: Names) => string
  return sentence(finding, names)
}

const SENTENCES: { [Kind in FindingKind]: (finding: FindingOf<Kind>, names: Names) => string } = {
  'no-card': (finding) =>
    `No card for ${workKindWords[finding.workKind]} with ${sawKindWords[finding.sawKind]} is on record for these days.`,
  'book-does-not-recognise': (finding, names) =>
    `The book that governs here recognises no ${finding.level} card of “${names.book(finding.book)}” for this work.`,
  'level-too-low': (finding) =>
    finding.complexity === 'not-rated'
      ? `Level ${finding.level} gives nothing for this kind of work.`
      : `Level ${finding.level} does not reach ${complexityWords[finding.complexity]} work.`,
  'training-only': (finding, names) => {
    const trainer = supervisorText(names, finding.rule.edition, finding.supervisor)
    return finding.level === undefined
      ? `A training assignment allows this work in training only, under a trainer whom it names: ${joinedByOr((finding.trainers ?? []).map(names.person))}.`
      : `Level ${finding.level} allows this work in training only, under ${trainer} who is designated to train.`
  },
  'needs-supervisor': (finding, names) =>
    `This work needs a supervisor in sight and speech: ${supervisorText(names, finding.rule.edition, finding.supervisor)}.`,
  'complexity-unrated': () => 'Nobody has rated how complex this work is.',
  'card-not-yet-valid': (finding) => `The card takes effect on ${dayText(finding.firstDay)}.`,
  'card-no-longer-valid': (finding) =>
    finding.ended === undefined
      ? `The card’s last day is ${dayText(finding.lastDay)}.`
      : `The card was ${finding.ended}; the last day it counts is ${dayText(finding.lastDay)}.`,
  'over-diameter': (finding) =>
    `The card is restricted to ${inchesText(finding.limit)}, and this is ${inchesText(finding.diameter)} across.`,
  'outside-places': (finding, names) =>
    finding.places.length === 0
      ? 'The card is restricted to places and names none.'
      : `The card is restricted to ${joinedByAnd(finding.places.map(names.place))}, and this work is elsewhere.`,
  'outside-species': (finding) =>
    finding.allowed.length === 0
      ? 'The card is restricted by species and names none.'
      : `The card is restricted to ${joinedByAnd(finding.allowed)}, and this is another species.`,
  'above-greatest-complexity': (finding) =>
    `The card is restricted to ${uptoText(finding.limit)} work, and this is planned as ${complexityWords[finding.complexity]}.`,
  'double-bucking-only': () => 'The card is restricted to double bucking, and this is one-person work.',
  'no-felling': () => 'The card carries the restriction “no felling”.',
  'words-unresolved': (finding) =>
    `The card says “${finding.text}”, and no certifying official has said on record what that means for this work.`,
  'certificate-not-on-record': (finding, names) =>
    `No ${names.subject(finding.subject)} certificate that covers these days is on record.`,
  'certificate-lapsed': (finding, names) =>
    `The last day of ${names.subject(finding.subject)} is ${dayText(finding.lastDay)}.`,
  'certificate-not-seen': (finding, names) =>
    `The ${names.subject(finding.subject)} certificate is self-stated, and nobody else has seen it.`,
  'certificate-delivery': (finding, names) =>
    `${capitalised(names.subject(finding.subject))} on record was taken online only, without a skills check in person before it.`,
  suspended: (finding) =>
    `A ${finding.form} (${BECAUSE[finding.because]}) covers these days; ${NOTICE[finding.notice]}.`,
  'under-age': (finding) =>
    finding.capacity === undefined
      ? `The least age for this work is ${finding.years}, and that birthday is still to come.`
      : `The age for this work on one’s own as ${capacityWords[finding.capacity]} is ${finding.years}, and that birthday is still to come.`,
  'guardian-permission-missing': (finding) =>
    GUARDIAN[finding.says](finding.day === undefined ? undefined : dayText(finding.day)),
  'no-agreement': (finding) =>
    AGREEMENT[finding.says](finding.day === undefined ? undefined : dayText(finding.day)),
  'outside-book': (finding) =>
    `The book that governs here does not apply to ${capacityWords[finding.capacity]}.`,
  'not-on-record': (finding) => MISSING[finding.what],
  'no-edition': (finding, names) => `No edition of “${names.book(finding.book)}” is in force on these days.`,
  'rule-failed': ({ rule, says }) =>
    `${rule === undefined ? 'A rule' : `The rule ${rule.rule}`} could not be judged because of a fault of the program: ${says}.`,
}

/** Up to and including a complexity: `least complex`, `least or moderately complex`. */
function uptoText(limit: Complexity): string {
  return { least: 'least complex', moderate: 'least or moderately complex', high: 'any' }[limit]
}

const BECAUSE: { [Reason in FindingOf<'suspended'>['because']]: string } = {
  'unsafe-act': 'an unsafe act',
  incident: 'an incident',
  competence: 'competence',
  administrative: 'administrative',
}

const NOTICE: { [Notice in FindingOf<'suspended'>['notice']]: string } = {
  before: 'these days lie before notice of it reached them',
  after: 'notice of it had reached them',
  'not-recorded': 'when notice of it reached them is not on record',
}

const GUARDIAN: {
  [Says in FindingOf<'guardian-permission-missing'>['says']]: (day: string | undefined) => string
} = {
  'not-on-record': () => 'A guardian’s permission is needed, and none is on record for these days.',
  ended: (day) =>
    `A guardian’s permission is needed, and the one given ${day === undefined ? 'has ended' : `was good through ${day}`}.`,
  refused: () => 'A guardian’s permission is needed, and it was refused.',
  withdrawn: () => 'A guardian’s permission is needed, and it was withdrawn.',
}

const AGREEMENT: { [Says in FindingOf<'no-agreement'>['says']]: (day: string | undefined) => string } = {
  'not-on-record': () => 'An agreement that covers each day is needed, and its days are not on record.',
  'no-last-day': (day) =>
    day === undefined
      ? 'The last day of the agreement is not on record.'
      : `The agreement began on ${day}, and its last day is not on record.`,
  ended: (day) =>
    day === undefined ? 'The agreement has ended.' : `The last day of the agreement is ${day}.`,
  'not-begun': (day) =>
    day === undefined ? 'The agreement has not begun.' : `The agreement begins on ${day}.`,
}

const MISSING: { [What in MissingFact]: string } = {
  age: 'Their age is not on record.',
  capacity: `In which capacity they work (${joinedByOr(statedCapacities())}) is not on record.`,
  'last-day': 'The last day of the card is not on record.',
  'work-kinds': 'Which kinds of work the card is for is not on record.',
  hands:
    'The card is restricted by hands, and the question does not say whether one or two people are on the saw.',
  species: 'The card is restricted by species, and the question does not name one.',
  place: 'The card is restricted to places, and the question does not name one.',
}

function statedCapacities(): string[] {
  const stated: readonly Capacity[] = ['employee', 'volunteer', 'paid-corps-member', 'student', 'contractor']
  return stated.map((capacity) => capacityWords[capacity])
}
