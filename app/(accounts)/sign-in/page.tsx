import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { runtime } from '../../../lib/usecases/door/runtime.ts'
import { front } from '../../_door/front.ts'
import { freshForm } from '../../_door/form-outcome.ts'
import { localPath } from '../../_door/local-path.ts'
import { signInAction } from '../../_door/session-actions.ts'
import { signedIn } from '../../_door/visitor.ts'
import { PasswordField, SubmitButton, TextField } from '../../_parts/fields.client.tsx'
import { Form } from '../../_parts/form.client.tsx'
import { Frame } from '../../_parts/frame.tsx'
import { Notice } from '../../_parts/notice.tsx'
import { PageHeading } from '../../_parts/page-heading.tsx'
import { DemoAccounts } from './demo-accounts.tsx'

export const metadata: Metadata = { title: 'Sign in' }

/** The page to sign in. */
export default async function SignInPage({
  searchParams,
}: {
  searchParams: Promise<{ to?: string | string[] }>
}) {
  const to = localPath((await searchParams).to)
  if ((await signedIn()) !== undefined) redirect(to)
  const { begun, program } = await front()
  const { demoAccounts } = runtime()
  return (
    <Frame program={program}>
      <PageHeading
        title="Sign in"
        lead="For those who have an account here. Who may do which work is asked inside."
      />
      <div className="stack-wide">
        {begun ? null : (
          <Notice>
            <p>
              Nobody can sign in yet: no program manager has begun. Open the link that was printed where
              Kerfbook was started; it works once.
            </p>
          </Notice>
        )}
        <Form action={signInAction} first={freshForm()}>
          <input type="hidden" name="to" value={to} />
          <TextField name="name" label="Sign-in name" autoComplete="username" />
          <PasswordField name="password" label="Password" autoComplete="current-password" />
          <SubmitButton>Sign in</SubmitButton>
        </Form>
        <p className="small">
          Forgotten your password, or no account yet? Ask whoever manages the program: they make you a link by
          which you set a password yourself.
        </p>
      </div>
      {demoAccounts.length === 0 ? null : <DemoAccounts accounts={demoAccounts} />}
    </Frame>
  )
}
