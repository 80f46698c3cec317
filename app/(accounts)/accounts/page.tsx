import type { Metadata } from 'next'
import { ACCOUNT_STATES } from '../../../lib/usecases/accounts/account-view.ts'
import { listAccounts } from '../../../lib/usecases/accounts/list.ts'
import { ACCOUNT_SORTS } from '../../../lib/usecases/accounts/list.schema.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../lib/usecases/door/runtime.ts'
import { problemsOf } from '../../_door/form-outcome.ts'
import { valueForPage } from '../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../_door/visitor.ts'
import { addressWith, type AddressWords } from '../../_parts/address.ts'
import { DeskPage } from '../../_parts/desk-page.tsx'
import { ErrorSummary } from '../../_parts/error-summary.client.tsx'
import type { FormProblem } from '../../_parts/form-state.ts'
import { PageHeading } from '../../_parts/page-heading.tsx'
import { TableFilter, type FilterField } from '../../_parts/table-filter.tsx'
import { TablePages } from '../../_parts/table-pages.tsx'
import { TakeOut } from '../../_parts/take-out.tsx'
import { readTableView } from '../../_parts/table-view.ts'
import { ROLE_CHOICES, STATE_WORDS } from './account-words.ts'
import { AccountsTable } from './accounts-table.tsx'
import { ACCOUNT_FILTERS, ACCOUNT_LABELS, accountsInput } from './asked-accounts.ts'

export const metadata: Metadata = { title: 'Accounts' }

const PATH = '/accounts'

/** Every account of the program, as a table that the address filters and orders. */
export default async function AccountsPage({ searchParams }: { searchParams: Promise<AddressWords> }) {
  const words = await searchParams
  const here = addressWith(PATH, words, {})
  const visitor = await visitorOf(here)
  const view = readTableView(words, ACCOUNT_SORTS, { sort: 'name' })
  const { list, problems } = await listed(words, view, here)
  const { rows, page, all } = list
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        title="Accounts"
        lead="Who may sign in here and with which roles. A role says what somebody may do with the record; it lets nobody saw."
      />
      <div className="stack-wide">
        <p>
          <a className="button main" href={`${PATH}/new`}>
            Give an account
          </a>
        </p>
        <ErrorSummary state={{ command: '', tries: 0, problems, values: {} }} />
        <TableFilter path={PATH} words={words} fields={filterFields(problems)} keep={['sort', 'order']} />
        <div className="stack">
          <AccountsTable
            rows={rows}
            address={{ path: PATH, words, view }}
            caption={page.all === all ? accountsText(all) : `${page.all} of ${accountsText(all)}`}
          />
          <TablePages path={PATH} words={words} shown={page} of="accounts" />
          {page.all === 0 ? null : <TakeOut path={PATH} words={words} of="accounts" />}
        </div>
      </div>
    </DeskPage>
  )
}

/** The list as asked; without the filters that were typed wrongly, where some were. */
async function listed(words: AddressWords, view: object, here: string) {
  const who = await caller()
  const read = async (names: readonly string[]) =>
    callQuery(runtime(), listAccounts, { input: { ...accountsInput(words, names), ...view } }, who)
  const first = await read(ACCOUNT_FILTERS)
  if (first.kind !== 'invalid') return { list: valueForPage(first, here), problems: [] }
  const problems = problemsOf(first.fields, ACCOUNT_LABELS)
  const sound = ACCOUNT_FILTERS.filter((name) => !problems.some(({ field }) => field === name))
  return { list: valueForPage(await read(sound), here), problems }
}

function filterFields(problems: readonly FormProblem[]): FilterField[] {
  const fields: FilterField[] = [
    { name: 'name', label: ACCOUNT_LABELS.name },
    { name: 'role', label: ACCOUNT_LABELS.role, any: 'any role', options: ROLE_CHOICES },
    {
      name: 'state',
      label: ACCOUNT_LABELS.state,
      any: 'any',
      options: ACCOUNT_STATES.map((state) => ({ value: state, label: STATE_WORDS[state] })),
    },
  ]
  return fields.map((field) => {
    const problem = problems.find((one) => one.field === field.name)
    return problem === undefined ? field : { ...field, problem: problem.message }
  })
}

function accountsText(count: number): string {
  return count === 1 ? '1 account' : `${count} accounts`
}
