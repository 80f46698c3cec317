import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { invalidField, type NotDone } from '../door/outcome.ts'
import type { RecordFact, RecordOf, RecordSection } from './record-kinds.ts'

/** Who enters or corrects a record: their name, and who on record they are. */
export type Hand = { name: string; person?: string }

/** Sections whose records say who stands behind them: whoever enters them. */
const BY_THE_HAND: readonly RecordSection[] = ['designations', 'suspensions', 'resolutions']

/** The fields as typed, with what is not typed because it is known: whose hand it is. */
export function withHand(
  section: RecordSection,
  fields: Readonly<Record<string, unknown>>,
  { name }: Hand,
): Readonly<Record<string, unknown>> {
  if (BY_THE_HAND.includes(section)) return { ...fields, by: name }
  if (section === 'certificates' && fields['by'] === undefined) return { ...fields, by: name }
  return fields
}

/**
 * The fields of a correction as typed, with what a correction leaves as it is: who stands behind the record (that
 * somebody corrected it is the entry's to say), and what the hand may not read and so could not type again.
 */
export function withKept(
  fields: Readonly<Record<string, unknown>>,
  current: RecordFact,
  unread: readonly string[],
): Readonly<Record<string, unknown>> {
  const kept = Object.entries(current).filter(
    ([name]) => fields[name] === undefined && (name === 'by' || unread.includes(name)),
  )
  return { ...fields, ...Object.fromEntries(kept) }
}

/** Sections whose records give somebody something to do or to decide. */
const GIVES_AUTHORITY: readonly RecordSection[] = ['cards', 'designations', 'assignments', 'permissions']

/** What the records of a program allow and a hand may not do. */
export function refusedByHand({ section, fact }: RecordOf, hand: Hand): Result<undefined, NotDone> {
  const isOwn = 'person' in fact && fact.person === hand.person
  if (isOwn && section === 'certificates' && 'seen' in fact && fact.seen)
    return refusal(
      invalidField('fields.seen', 'Somebody else must have seen it: nobody is the witness of their own.'),
    )
  if (isOwn && GIVES_AUTHORITY.includes(section))
    return refusal(
      invalidField('fields.person', 'Somebody else must enter this: nobody gives it to themselves.'),
    )
  if (section === 'cards' && 'effectiveDay' in fact && 'number' in fact) {
    if (fact.decision !== undefined)
      return refusal(
        invalidField(
          'fields.decision',
          'A card by a decision comes from that decision, and is not typed in.',
        ),
      )
    if (fact.carriedIn === undefined)
      return refusal(invalidField('fields.carriedIn', 'Say who issued the card that is carried in.'))
  }
  return success(undefined)
}
