import type { Metadata } from 'next'
import { newToken } from '../../../../../lib/platform/secrets/secrets.ts'
import { freshForm } from '../../../../_door/form-outcome.ts'
import { DeskPage } from '../../../../_parts/desk-page.tsx'
import { SubmitButton } from '../../../../_parts/fields.client.tsx'
import { Form } from '../../../../_parts/form.client.tsx'
import { Notice } from '../../../../_parts/notice.tsx'
import { PageHeading } from '../../../../_parts/page-heading.tsx'
import { StepUpField } from '../../../../_parts/step-up-field.client.tsx'
import { LINK_GOOD } from '../../account-words.ts'
import { MadeLink } from '../../made-link.client.tsx'
import { accountForPage } from '../account-at.ts'
import { linkAction } from './link-action.ts'

export const metadata: Metadata = { title: 'Make a new link' }

/** The page to make a new link for an account: the one before was lost, or the password is forgotten. */
export default async function NewLinkPage({ params }: { params: Promise<{ id: string }> }) {
  const { own, visitor, account, isPasswordAsked } = await accountForPage((await params).id, '/link')
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: own, words: account.signInName }}
        title="Make a new link"
        lead="For somebody who has lost their link or forgotten their password: by it they set a new one."
      />
      <div className="stack-wide">
        <Notice>
          {account.state === 'ended' ? (
            <p>This account is ended. Open it again first; that makes a link too.</p>
          ) : (
            <p>
              The link works once, within {LINK_GOOD}. A link made before opens nothing any more. When the new
              password is set, whoever is signed in as {account.signInName} has to sign in again.
            </p>
          )}
        </Notice>
        <Form
          action={linkAction.bind(null, { account: account.id, version: account.version })}
          first={freshForm()}
          after={<MadeLink />}
        >
          <input type="hidden" name="code" value={newToken()} />
          <StepUpField isAsked={isPasswordAsked} />
          <SubmitButton>Make the link</SubmitButton>
        </Form>
        <p>
          <a href={own}>Back without a new link</a>
        </p>
      </div>
    </DeskPage>
  )
}
