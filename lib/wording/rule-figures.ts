import { writeInches, type Inches } from '../core/kernel/measures.ts'
import type { Rule, RuleKind, RuleOf } from '../core/rulebooks/rules.schema.ts'
import { COMPLEXITIES } from '../core/rulebooks/words.ts'
import {
  courseFormWords,
  settingWords,
  signerWords,
  sizeWords,
  trainingBasisWords,
  trainingRecordWords,
} from './course-words.ts'
import { joinedByAnd, joinedByOr } from './lists.ts'
import type { Names } from './names.ts'
import { bindWords, cutFigureWords, faceTypeWords, logSideWords, wedgeWords } from './cut-words.ts'
import { aLevel } from './levels.ts'
import { capacityWords, complexityWords, sawKindWords, workKindWords } from './work-words.ts'

/** One figure of a rule in words: what it is, and its value. */
export type FigureInWords = { name: string; value: string }

/** How the figures call books, cautions and subjects of certificates. */
export type FigureNames = Pick<Names, 'book' | 'subject'> & { caution: (id: string) => string }

/** What a rule states beside its sentence, each figure with its name; rules without figures give none. */
export function ruleFigures(rule: Rule, names: FigureNames): readonly FigureInWords[] {
  // The key picks the function for its own kind; TypeScript cannot follow that across the union.
  const figures = FIGURES[rule.kind] as (rule: Rule, names: FigureNames) => readonly (Figure | undefined)[]
  return figures(rule, names).flatMap((figure) =>
    figure === undefined ? [] : [{ name: figure[0], value: figure[1] }],
  )
}

type Figure = readonly [name: string, value: string]

const NONE = () => []

