import type { Metadata } from 'next'
import { newToken } from '../../../../lib/platform/secrets/secrets.ts'
import { freshForm } from '../../../_door/form-outcome.ts'
import { requirePermission } from '../../../_door/require-permission.ts'
import { caller, visitorOf } from '../../../_door/visitor.ts'
import { addressWith, addressWord, type AddressWords } from '../../../_parts/address.ts'
import { DeskPage } from '../../../_parts/desk-page.tsx'
import { SubmitButton, TextField } from '../../../_parts/fields.client.tsx'
import { Form } from '../../../_parts/form.client.tsx'
import { PageHeading } from '../../../_parts/page-heading.tsx'
import { StepUpField } from '../../../_parts/step-up-field.client.tsx'
import { LINK_GOOD } from '../account-words.ts'
import { MadeLink } from '../made-link.client.tsx'
import { roleChoices } from '../role-choices.ts'
import { MoreRole, RoleFields } from '../role-fields.client.tsx'
import { giveAction } from './give-action.ts'
import { LABELS, rolePrefix } from './labels.ts'

export const metadata: Metadata = { title: 'Give an account' }

const PATH = '/accounts/new'

/** The page to give somebody an account. */
export default async function NewAccountPage({ searchParams }: { searchParams: Promise<AddressWords> }) {
  const words = await searchParams
  const here = addressWith(PATH, words, {})
  const visitor = await visitorOf(here)
  requirePermission(visitor, 'manage-accounts')
  const who = await caller()
  const choices = await roleChoices(here)
  const person = addressWord(words, 'person')
  const label = (name: string) => LABELS[name] ?? name
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: '/accounts', words: 'Accounts' }}
        title="Give an account"
        lead={`It makes a link, good once and for ${LINK_GOOD}, by which the person sets a password that nobody else knows.`}
      />
      <Form action={giveAction} first={freshForm()} after={<MadeLink />}>
        <input type="hidden" name="code" value={newToken()} />
        <fieldset className="group">
          <legend>Who it is for</legend>
          <TextField
            name="signInName"
            label={label('signInName')}
            hint="2 to 40 letters a to z, digits, dots, hyphens and underscores. It stays theirs for good."
            autoComplete="off"
          />
          <TextField
            name="person"
            label={label('person')}
            hint="The name as the record has it, or the id. Leave it empty for somebody who is not on record, such as an auditor: whoever reads their own record needs one."
            autoComplete="off"
            {...(person === undefined ? {} : { suggested: person })}
          />
        </fieldset>
        <fieldset className="group">
          <legend>What they may do</legend>
          <RoleFields prefix={rolePrefix(0)} labels={LABELS} choices={choices} />
          <MoreRole words="A second role" prefix={rolePrefix(1)} labels={LABELS} choices={choices} />
          <MoreRole words="A third role" prefix={rolePrefix(2)} labels={LABELS} choices={choices} />
        </fieldset>
        <TextField
          name="because"
          label={label('because')}
          hint="It stands in the history of the account, with your name."
          autoComplete="off"
        />
        <StepUpField isAsked={who.kind === 'account' && !who.steppedUp} />
        <SubmitButton>Give the account</SubmitButton>
      </Form>
    </DeskPage>
  )
}
