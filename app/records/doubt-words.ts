import type { DoubtKind } from '../../lib/core/program/problems.ts'

/** What of the records somebody may want to look at together, in words for a list of choices. */
export const DOUBT_WORDS: readonly { kind: DoubtKind | 'any'; words: string }[] = [
  { kind: 'any', words: 'Anything' },
  { kind: 'said-to-be-wrong', words: 'A record that somebody says is wrong' },
  { kind: 'stand-down-waits', words: 'A stand-down that waits for a certifying official' },
  { kind: 'words-unresolved', words: 'Words on a card that nobody has understood' },
  { kind: 'not-reconciled', words: 'Carried in and not compared with its issuer lately' },
  { kind: 'card-without-last-day', words: 'A card without a last day' },
  { kind: 'work-kinds-not-stated', words: 'A card that does not say for which work' },
  { kind: 'longer-than-term', words: 'A card longer than its term' },
  { kind: 'certificate-not-seen', words: 'A certificate that nobody else has seen' },
  { kind: 'certificate-without-days', words: 'A certificate without days' },
  { kind: 'delivery-not-stated', words: 'A class that does not say how it was given' },
  { kind: 'age-not-on-record', words: 'An age that is not on record' },
  { kind: 'capacity-not-stated', words: 'A capacity that is not stated' },
  { kind: 'agreement-open-ended', words: 'An agreement without an end' },
]
