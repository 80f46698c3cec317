import type { Metadata } from 'next'
import { aboutLink, type LinkStanding } from '../../../../lib/usecases/accounts/about-link.ts'
import { callQuery } from '../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { freshForm } from '../../../_door/form-outcome.ts'
import { PasswordField, SubmitButton } from '../../../_parts/fields.client.tsx'
import { Form } from '../../../_parts/form.client.tsx'
import { Frame } from '../../../_parts/frame.tsx'
import { PageHeading } from '../../../_parts/page-heading.tsx'
import { NEW_PASSWORD_HINT } from '../../new-password.ts'
import { LABELS } from './labels.ts'
import { setPasswordAction } from './set-password-action.ts'

export const metadata: Metadata = { title: 'Set your password' }

/** The page behind a link that works once: whoever was given an account sets its password. Opening it uses up nothing. */
export default async function SetPasswordPage({ params }: { params: Promise<{ code: string }> }) {
  const { code } = await params
  const outcome = await callQuery(runtime(), aboutLink, { input: { code } }, { kind: 'nobody' })
  const link = outcome.kind === 'done' ? outcome.value : undefined
  if (link?.standing !== 'good' || link.signInName === undefined)
    return <NotGood standing={link?.standing ?? 'unknown'} program={link?.program} />
  const { program, name, signInName } = link
  return (
    <Frame program={program}>
      <PageHeading
        title="Set your password"
        lead={
          <>
            For the account of <bdi>{name}</bdi>. Nobody else learns it, not even whoever gave you the link.
          </>
        }
      />
      <Form action={setPasswordAction.bind(null, code)} first={freshForm()}>
        <div className="field">
          <label htmlFor="field-username">You sign in as</label>
          <input
            id="field-username"
            className="input"
            name="username"
            defaultValue={signInName}
            readOnly
            autoComplete="username"
          />
        </div>
        <PasswordField
          name="password"
          label={LABELS.password}
          hint={NEW_PASSWORD_HINT}
          autoComplete="new-password"
        />
        <PasswordField name="passwordAgain" label={LABELS.passwordAgain} autoComplete="new-password" />
        <SubmitButton>Set the password and sign in</SubmitButton>
      </Form>
    </Frame>
  )
}

/** Why a link opens nothing, and what to do. */
const WHY: Readonly<Record<Exclude<LinkStanding, 'good'>, { title: string; lead: string }>> = {
  used: {
    title: 'This link was used',
    lead: 'A password was set by it, and it works once. If that was you, sign in with it. If it was not, tell whoever manages the program at once: they make you a new link.',
  },
  over: {
    title: 'This link is over',
    lead: 'Its time ran out, a newer one was made, or the account was ended. Ask whoever manages the program for a new link.',
  },
  unknown: {
    title: 'No such link',
    lead: 'Nobody made a link of this address. Look whether you have all of it, to its last letter; else ask whoever manages the program for a new one.',
  },
}

function NotGood({ standing, program }: { standing: LinkStanding; program: string | undefined }) {
  const { title, lead } = WHY[standing === 'good' ? 'over' : standing]
  return (
    <Frame program={program}>
      <PageHeading title={title} lead={lead} />
      <p>
        <a className="button main" href="/sign-in">
          Sign in
        </a>
      </p>
    </Frame>
  )
}
