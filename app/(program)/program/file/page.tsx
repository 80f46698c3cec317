import type { Metadata } from 'next'
import { freshForm } from '../../../_door/form-outcome.ts'
import { requirePermission } from '../../../_door/require-permission.ts'
import { caller, visitorOf } from '../../../_door/visitor.ts'
import { addressWord, type AddressWords } from '../../../_parts/address.ts'
import { DeskPage } from '../../../_parts/desk-page.tsx'
import { SubmitButton } from '../../../_parts/fields.client.tsx'
import { Form } from '../../../_parts/form.client.tsx'
import { Notice } from '../../../_parts/notice.tsx'
import { PageHeading } from '../../../_parts/page-heading.tsx'
import { Section } from '../../../_parts/section.tsx'
import { StepUpField } from '../../../_parts/step-up-field.client.tsx'
import { bringInAction, takeOutAction } from './program-file-actions.ts'
import { ProgramFileField } from './program-file-field.client.tsx'

export const metadata: Metadata = { title: 'The program as a file' }

const PATH = '/program/file'

/** The whole program as one file: brought in, or taken out. */
export default async function ProgramFilePage({ searchParams }: { searchParams: Promise<AddressWords> }) {
  const visitor = await visitorOf(PATH)
  requirePermission(visitor, 'bring-in-program')
  const who = await caller()
  const words = await searchParams
  const isAsked = who.kind === 'account' && !who.steppedUp
  const facts = addressWord(words, 'facts')
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: '/program', words: 'The program' }}
        title="The program as a file"
        lead="Every record and every entry of the journal in one file, for another database, for safe keeping, or from elsewhere."
      />
      {facts === undefined ? null : (
        <Notice kind="kept">
          <p>
            {facts === '0'
              ? 'Nothing was brought in: all that the file says is on record.'
              : `It is on record: ${Number(facts).toLocaleString('en')} facts were brought in.`}
          </p>
        </Notice>
      )}
      <div className="stack-wide">
        <Section id="in" title="Bring one in">
          <Form action={bringInAction} first={freshForm()}>
            <p>
              What is new in it, or says something else, comes in as one entry, or nothing does. What the file
              leaves out stays as it is.
            </p>
            <ProgramFileField />
            <StepUpField isAsked={isAsked} />
            <SubmitButton>Bring in the file</SubmitButton>
          </Form>
        </Section>
        <Section id="out" title="Take it out">
          <Form action={takeOutAction} first={freshForm()}>
            <p>
              It holds names, births and everything that was recorded, and no passwords. The access log says
              that you took it.
            </p>
            <StepUpField isAsked={isAsked} />
            <SubmitButton>Take out the program</SubmitButton>
          </Form>
        </Section>
      </div>
    </DeskPage>
  )
}
