import type { Standing } from '../core/rulebooks/standing.ts'
import { aLevel } from './levels.ts'

/**
 * A standing as people say it. The levels are those whom the governing book lets supervise this work; where they are
 * not known the phrase names none.
 */
export function standingText(standing: Standing, supervisors: readonly string[] = []): string {
  return STANDING_TEXTS[standing](supervisors)
}

const STANDING_TEXTS: { [Name in Standing]: (supervisors: readonly string[]) => string } = {
  independent: () => 'on their own',
  'own-level': (supervisors) =>
    supervisors.length === 0 ? 'under a supervisor' : `under ${aLevel(supervisors)}`,
  training: (supervisors) =>
    supervisors.length === 0
      ? 'in training, under a designated trainer'
      : `in training, under a designated ${aLevel(supervisors).replace(/^an? /, '')}`,
  unknown: () => 'not on record',
  none: () => 'no',
}

/** What stands once beside a group of answers, to say what its word means. */
export const STANDING_EXPLANATIONS: { readonly [Name in Standing]: string } = {
  independent: 'All the days asked, for this work.',
  'own-level': 'At the same place, in sight and speech, one cut at a time for each supervisor.',
  training: 'Training never meets a need of the work. It fills a training place.',
  unknown: 'The record does not hold what a rule asks for. This is never a yes.',
  none: 'At least one day asked is a no.',
}
