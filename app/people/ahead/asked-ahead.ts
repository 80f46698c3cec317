import { MOST_AHEAD, USUAL_AHEAD } from '../../../lib/usecases/people/lapses-ahead.ts'
import { addressWord, type AddressWords } from '../../_parts/address.ts'

/** What may lapse, in words for a list to choose from. */
export const KIND_WORDS = {
  card: 'Cards',
  certificate: 'Certificates',
  other: 'Agreements and appointments',
} as const

/** How far ahead may be looked, in words for a list to choose from. */
export const SPANS = [
  { value: '31', label: 'the next month' },
  { value: '92', label: 'three months' },
  { value: String(MOST_AHEAD), label: 'fifteen months' },
]

/** What the address asks of the list. */
export function askedOf(words: AddressWords) {
  const unit = addressWord(words, 'unit')
  const kind = addressWord(words, 'kind')
  const month = addressWord(words, 'month')
  const days = SPANS.find(({ value }) => value === addressWord(words, 'days'))?.value
  return {
    ...(unit === undefined ? {} : { unit }),
    ...(kind === undefined ? {} : { kind }),
    ...(month === undefined ? {} : { month }),
    days: days === undefined ? USUAL_AHEAD : Number(days),
  }
}
