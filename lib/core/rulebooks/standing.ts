/**
 * What a person is for one log or tree on one day, from worst to best; `training` and `own-level` are the two kinds
 * of `supervised`. Kinds count wherever standings are compared.
 */
export const STANDINGS = ['none', 'unknown', 'training', 'own-level', 'independent'] as const
export type Standing = (typeof STANDINGS)[number]

/** The place of a standing in the order, 0 worst: the form used in hot loops. */
export type StandingRank = 0 | 1 | 2 | 3 | 4

export const NONE: StandingRank = 0
export const UNKNOWN: StandingRank = 1
export const TRAINING: StandingRank = 2
export const OWN_LEVEL: StandingRank = 3
export const INDEPENDENT: StandingRank = 4

/** The worse of two. */
export function worse(left: StandingRank, right: StandingRank): StandingRank {
  return left < right ? left : right
}

/** The name of a rank. */
export function standingOf(rank: StandingRank): Standing {
  return STANDINGS[rank]
}

/** The rank of a name. */
export function rankOf(standing: Standing): StandingRank {
  return STANDINGS.indexOf(standing) as StandingRank
}

/** Whether somebody may take part in the work: on their own, or under somebody's eye. */
export function isSupervised(rank: StandingRank): boolean {
  return rank === TRAINING || rank === OWN_LEVEL
}
