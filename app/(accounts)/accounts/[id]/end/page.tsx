import type { Metadata } from 'next'
import { freshForm } from '../../../../_door/form-outcome.ts'
import { DeskPage } from '../../../../_parts/desk-page.tsx'
import { SubmitButton, TextField } from '../../../../_parts/fields.client.tsx'
import { Form } from '../../../../_parts/form.client.tsx'
import { Notice } from '../../../../_parts/notice.tsx'
import { PageHeading } from '../../../../_parts/page-heading.tsx'
import { accountForPage } from '../account-at.ts'
import { LABELS } from '../labels.ts'
import { endAction } from './end-action.ts'

export const metadata: Metadata = { title: 'End an account' }

/** The page to end an account at once. */
export default async function EndAccountPage({ params }: { params: Promise<{ id: string }> }) {
  const { own, visitor, account } = await accountForPage((await params).id, '/end')
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: own, words: account.signInName }}
        title="End the account"
        lead="For somebody who is not to sign in any more. It ends at once, wherever it is signed in."
      />
      <div className="stack-wide">
        <Notice>
          {account.state === 'ended' ? (
            <p>This account is ended already. Its history says by whom, and why.</p>
          ) : (
            <p>
              Its roles, its open link and its password end with it. What was recorded by it stays, and nobody
              else is ever given the sign-in name {account.signInName}. It can be opened again.
            </p>
          )}
        </Notice>
        <Form
          action={endAction.bind(null, { account: account.id, version: account.version })}
          first={freshForm()}
        >
          <TextField name="because" label={LABELS.because} hint={LABELS.becauseHint} autoComplete="off" />
          <SubmitButton>End the account</SubmitButton>
        </Form>
        <p>
          <a href={own}>Back without ending it</a>
        </p>
      </div>
    </DeskPage>
  )
}
