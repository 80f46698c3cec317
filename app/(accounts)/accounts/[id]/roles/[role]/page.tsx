import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { freshForm } from '../../../../../_door/form-outcome.ts'
import { DeskPage } from '../../../../../_parts/desk-page.tsx'
import { ChoiceField, SubmitButton, TextField } from '../../../../../_parts/fields.client.tsx'
import { Form } from '../../../../../_parts/form.client.tsx'
import { Notice } from '../../../../../_parts/notice.tsx'
import { PageHeading } from '../../../../../_parts/page-heading.tsx'
import { grantDays, grantText } from '../../../account-words.ts'
import { accountForPage } from '../../account-at.ts'
import { LABELS } from '../../labels.ts'
import { endRoleAction } from './end-role-action.ts'

export const metadata: Metadata = { title: 'End a role' }

/** The page to end a role, at once or by a last day. */
export default async function EndRolePage({ params }: { params: Promise<{ id: string; role: string }> }) {
  const { id, role: roleId } = await params
  const { own, visitor, account } = await accountForPage(id, `/roles/${encodeURIComponent(roleId)}`)
  const role = account.grants.map(([latest]) => latest).find((one) => one?.id === roleId)
  if (role === undefined) notFound()
  const isEnded = account.roles.every((standing) => standing.id !== role.id)
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: own, words: account.signInName }}
        title="End a role"
        lead={
          <>
            <bdi>{grantText(role)}</bdi>, {grantDays(role)}. What was done in it stays done.
          </>
        }
      />
      <div className="stack-wide">
        {isEnded ? (
          <Notice>
            <p>This role is ended already. The history of the account says by whom, and why.</p>
          </Notice>
        ) : null}
        <Form
          action={endRoleAction.bind(null, { account: account.id, role: role.id, version: role.version })}
          first={freshForm()}
        >
          <ChoiceField
            name="when"
            label={LABELS.when}
            choices={[
              {
                value: 'at-once',
                label: 'At once',
                says: 'It allows nothing from the next page that they open.',
              },
              { value: 'later', label: 'After a last day', says: 'It counts through the day written below.' },
            ]}
          />
          <TextField
            name="lastDay"
            label={LABELS.lastDay}
            hint="Only where it ends after a last day. Like 8 July 2027 or 8 Jul 27."
            autoComplete="off"
          />
          <TextField name="because" label={LABELS.because} hint={LABELS.becauseHint} autoComplete="off" />
          <SubmitButton>End the role</SubmitButton>
        </Form>
        <p>
          <a href={own}>Back without ending it</a>
        </p>
      </div>
    </DeskPage>
  )
}
