import type { Change, FindingKind, NoteKind } from '../../lib/core/authority/answer.ts'

/** Every kind of finding, note and change by name: one that is new does not compile until it stands here. */
export const FINDING_KINDS: Record<FindingKind, true> = {
  'rule-failed': true,
  'no-edition': true,
  'outside-book': true,
  suspended: true,
  'no-card': true,
  'book-does-not-recognise': true,
  'card-not-yet-valid': true,
  'card-no-longer-valid': true,
  'level-too-low': true,
  'over-diameter': true,
  'outside-places': true,
  'outside-species': true,
  'above-greatest-complexity': true,
  'double-bucking-only': true,
  'no-felling': true,
  'under-age': true,
  'guardian-permission-missing': true,
  'no-agreement': true,
  'certificate-lapsed': true,
  'certificate-delivery': true,
  'certificate-not-seen': true,
  'certificate-not-on-record': true,
  'words-unresolved': true,
  'not-on-record': true,
  'complexity-unrated': true,
  'training-only': true,
  'needs-supervisor': true,
}

export const NOTE_KINDS: Record<NoteKind, true> = {
  'rule-not-confirmed': true,
  'sources-disagree': true,
  'valid-only-by-a-later-order': true,
  'successor-not-held': true,
  'delivery-not-stated': true,
  'longer-than-term': true,
  'rating-provisional': true,
}

export const CHANGE_KINDS: Record<Change['kind'], true> = {
  'renewal-evaluation': true,
  'renew-certificate': true,
  'record-missing-fact': true,
  'have-seen': true,
  'add-supervisor': true,
}
