import type { BookSection } from '../core/rulebooks/book-text.ts'
import type { EditionFault, EditionProblem } from '../core/rulebooks/edition-check.ts'
import type { TilingProblem } from '../core/rulebooks/tiling.ts'
import { dayText, spanText } from './days.ts'
import { nearestText } from './problem-words.ts'
import { sizeWords, trainingBasisWords } from './course-words.ts'
import { sawKindWords, workKindWords } from './work-words.ts'

type FaultKind = EditionFault['kind']
type FaultOf<Kind extends FaultKind> = Extract<EditionFault, { kind: Kind }>
type TilingKind = TilingProblem['kind']

/** The headings of the sections of a book. */
export const bookSectionWords: { readonly [Section in BookSection]: string } = {
  grants: 'What each level gives',
  cards: 'Cards',
  supervision: 'Supervision and training',
  people: 'People',
  certificates: 'Certificates',
  complexity: 'Complexity',
  worksheet: 'The worksheet of what is seen',
  evaluation: 'Evaluation and decision',
  cuts: 'What a cut measures',
  courses: 'Courses and records of training',
  cautions: 'Cautions',
}

/** What is wrong with an edition: one plain sentence. */
export function editionFaultSentence(fault: EditionFault): string {
  // The key picks the function for its own kind; TypeScript cannot follow that across the union.
  const sentence = FAULTS[fault.kind] as (fault: EditionFault) => string
  return sentence(fault)
}

/** A whole line: where in the edition, and what is wrong. */
export function editionProblemLine(problem: EditionProblem): string {
  const path = problem.path
    .map((step) => (typeof step === 'number' ? `[${step}]` : `.${step}`))
    .join('')
    .replace(/^\./, '')
  return `${path}: ${editionFaultSentence(problem)}`
}

/** Where the editions of a book do not follow each other day by day: one plain sentence. */
export function tilingSentence(problem: TilingProblem): string {
  // The key picks the function for its own kind; TypeScript cannot follow that across the union.
  const sentence = TILINGS[problem.kind] as (problem: TilingProblem) => string
  return sentence(problem)
}

const TILINGS: { [Kind in TilingKind]: (problem: Extract<TilingProblem, { kind: Kind }>) => string } = {
  gap: (problem) =>
    `Between the editions “${problem.before}” and “${problem.after}” of the book “${problem.book}” no edition covers ${spanText({ first: problem.firstDay, last: problem.lastDay })}.`,
  overlap: (problem) =>
    `The editions “${problem.before}” and “${problem.after}” of the book “${problem.book}” both cover ${spanText({ first: problem.firstDay, last: problem.lastDay })}.`,
  'open-end-not-last': (problem) =>
    `The edition “${problem.before}” of the book “${problem.book}” has no last day, and “${problem.after}” begins on ${dayText(problem.firstDay)}.`,
}

const FAULTS: { [Kind in FaultKind]: (fault: FaultOf<Kind>) => string } = {
  'days-backwards': (fault) =>
    `The last day, ${dayText(fault.lastDay)}, lies before the first, ${dayText(fault.firstDay)}.`,
  'rule-missing': (fault) => `The edition has no rule of kind ${fault.ruleKind}. Every edition holds one.`,
  'rule-repeated': (fault) =>
    `The rule ${fault.rule} is another one of kind ${fault.ruleKind}. An edition holds one.`,
  'twin-rule': (fault) => `The rule id ${fault.rule} stands twice.`,
  'twin-level': (fault) => `The level ${fault.level} stands twice, as a level or as an alias.`,
  'twin-rank': (fault) => `The rank ${fault.rank} of level ${fault.level} is that of another level too.`,
  'unknown-level': (fault) =>
    `The rule ${fault.rule} names the level ${fault.level}, which this edition does not have.${nearestText(fault.nearest)}`,
  'twin-grant': (fault) =>
    `The rule ${fault.rule} says again what level ${fault.level} gives for ${workKindWords[fault.workKind]} with ${sawKindWords[fault.sawKind]}.`,
  'twin-least-age': (fault) =>
    `The rule ${fault.rule} states a second least age for ${sawKindWords[fault.sawKind]}.`,
  'ages-backwards': (fault) =>
    `The rule ${fault.rule} begins at age ${fault.from} and ends under age ${fault.under}, which is not later.`,
  'twin-term': (fault) => `The rule ${fault.rule} states a second term for level ${fault.level}.`,
  'twin-evaluator': (fault) =>
    `The rule ${fault.rule} says again whom a ${fault.level} evaluates for ${workKindWords[fault.workKind]}.`,
  'recognises-itself': (fault) => `The rule ${fault.rule} recognises cards of its own book, “${fault.book}”.`,
  'twin-certificate': (fault) => `The rule ${fault.rule} asks a second time for ${fault.subject}.`,
  'certificate-not-asked-for': (fault) =>
    `The rule ${fault.rule} speaks of the certificate ${fault.subject}, which this edition does not ask for.${nearestText(fault.nearest)}`,
  'twin-factor': (fault) =>
    `The rule ${fault.rule} states the factor ${fault.factor} for ${workKindWords[fault.workKind]} a second time.`,
  'twin-option': (fault) => `The rule ${fault.rule} states the option ${fault.option} twice.`,
  'unknown-caution': (fault) =>
    `The rule ${fault.rule} shows the caution ${fault.caution}, which is not known.${nearestText(fault.nearest)}`,
  'twin-size': (fault) =>
    `The rule ${fault.rule} says again how many candidates ${sizeWords[fault.limit]} for ${workKindWords[fault.workKind]}.`,
  'twin-field-days': (fault) =>
    `The rule ${fault.rule} says again how many field days ${workKindWords[fault.workKind]} takes.`,
  'twin-share': (fault) =>
    `The rule ${fault.rule} says again what a candidate for level ${fault.level} gets of ${workKindWords[fault.workKind]}.`,
  'twin-module': (fault) => `The rule ${fault.rule} states the module ${fault.module} a second time.`,
  'unknown-module': (fault) =>
    `The rule ${fault.rule} asks for the module ${fault.module}, which this edition does not state.${nearestText(fault.nearest)}`,
  'twin-training-record': (fault) =>
    `The rule ${fault.rule} says again what a certification of ${trainingBasisWords[fault.basis]} holds.`,
}
