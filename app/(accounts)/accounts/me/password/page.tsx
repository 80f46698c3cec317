import type { Metadata } from 'next'
import { freshForm } from '../../../../_door/form-outcome.ts'
import { visitorOf } from '../../../../_door/visitor.ts'
import { DeskPage } from '../../../../_parts/desk-page.tsx'
import { PasswordField, SubmitButton } from '../../../../_parts/fields.client.tsx'
import { Form } from '../../../../_parts/form.client.tsx'
import { PageHeading } from '../../../../_parts/page-heading.tsx'
import { NEW_PASSWORD_HINT } from '../../../new-password.ts'
import { changeAction } from './change-action.ts'
import { LABELS } from './labels.ts'

export const metadata: Metadata = { title: 'Change your password' }

/** The page to change one's own password. */
export default async function ChangePasswordPage() {
  const visitor = await visitorOf('/accounts/me/password')
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: '/accounts/me', words: 'What I may do here' }}
        title="Change your password"
        lead="Wherever else you are signed in, you will have to sign in again; here you stay signed in."
      />
      <div className="stack-wide">
        <Form action={changeAction} first={freshForm()}>
          <input type="hidden" name="username" value={visitor.signInName} autoComplete="username" />
          <PasswordField name="oldPassword" label={LABELS.oldPassword} autoComplete="current-password" />
          <PasswordField
            name="password"
            label={LABELS.password}
            hint={NEW_PASSWORD_HINT}
            autoComplete="new-password"
          />
          <PasswordField name="passwordAgain" label={LABELS.passwordAgain} autoComplete="new-password" />
          <SubmitButton>Change the password</SubmitButton>
        </Form>
        <p className="small">
          Forgotten the one you have? Whoever manages the program makes you a link to set a new one.
        </p>
      </div>
    </DeskPage>
  )
}
