import type { Change, Remedies } from '../../../lib/core/authority/answer.ts'
import { records, type Part } from '../../builders/records.ts'
import { question, work, type WorkSaid } from '../../builders/work.ts'
import { answerAbout } from './told.ts'

/** A question about `p-1` and the facts it is asked of. */
export type Asked = { facts: readonly Part[]; work?: WorkSaid; first?: string; last?: string; today?: string }

/** The remedies of an answer. */
export function remediesOf({
  facts,
  work: said,
  first = '2027-07-08',
  last = first,
  today = '2027-05-03',
}: Asked): Remedies {
  return answerAbout(records(...facts), question(work(said), first, last, { today })).remedies
}

/** The sets, each change as `kind what subject level`, with its day or days. */
export function setsOf(asked: Asked): string[][] {
  return remediesOf(asked).sets.map((set) => set.map(toldOf))
}

function toldOf(change: Change): string {
  switch (change.kind) {
    case 'renewal-evaluation':
      return `renew ${change.card} by ${change.by}`
    case 'renew-certificate':
      return `renew ${change.subject} by ${change.by}`
    case 'record-missing-fact':
      return `record ${change.what}${change.subject === undefined ? '' : ` ${change.subject}`}`
    case 'have-seen':
      return `have ${change.subject} seen`
    case 'add-supervisor': {
      const days = change.days
        .map(({ first, last }) => `${Number(first.slice(8))}-${Number(last.slice(8))}`)
        .join(' ')
      return `add ${change.trainer ? 'trainer' : 'supervisor'} ${change.level} on ${days}`
    }
  }
}
