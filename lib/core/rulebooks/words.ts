/** Words of the trade that rules, records and questions share. */

export const WORK_KINDS = ['bucking', 'felling'] as const
/** Cutting felled or fallen wood, or cutting standing trees. */
export type WorkKind = (typeof WORK_KINDS)[number]

export const SAW_KINDS = ['crosscut', 'chain-saw'] as const
/** The kind of saw that a card's issuer names. */
export type SawKind = (typeof SAW_KINDS)[number]

export const COMPLEXITIES = ['least', 'moderate', 'high'] as const
/** How complex a log or tree is, in rising order. */
export type Complexity = (typeof COMPLEXITIES)[number]

export const CAPACITIES = [
  'employee',
  'volunteer',
  'paid-corps-member',
  'student',
  'contractor',
  'not-stated',
] as const
/** In what capacity somebody works; `not-stated` is the record saying that it does not know. */
export type Capacity = (typeof CAPACITIES)[number]

export const HANDS = ['one', 'two'] as const
/** One person on the saw, or two. */
export type Hands = (typeof HANDS)[number]

export const FACE_TYPES = ['open-face', 'conventional', 'humboldt'] as const
/** The face of a felling cut: cut up and down, level below, or level above. */
export type FaceType = (typeof FACE_TYPES)[number]

export const BINDS = ['none', 'top', 'bottom', 'left', 'right', 'end', 'torsion', 'several'] as const
/** Where the wood of a log is pressed together; left and right as seen from its thicker end. */
export type Bind = (typeof BINDS)[number]

export const LOG_SIDES = ['top', 'bottom', 'left', 'right'] as const
/** The side of a log from which a cut is made; left and right as seen from its thicker end. */
export type LogSide = (typeof LOG_SIDES)[number]

export const WEDGES = ['ordinary', 'hanging'] as const
/** Wedges that open a kerf, and those that hold the ends of a log across it. */
export type WedgeKind = (typeof WEDGES)[number]

export const MARKS = ['published', 'common-practice', 'from-memory', 'program-default'] as const
/** How well a rule is supported: `common-practice` has no source, `from-memory` was not read again. */
export type Mark = (typeof MARKS)[number]

export const DELIVERIES = ['in-person', 'blended', 'online', 'not-stated'] as const
/** How a class behind a certificate was given; `blended` includes a skills check. */
export type Delivery = (typeof DELIVERIES)[number]

export const GIVES = ['none', 'training', 'own-level', 'independent'] as const
/** What a cell of a grant gives, in rising order; `training` and `own-level` are supervised. */
export type Gives = (typeof GIVES)[number]
