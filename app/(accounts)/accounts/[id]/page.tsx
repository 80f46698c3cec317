import type { Metadata } from 'next'
import type { AccountPage } from '../../../../lib/usecases/accounts/read-account.ts'
import { agoText } from '../../../../lib/wording/days.ts'
import { addressWord, type AddressWords } from '../../../_parts/address.ts'
import { DeskPage } from '../../../_parts/desk-page.tsx'
import { Notice } from '../../../_parts/notice.tsx'
import { PageHeading } from '../../../_parts/page-heading.tsx'
import { Section } from '../../../_parts/section.tsx'
import { grantDays, grantText, standingText } from '../account-words.ts'
import { accountAt, accountForPage } from './account-at.ts'
import { History } from './history.tsx'

type Address = { params: Promise<{ id: string }>; searchParams: Promise<AddressWords> }

/** The page's title: the name, for who may read it. */
export async function generateMetadata({ params }: Address): Promise<Metadata> {
  const outcome = await accountAt((await params).id)
  return { title: outcome.kind === 'done' ? `Account of ${outcome.value.name}` : 'Accounts' }
}

/** What was done on the page before this one. */
const KEPT: Readonly<Record<string, string>> = {
  'role-given': 'The role is given. It counts from the next page that they open.',
  'role-ended': 'The role is ended. It allows nothing from the next page that they open.',
  'role-shortened': 'The last day of the role is set.',
  'account-ended': 'The account is ended. Wherever it was signed in, it is out.',
}

/** An account: how it stands, its roles, what to do about it, and the history of every grant. */
export default async function AccountPageAt({ params, searchParams }: Address) {
  const { own, visitor, account } = await accountForPage((await params).id)
  const kept = KEPT[addressWord(await searchParams, 'did') ?? '']
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: '/accounts', words: 'Accounts' }}
        title={<bdi>{account.name}</bdi>}
        lead="How this account stands, what its roles allow, and who gave and ended each of them, when and why."
      />
      {kept === undefined ? null : (
        <Notice kind="kept">
          <p>{kept}</p>
        </Notice>
      )}
      <Section id="account" title="The account">
        <Facts account={account} />
        <p className="row">
          {account.state === 'ended' ? (
            <a className="button main" href={`${own}/open-again`}>
              Open it again
            </a>
          ) : (
            <>
              <a className="button" href={`${own}/link`}>
                Make a new link
              </a>
              <a className="button" href={`${own}/end`}>
                End the account
              </a>
            </>
          )}
        </p>
      </Section>
      <Section id="roles" title="Roles" caption="Those that count today, and those that are to come.">
        <Roles account={account} own={own} />
        {account.state === 'ended' ? null : (
          <p>
            <a className="button main" href={`${own}/roles/new`}>
              Give a role
            </a>
          </p>
        )}
      </Section>
      <Section id="history" title="History" caption="Every grant. What counts no more stands struck.">
        <History account={account} />
      </Section>
    </DeskPage>
  )
}

function Facts({ account }: { account: AccountPage }) {
  const { name, person, signInName, signedInBefore } = account
  return (
    <dl className="facts">
      <dt>Person on record</dt>
      <dd>
        {person === undefined ? (
          'nobody; it has no record of its own'
        ) : (
          <a href={`/people/${person}`}>
            <bdi>{name}</bdi>
          </a>
        )}
      </dd>
      <dt>Signs in as</dt>
      <dd>{signInName}</dd>
      <dt>How it stands</dt>
      <dd>{standingText(account)}</dd>
      <dt>Signed in last</dt>
      <dd>{signedInBefore === undefined ? 'never' : agoText(signedInBefore)}</dd>
    </dl>
  )
}

function Roles({ account: { roles }, own }: { account: AccountPage; own: string }) {
  if (roles.length === 0) return <p>None. Whoever signs in here without a role may do nothing.</p>
  return (
    <ul className="histories">
      {roles.map((role) => (
        <li key={role.id}>
          <p className="entry">
            <bdi>{grantText(role)}</bdi>
          </p>
          <p className="row">
            <span>
              {role.isToCome ? 'To come, ' : ''}
              {grantDays(role)}
            </span>
            <a href={`${own}/roles/${role.id}`} aria-label={`End it: ${grantText(role)}`}>
              End it
            </a>
          </p>
        </li>
      ))}
    </ul>
  )
}
