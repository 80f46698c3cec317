import type { Metadata } from 'next'
import { freshForm } from '../../../_door/form-outcome.ts'
import { front } from '../../../_door/front.ts'
import {
  ChoiceField,
  PasswordField,
  SelectField,
  SubmitButton,
  TextField,
} from '../../../_parts/fields.client.tsx'
import { Form } from '../../../_parts/form.client.tsx'
import { Frame } from '../../../_parts/frame.tsx'
import { Notice } from '../../../_parts/notice.tsx'
import { PageHeading } from '../../../_parts/page-heading.tsx'
import { beginAction } from './begin-action.ts'
import { LABELS } from './labels.ts'
import { timeZones } from './time-zones.ts'

export const metadata: Metadata = { title: 'Begin' }

/** The page behind the link that works once: the first program manager, and, in an empty database, the program. */
export default async function BeginPage({ params }: { params: Promise<{ code: string }> }) {
  const { code } = await params
  const { begun, program, timeZone, books } = await front()
  if (begun) return <BegunAlready program={program} />
  return (
    <Frame program={program}>
      <PageHeading
        title="Begin"
        lead={
          program === undefined
            ? 'This page makes you the first program manager and founds the program. It works once.'
            : 'This page makes you the first program manager of this program. It works once.'
        }
      />
      <Form action={beginAction.bind(null, code)} first={freshForm()}>
        <fieldset className="group">
          <legend>You</legend>
          <TextField
            name="name"
            label={LABELS.name}
            hint="As others know you. It stands beside whatever you decide."
            autoComplete="name"
          />
          <TextField
            name="signInName"
            label={LABELS.signInName}
            hint="What you type to sign in: letters, figures, dots and dashes."
            autoComplete="username"
          />
          <PasswordField
            name="password"
            label={LABELS.password}
            hint="At least 15 characters, whichever you like; a short sentence is a good one. It may be pasted."
            autoComplete="new-password"
          />
          <PasswordField name="passwordAgain" label={LABELS.passwordAgain} autoComplete="new-password" />
        </fieldset>
        {program === undefined ? <ProgramFields timeZone={timeZone} books={books} /> : null}
        <SubmitButton>{program === undefined ? 'Found the program' : 'Begin as its manager'}</SubmitButton>
      </Form>
    </Frame>
  )
}

function ProgramFields({ timeZone, books }: Pick<Awaited<ReturnType<typeof front>>, 'timeZone' | 'books'>) {
  return (
    <fieldset className="group">
      <legend>The program</legend>
      <TextField name="program.name" label={LABELS['program.name']} autoComplete="organization" />
      <SelectField
        name="program.timeZone"
        label={LABELS['program.timeZone']}
        hint="By it a day begins and ends: a card that holds through 11 July holds until midnight there."
        suggested={timeZone ?? ''}
        options={[
          { value: '', label: 'Choose one' },
          ...timeZones().map((zone) => ({ value: zone, label: zone })),
        ]}
      />
      <ChoiceField
        name="program.book"
        label={LABELS['program.book']}
        hint="The program adopts a copy of it, and keeps that copy whatever later versions bring."
        choices={books.map(({ id, name, says }) => ({ value: id, label: name, says }))}
      />
      <Notice>
        <p>
          This book will be <strong>adopted by one person, at founding</strong>. The journal and the book say
          so for ever. Every later edition needs two people.
        </p>
      </Notice>
    </fieldset>
  )
}

function BegunAlready({ program }: { program: string | undefined }) {
  return (
    <Frame program={program}>
      <PageHeading
        title="This program has begun"
        lead="It has a program manager already, so this link opens nothing any more."
      />
      <p>
        <a className="button main" href="/sign-in">
          Sign in
        </a>
      </p>
    </Frame>
  )
}
