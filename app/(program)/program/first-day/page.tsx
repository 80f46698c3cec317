import type { Metadata } from 'next'
import { forbidden } from 'next/navigation'
import { callQuery } from '../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { aboutProgram } from '../../../../lib/usecases/program/first-day.ts'
import { dayText } from '../../../../lib/wording/days.ts'
import { freshForm } from '../../../_door/form-outcome.ts'
import { valueForPage } from '../../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../../_door/visitor.ts'
import { DeskPage } from '../../../_parts/desk-page.tsx'
import { SubmitButton, TextField } from '../../../_parts/fields.client.tsx'
import { Form } from '../../../_parts/form.client.tsx'
import { LongTextField } from '../../../_parts/long-text-field.client.tsx'
import { PageHeading } from '../../../_parts/page-heading.tsx'
import { VersionField } from '../../../records/form/record-form.client.tsx'
import { firstDayAction } from './first-day-action.ts'

export const metadata: Metadata = { title: 'The first day of deciding here' }

const PATH = '/program/first-day'

/** The page to set the first day of deciding here. */
export default async function FirstDayPage() {
  const visitor = await visitorOf(PATH)
  if (!visitor.programWide.includes('keep-program')) forbidden()
  const about = valueForPage(await callQuery(runtime(), aboutProgram, { input: {} }, await caller()), PATH)
  const { firstDayOfDeciding: day, version = 1 } = about
  const first = { ...freshForm(), values: day === undefined ? {} : { day: dayText(day) } }
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: '/program', words: 'The program' }}
        title="The first day of deciding here"
        lead="From this day on the program’s own cards come from decisions only. Cards on record that are neither decided nor carried in must be put right first."
      />
      <Form action={firstDayAction} first={first}>
        <VersionField version={version} />
        <TextField
          name="day"
          label="First day of deciding"
          hint="For example 1 April 2025."
          autoComplete="off"
        />
        <LongTextField name="why" label="Why" hint="It stands in the history, with your name." />
        <SubmitButton>Set the day</SubmitButton>
      </Form>
      <p className="back">
        <a href="/program">Back without setting it</a>
      </p>
    </DeskPage>
  )
}
