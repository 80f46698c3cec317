import type { Metadata } from 'next'
import { newToken } from '../../../../../lib/platform/secrets/secrets.ts'
import { freshForm } from '../../../../_door/form-outcome.ts'
import { DeskPage } from '../../../../_parts/desk-page.tsx'
import { SubmitButton, TextField } from '../../../../_parts/fields.client.tsx'
import { Form } from '../../../../_parts/form.client.tsx'
import { PageHeading } from '../../../../_parts/page-heading.tsx'
import { StepUpField } from '../../../../_parts/step-up-field.client.tsx'
import { LABELS } from '../labels.ts'
import { MadeLink } from '../../made-link.client.tsx'
import { accountForPage } from '../account-at.ts'
import { openAgainAction } from './open-again-action.ts'

export const metadata: Metadata = { title: 'Open an account again' }

/** The page to open an account that was ended: somebody is back. */
export default async function OpenAgainPage({ params }: { params: Promise<{ id: string }> }) {
  const { own, visitor, account, isPasswordAsked } = await accountForPage((await params).id, '/open-again')
  // One that is open already has this page too: the answer that shows the link is drawn after the account was opened.
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: own, words: account.signInName }}
        title="Open the account again"
        lead="For somebody who is back: the same account with a new link. It has no role until you give one."
      />
      <div className="stack-wide">
        <Form
          action={openAgainAction.bind(null, { account: account.id, version: account.version })}
          first={freshForm()}
          after={<MadeLink />}
        >
          <input type="hidden" name="code" value={newToken()} />
          <TextField name="because" label={LABELS.because} hint={LABELS.becauseHint} autoComplete="off" />
          <StepUpField isAsked={isPasswordAsked} />
          <SubmitButton>Open it again</SubmitButton>
        </Form>
        <p>
          <a href={own}>Back without opening it</a>
        </p>
      </div>
    </DeskPage>
  )
}
