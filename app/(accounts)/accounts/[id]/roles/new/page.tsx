import type { Metadata } from 'next'
import { freshForm } from '../../../../../_door/form-outcome.ts'
import { DeskPage } from '../../../../../_parts/desk-page.tsx'
import { SubmitButton, TextField } from '../../../../../_parts/fields.client.tsx'
import { Form } from '../../../../../_parts/form.client.tsx'
import { Notice } from '../../../../../_parts/notice.tsx'
import { PageHeading } from '../../../../../_parts/page-heading.tsx'
import { StepUpField } from '../../../../../_parts/step-up-field.client.tsx'
import { roleChoices } from '../../../role-choices.ts'
import { RoleFields } from '../../../role-fields.client.tsx'
import { accountForPage } from '../../account-at.ts'
import { LABELS } from '../../labels.ts'
import { giveRoleAction } from './give-role-action.ts'
import { ROLE_LABELS, ROLE_PREFIX } from './labels.ts'

export const metadata: Metadata = { title: 'Give a role' }

/** The page to give an account one more role. */
export default async function GiveRolePage({ params }: { params: Promise<{ id: string }> }) {
  const { own, path, visitor, account, isPasswordAsked } = await accountForPage(
    (await params).id,
    '/roles/new',
  )
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: own, words: account.signInName }}
        title="Give a role"
        lead="A role says what somebody may do with the record, for which part of the program, on which days."
      />
      <div className="stack-wide">
        {account.state === 'ended' ? (
          <Notice>
            <p>This account is ended. Open it again first.</p>
          </Notice>
        ) : null}
        <Form
          action={giveRoleAction.bind(null, { account: account.id, version: account.version })}
          first={freshForm()}
        >
          <RoleFields prefix={ROLE_PREFIX} labels={ROLE_LABELS} choices={await roleChoices(path)} />
          <TextField name="because" label={LABELS.because} hint={LABELS.becauseHint} autoComplete="off" />
          <StepUpField isAsked={isPasswordAsked} />
          <SubmitButton>Give the role</SubmitButton>
        </Form>
        <p>
          <a href={own}>Back without giving one</a>
        </p>
      </div>
    </DeskPage>
  )
}