const FIGURES: {
  [Kind in RuleKind]: (rule: RuleOf<Kind>, names: FigureNames) => readonly (Figure | undefined)[]
} = {
  // What a level gives stands in a table of its own.
  grant: NONE,
  'card.needed': NONE,
  'card.days': NONE,
  restriction: NONE,
  'restriction.words': NONE,
  suspension: NONE,
  'complexity.rated': NONE,
  term: ({ levels, term, end }) => [
    ['Levels', joinedByAnd(levels)],
    ['Term', 'years' in term ? counted(term.years, 'year') : counted(term.months, 'month')],
    ['Last day', end === 'on-anniversary' ? 'the anniversary' : 'the day before the anniversary'],
  ],
  recognition: ({ books }, { book }) =>
    books.length === 0
      ? [['Books recognised', 'none']]
      : books.map(({ book: id, workKinds, sawKinds, levels }) => [
          book(id),
          `for ${joinedByAnd(workKinds.map((kind) => workKindWords[kind]))} with ${joinedByOr(sawKinds.map((kind) => sawKindWords[kind]))}: ${joinedByAnd(
            levels.map(({ theirs, ours }) => `its ${theirs} counts as ${aLevel([ours])}`),
          )}`,
        ]),
  'card.reconciled': ({ days }) => [['No doubt for', counted(days, 'day')]],
  supervision: ({ cutsAtOnce, ofAge }) => [
    ['Cuts at once for each supervisor', String(cutsAtOnce)],
    ['Age of a supervisor', `${ofAge} and over`],
  ],
  'supervision.partner': ({ workKinds, complexities }) => [work(workKinds), complexity(complexities)],
  'supervision.trainer': ({ roles }) => [['Designated as', joinedByOr(roles)]],
  'age.least': ({ sawKind, years }) => [
    ['With', sawKindWords[sawKind]],
    ['Least age', String(years)],
  ],
  'age.capacity': ({ sawKind, capacities, workKinds, from, under, gives, guardian }) => [
    ['For', joinedByOr(capacities.map((capacity) => capacityWords[capacity]))],
    work(workKinds),
    ['With', sawKindWords[sawKind]],
    ['At the age', from === undefined ? `under ${under}` : `from ${from}, under ${under}`],
    ['At most', AGE_GIVES[gives]],
    guardian === true ? ['Guardian’s permission', 'must be on record'] : undefined,
  ],
  'capacity.outside': ({ capacities }) => [forCapacities(capacities)],
  agreement: ({ capacities }) => [forCapacities(capacities)],
  certificate: ({ subject, servedBy }, names) => [
    ['Subject', names.subject(subject)],
    servedBy === undefined ? undefined : ['Served by', joinedByOr(servedBy.map(names.subject))],
  ],
  'certificate.delivery': ({ subjects }, names) => [['Subjects', joinedByAnd(subjects.map(names.subject))]],
  'certificate.seen': ({ subjects }, names) => [['Subjects', joinedByAnd(subjects.map(names.subject))]],
  assignment: ({ workKinds, upTo }) => [work(workKinds), ['Up to', complexityWords[upTo]]],
  evaluator: ({ holds, workKinds, recommends }) => [
    ['An evaluator who holds', holds],
    work(workKinds),
    ['May recommend', recommends.length === 0 ? 'no level' : joinedByAnd(recommends)],
  ],
  decider: ({ taughtWithinMonths }) => [['Has not taught within', counted(taughtWithinMonths, 'month')]],
  'complexity.provisional': ({ days }) => [['Provisional after', counted(days, 'day')]],
  'worksheet.factor': ({ workKinds, required, options }) => [
    work(workKinds),
    required ? undefined : ['May be left out', 'yes'],
    ...options.map(({ name, floor }): Figure => [name, FLOORS[floor]]),
  ],
  'worksheet.stacking': ({ count, of, make }) => [
    [`${count} that are ${complexityWords[of]}`, `make ${complexityWords[make]}`],
  ],
  'cautions.shown': ({ workKinds, complexities, cautions }, { caution }) => [
    work(workKinds),
    complexity(complexities),
    ['Shown, in this order', cautions.map(caution).join('; ')],
  ],
  'cut.share': ({ figure, least, most, upTo, state }) => [
    ['Of what', cutFigureWords[figure]],
    least === undefined ? undefined : ['At least', `${shareText(least)} of the diameter`],
    most === undefined ? undefined : ['At most', `${shareText(most)} of the diameter`],
    upTo === undefined ? undefined : ['Up to a diameter of', `${writeInches(upTo)} in`],
    inState(state),
  ],
  'cut.angle': ({ faceTypes, least, most, state }) => [
    ['Face', joinedByAnd(faceTypes.map((type) => faceTypeWords[type]))],
    least === undefined ? undefined : ['At least', `${least}°`],
    most === undefined ? undefined : ['At most', `${most}°`],
    inState(state),
  ],
  'cut.back-cut': ({ faceTypes, least, most, above, exceptPulled, state }) => [
    ['Face', joinedByAnd(faceTypes.map((type) => faceTypeWords[type]))],
    above === true ? ['Above the face', 'by however little, and not level with it'] : undefined,
    least === undefined ? undefined : ['Above the face by at least', inchesText(least)],
    most === undefined ? undefined : ['Above the face by at most', inchesText(most)],
    exceptPulled === true ? ['Not of', 'trees that are pulled over'] : undefined,
    inState(state),
  ],
  'cut.length': ({ figure, most, state }) => [
    ['Of what', cutFigureWords[figure]],
    ['At most', inchesText(most)],
    inState(state),
  ],
  'log.order': ({ bind, roomBelow, first, last }) => [
    ['Bind', bindWords[bind]],
    room(roomBelow),
    ['First cut from', logSideWords[first]],
    last === undefined ? undefined : ['Last cut from', logSideWords[last]],
  ],
  'log.offset': () => [['Cuts from two sides', 'apart along the log by however little']],
  'log.wedges': ({ bind, roomBelow, wedge, least }) => [
    ['Bind', bindWords[bind]],
    room(roomBelow),
    [`At least so many ${wedgeWords[wedge]}`, String(least)],
  ],
  'course.size': (rule) => [
    work(rule.workKinds),
    [`Candidates ${sizeWords[rule.limit]}, at most`, String(rule.count)],
    'roles' in rule ? ['Counted as a trainer', joinedByOr(rule.roles)] : undefined,
  ],
  'course.field-days': ({ workKinds, days }) => [work(workKinds), ['Field days', String(days)]],
  'course.field-groups': ({ apart }) => [
    ['Not mixed in one field group', joinedByAnd(apart.map((kind) => workKindWords[kind]))],
  ],
  'course.module': ({ name, workKinds, setting, hours }) => [
    ['Module', name],
    work(workKinds),
    ['Taught', settingWords[setting]],
    hours === undefined ? undefined : ['Suggested time', counted(hours, 'hour')],
  ],
  'course.prerequisite': ({ workKinds, forms, needs }, names) => [
    work(workKinds),
    forms === undefined ? undefined : ['In', joinedByOr(forms.map((form) => courseFormWords[form]))],
    needed(needs, names),
  ],
  'course.share': ({ level, workKinds, mix }) => [
    ['Level asked for', level],
    work(workKinds),
    ...COMPLEXITIES.map((each): Figure => [
      `Logs or trees that are ${complexityWords[each]}`,
      String(mix[each]),
    ]),
  ],
  'training-record': ({ basis, holds, signedBy }) => [
    ['Of', trainingBasisWords[basis]],
    ['Holds', joinedByAnd(holds.map((part) => trainingRecordWords[part]))],
    ['Signed by', joinedByOr(signedBy.map((signer) => signerWords[signer]))],
  ],
  'training-record.kept': ({ keep }) => [['Kept', KEPT[keep]]],
}

