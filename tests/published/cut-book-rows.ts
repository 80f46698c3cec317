import type { BookRow } from './book-row.ts'

const FEDERAL = { edition: 'federal-crosscut-2016', mark: 'published' } as const
const NOTCHES = 'OSHA Logging eTool (2008), kinds of notches'

/** What the sources say of a cut's measurements, and the rule of the federal book that holds each. */
export const CUT_ROWS: readonly BookRow[] = [
  {
    ...FEDERAL,
    fact: 'the face is a quarter to a third of the diameter deep',
    source: NOTCHES,
    rule: 'cut.face-depth',
    figures: { figure: 'face-depth', least: { over: 1, under: 4 }, most: { over: 1, under: 3 } },
  },
  {
    ...FEDERAL,
    fact: 'an open face opens at least 70 degrees, and at most 90',
    source: 'OSHA CPL 02-01-022 (1996)',
    rule: 'cut.face-angle.open',
    figures: { faceTypes: ['open-face'], least: 70, most: 90 },
  },
  {
    ...FEDERAL,
    fact: 'a conventional or Humboldt face opens 45 degrees; the allowance is ours',
    source: NOTCHES,
    mark: 'program-default',
    rule: 'cut.face-angle.closed',
    figures: { faceTypes: ['conventional', 'humboldt'], least: 40, most: 50 },
  },
  {
    ...FEDERAL,
    fact: 'a hinge a tenth of the diameter thick is recommended; that it is the most is ours',
    source: 'OSHA Logging eTool (2008)',
    mark: 'program-default',
    rule: 'cut.hinge-thickness',
    figures: { figure: 'hinge-thickness', most: { over: 1, under: 10 } },
  },
  {
    ...FEDERAL,
    fact: 'the hinge is four fifths of the diameter long',
    source: 'OSHA Logging eTool (2008)',
    rule: 'cut.hinge-length',
    figures: { figure: 'hinge-length', least: { over: 4, under: 5 } },
  },
  {
    ...FEDERAL,
    fact: 'with an open face the back cut is level with the corner of the face',
    source: NOTCHES,
    rule: 'cut.back-cut.open',
    figures: { faceTypes: ['open-face'], least: 0, most: 0 },
  },
  {
    ...FEDERAL,
    fact: 'with the other two it is an inch or more above',
    source: NOTCHES,
    rule: 'cut.back-cut.closed',
    figures: { faceTypes: ['conventional', 'humboldt'], least: 1 },
  },
  {
    ...FEDERAL,
    fact: 'the back cut is above the level cut, but where trees are pulled',
    source: '29 CFR 1910.266(h)(2)(vii)',
    rule: 'cut.back-cut.above',
    figures: { faceTypes: ['conventional', 'humboldt'], above: true, exceptPulled: true },
  },
  {
    ...FEDERAL,
    fact: 'in Michigan about two inches above',
    source: 'Michigan R 408.15336',
    rule: 'cut.back-cut.mi',
    figures: { least: 2, state: 'MI' },
  },
  {
    ...FEDERAL,
    fact: 'a dutchman is a face whose cuts run past each other, and for the very skilled alone',
    source: 'Saws That Sing, 0423-2822-MTDC (2004)',
    mark: 'from-memory',
    rule: 'cut.dutchman',
    figures: { figure: 'dutchman', most: 0 },
  },
]
