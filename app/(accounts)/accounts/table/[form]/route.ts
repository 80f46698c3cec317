import { listAccounts } from '../../../../../lib/usecases/accounts/list.ts'
import { ACCOUNT_SORTS } from '../../../../../lib/usecases/accounts/list.schema.ts'
import { callQuery } from '../../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../../lib/usecases/door/runtime.ts'
import { refusedFile } from '../../../../_door/file-answer.ts'
import { tableFile, wordsOfAddress } from '../../../../_door/table-file.ts'
import { caller } from '../../../../_door/visitor.ts'
import { readTableView } from '../../../../_parts/table-view.ts'
import { accountsText } from '../../accounts-text.ts'
import { ACCOUNT_FILTERS, accountsInput } from '../../asked-accounts.ts'

/** The table of accounts, as its address filters and orders it, with the rows of all pages. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ form: string }> },
): Promise<Response> {
  const words = wordsOfAddress(request)
  const view = readTableView(words, ACCOUNT_SORTS, { sort: 'name' })
  const input = { ...accountsInput(words, ACCOUNT_FILTERS), ...view, whole: true }
  const outcome = await callQuery(runtime(), listAccounts, { input }, await caller())
  if (outcome.kind !== 'done') return refusedFile(outcome)
  return tableFile((await params).form, { name: 'accounts', rows: accountsText(outcome.value.rows) })
}
