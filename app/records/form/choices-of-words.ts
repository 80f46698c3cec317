import {
  CAPACITIES,
  COMPLEXITIES,
  DELIVERIES,
  HANDS,
  SAW_KINDS,
  WORK_KINDS,
} from '../../../lib/core/rulebooks/words.ts'
import { capitalised } from '../../../lib/wording/lists.ts'
import {
  capacityWords,
  complexityWords,
  deliveryWords,
  handsWords,
  sawKindWords,
  workKindWords,
} from '../../../lib/wording/work-words.ts'
import type { Option } from './parts.ts'

function optionsOf<Word extends string>(
  words: readonly Word[],
  said: Readonly<Record<Word, string>>,
): readonly Option[] {
  return words.map((value) => ({ value, label: capitalised(said[value]) }))
}

/** Words of the trade as a form offers them. */
export const CAPACITY_OPTIONS = optionsOf(CAPACITIES, { ...capacityWords, 'not-stated': 'not stated' })
export const COMPLEXITY_OPTIONS = optionsOf(COMPLEXITIES, complexityWords)
export const RATING_OPTIONS = [...COMPLEXITY_OPTIONS, { value: 'not-rated', label: 'Could not be rated' }]
export const DELIVERY_OPTIONS = optionsOf(DELIVERIES, deliveryWords)
export const HANDS_OPTIONS = optionsOf(HANDS, handsWords)
export const SAW_KIND_OPTIONS = optionsOf(SAW_KINDS, sawKindWords)
export const WORK_KIND_OPTIONS = optionsOf(WORK_KINDS, workKindWords)