const KEPT = { latest: 'the latest certification', all: 'every certification' } satisfies Record<
  RuleOf<'training-record.kept'>['keep'],
  string
>

/** What somebody needs before a field day, as one figure. */
function needed(needs: RuleOf<'course.prerequisite'>['needs'], names: FigureNames): Figure {
  switch (needs.need) {
    case 'person-rules':
      return ['Needed', 'all that this book asks of anybody who saws, but for the card']
    case 'age':
      return ['Least age', String(needs.years)]
    case 'certificate':
      return ['Certificate', names.subject(needs.subject)]
    case 'card': {
      const ended = needs.endedWithinMonths
      const wanted = `${aLevel(needs.levels)} in force`
      return [
        'Card',
        ended === 0 ? wanted : `${wanted}, or ended no more than ${counted(ended, 'month')} before`,
      ]
    }
    case 'modules':
      return ['Modules attended', joinedByAnd(needs.modules.map((module) => module.replaceAll('-', ' ')))]
  }
}

/** What an observation makes of the work at the least. */
const FLOORS = {
  least: complexityWords.least,
  moderate: `${complexityWords.moderate}, or more`,
  high: complexityWords.high,
} satisfies Record<RuleOf<'worksheet.stacking'>['of'], string>

const AGE_GIVES = {
  none: 'no work',
  unknown: 'not on record',
  supervised: 'under supervision',
} satisfies Record<RuleOf<'age.capacity'>['gives'], string>

function work(kinds: RuleOf<'assignment'>['workKinds']): Figure {
  return ['Work', joinedByAnd(kinds.map((kind) => workKindWords[kind]))]
}

function complexity(complexities: RuleOf<'supervision.partner'>['complexities']): Figure {
  return ['Complexity', joinedByOr(complexities.map((each) => complexityWords[each]))]
}

function forCapacities(capacities: RuleOf<'agreement'>['capacities']): Figure {
  return ['For', joinedByOr(capacities.map((capacity) => capacityWords[capacity]))]
}

function counted(count: number, one: string): string {
  return `${count} ${count === 1 ? one : `${one}s`}`
}

function room(roomBelow: boolean | undefined): Figure | undefined {
  return roomBelow === undefined ? undefined : ['Room for a saw below', roomBelow ? 'yes' : 'no']
}

function shareText({ over, under }: { over: number; under: number }): string {
  return `${over}/${under}`
}

function inchesText(inches: Inches | 0): string {
  return inches === 0 ? 'nothing' : `${writeInches(inches)} in`
}

function inState(state: string | undefined): Figure | undefined {
  return state === undefined ? undefined : ['In', state]
}
