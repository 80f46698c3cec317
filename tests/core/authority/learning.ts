import { card } from '../../builders/cards.ts'
import { adult, assignment, designation } from '../../builders/people.ts'
import type { Part } from '../../builders/records.ts'
import { item } from '../../builders/work.ts'

/** No card, with nothing that opens training beside it. */
export const NO_CARD = 'no-card sawKind=crosscut workKind=bucking | card.needed | none'
/** No card, where an assignment opens training. */
export const UNDER_ASSIGNMENT = 'no-card sawKind=crosscut workKind=bucking | card.needed | training'
/** What an assignment alone gives. */
export const LEARNS = 'training-only supervisor=B trainers=trainer | assignment | training'
/** Stood down for an unsafe act. */
export const SUSPENDED =
  'suspended because=unsafe-act form=stand-down notice=not-recorded | suspension | none'
/** The findings of training under an assignment. */
export const TRAINING = [UNDER_ASSIGNMENT, LEARNS]

const log = item('log-1')
const trainer = adult('trainer', { cards: [card('trainer', 'C')] })

/** p-1 assigned to log 1 under a trainer from 5 through 10 July 2027, the trainer designated. */
export function learning(
  said: Parameters<typeof assignment>[3] = {},
  designated: Part = { designations: [designation('trainer')] },
): Part[] {
  const assigned = assignment('p-1', ['log-1'], ['trainer'], {
    firstDay: '2027-07-05',
    lastDay: '2027-07-10',
    ...said,
  })
  return [trainer, designated, { items: [log], assignments: [assigned] }]
}

/** A question that names the item of the assignment. */
export const onLog = { item: 'log-1' }
