import type { ShownAccount } from '../../../lib/usecases/accounts/account-view.ts'
import { agoText } from '../../../lib/wording/days.ts'
import { Table, type Column, type TableAddress } from '../../_parts/table.tsx'
import { grantDays, grantText, standingText } from './account-words.ts'

/** Accounts as a table: who, with which roles on which days, how it stands, and when it was used last. */
export function AccountsTable({
  rows,
  address,
  caption,
}: {
  rows: readonly ShownAccount[]
  address: TableAddress
  caption: string
}) {
  return (
    <Table
      caption={caption}
      columns={COLUMNS}
      rows={rows}
      rowKey={({ id }) => id}
      address={address}
      empty={
        <>
          <p>No account fits all of this.</p>
          <p>
            <a className="button" href={address.path}>
              Show all accounts
            </a>
          </p>
        </>
      }
    />
  )
}

const COLUMNS: readonly Column<ShownAccount>[] = [
  {
    key: 'name',
    head: 'Name',
    sorts: true,
    speaksForItself: true,
    cell: ({ id, name, person }) => (
      <>
        <a href={`/accounts/${id}`}>
          <bdi>{name}</bdi>
        </a>
        {person === undefined ? <span className="caption"> nobody on record</span> : null}
      </>
    ),
  },
  { key: 'signInName', head: 'Signs in as', sorts: true, cell: ({ signInName }) => signInName },
  { key: 'roles', head: 'Roles', cell: ({ roles }) => <Roles roles={roles} /> },
  { key: 'state', head: 'How it stands', sorts: true, cell: standingText },
  {
    key: 'signedIn',
    head: 'Signed in last',
    sorts: true,
    cell: ({ signedInBefore }) =>
      signedInBefore === undefined ? <span className="caption">never</span> : agoText(signedInBefore),
  },
]

function Roles({ roles }: { roles: ShownAccount['roles'] }) {
  if (roles.length === 0) return <span className="caption">none</span>
  return (
    <ul>
      {roles.map((role) => (
        <li key={role.id}>
          <bdi>{grantText(role)}</bdi>
          {role.isToCome || role.lastDay !== undefined ? (
            <span className="caption">, {grantDays(role)}</span>
          ) : null}
        </li>
      ))}
    </ul>
  )
}
