import { RECORD_SORTS } from '../../../lib/usecases/records/list-records.ts'
import { readGroupOf } from '../../../lib/usecases/records/readable.ts'
import type { RecordSection } from '../../../lib/usecases/records/record-kinds.ts'
import { addressWord, type AddressWords } from '../../_parts/address.ts'
import { readTableView } from '../../_parts/table-view.ts'

/** What the address of a list of records asks for. */
export function listInput(section: RecordSection, words: AddressWords) {
  const view = readTableView(words, RECORD_SORTS, {
    sort: readGroupOf(section) === 'people' ? 'person' : 'says',
  })
  const isWithdrawn = addressWord(words, 'state') === 'withdrawn'
  const doubt = addressWord(words, 'doubt')
  // Longer than anything that a record says: it fits none.
  const says = addressWord(words, 'says')?.slice(0, 200)
  const input = {
    section,
    ...view,
    ...(says === undefined ? {} : { says }),
    ...(isWithdrawn ? { withdrawn: 'yes' as const } : {}),
    ...(doubt === undefined || isWithdrawn ? {} : { doubt: doubt.slice(0, 40) }),
  }
  return { input, view, isWithdrawn }
}
