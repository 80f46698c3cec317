import { foldedName } from '../../core/kernel/folded.ts'
import { byText } from '../../core/kernel/order.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { success } from '../../core/kernel/result.ts'
import { query } from '../door/use-case.ts'
import { ACCOUNT_STATES, deskOfAccounts, shownAccount, type ShownAccount } from './account-view.ts'
import { accountListSchema, type AccountsAsked } from './list.schema.ts'

/** How many accounts one page of the list has. */
const AT_ONCE = 50

/** The accounts of the program: who stands behind each, with which roles, and how it stands. */
export const listAccounts = query({
  name: 'accounts/list',
  permission: 'manage-accounts',
  input: accountListSchema,
  load: async (world, asked) => success({ desk: await deskOfAccounts(world), asked }),
  about: () => ({ kind: 'program' }),
  answer: ({ desk, asked }, world) => {
    const { snapshot } = world
    const accounts = snapshot.accounts
      .filter((fact) => isKnownAt(fact, snapshot.n))
      .map((fact) => shownAccount(world, desk, fact))
    const found = accounts.filter((account) => fits(account, asked)).sort(inOrder(asked))
    const atOnce = asked.whole === true ? Math.max(1, found.length) : AT_ONCE
    const pages = Math.max(1, Math.ceil(found.length / atOnce))
    const page = Math.min(asked.page ?? 1, pages)
    const rows = found.slice((page - 1) * atOnce, page * atOnce)
    const from = rows.length === 0 ? 0 : (page - 1) * atOnce + 1
    return {
      rows,
      all: accounts.length,
      page: { page, pages, from, through: from + Math.max(0, rows.length - 1), all: found.length },
      today: world.today,
    }
  },
  looked: ({ rows }, asked) => ({ question: asked, count: rows.length }),
})

function fits({ name, signInName, roles, state }: ShownAccount, asked: AccountsAsked): boolean {
  const wanted = foldedName(asked.name ?? '')
  return (
    (foldedName(name).includes(wanted) || signInName.includes(wanted)) &&
    (asked.role === undefined || roles.some(({ role }) => role === asked.role)) &&
    (asked.state === undefined || state === asked.state)
  )
}

const collator = new Intl.Collator('en', { numeric: true })

function inOrder({ sort = 'name', descending = false }: AccountsAsked) {
  const turn = descending ? -1 : 1
  return (left: ShownAccount, right: ShownAccount): number =>
    turn * compared(left, right, sort) || byText(left.signInName, right.signInName)
}

function compared(left: ShownAccount, right: ShownAccount, sort: NonNullable<AccountsAsked['sort']>): number {
  switch (sort) {
    case 'name':
    case 'signInName':
      return collator.compare(left[sort], right[sort])
    case 'state':
      return ACCOUNT_STATES.indexOf(left.state) - ACCOUNT_STATES.indexOf(right.state)
    case 'signedIn': {
      // Who never signed in comes after who did, the longest ago first.
      const before = ({ signedInBefore }: ShownAccount) => signedInBefore ?? Number.MAX_SAFE_INTEGER
      return before(left) - before(right)
    }
  }
}
