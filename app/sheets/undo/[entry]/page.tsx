import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { callQuery } from '../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { aboutUndoing } from '../../../../lib/usecases/sheets/undo-sheet.ts'
import { momentText } from '../../../../lib/wording/days.ts'
import { refusalSentence } from '../../../../lib/wording/refusals.ts'
import { freshForm } from '../../../_door/form-outcome.ts'
import { valueForPage } from '../../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../../_door/visitor.ts'
import { DeskPage } from '../../../_parts/desk-page.tsx'
import { SubmitButton } from '../../../_parts/fields.client.tsx'
import { Form } from '../../../_parts/form.client.tsx'
import { Notice } from '../../../_parts/notice.tsx'
import { PageHeading } from '../../../_parts/page-heading.tsx'
import { undoAction } from '../../sheet-actions.ts'

export const metadata: Metadata = { title: 'Undo a sheet' }

/** The page to check before a sheet is undone: what goes, and what stands against it. */
export default async function UndoPage({ params }: { params: Promise<{ entry: string }> }) {
  const { entry: typed } = await params
  const path = `/sheets/undo/${typed}`
  const visitor = await visitorOf(path)
  if (!/^[1-9][0-9]{0,9}$/.test(typed)) notFound()
  const entry = Number(typed)
  const outcome = await callQuery(runtime(), aboutUndoing, { input: { entry } }, await caller())
  const heading = (
    <PageHeading
      within={{ href: '/sheets', words: 'Bring in a sheet' }}
      title="Undo a sheet"
      lead="What it added is withdrawn, what it changed says again what it said before. The journal keeps both."
    />
  )
  if (outcome.kind === 'refused')
    return (
      <DeskPage visitor={visitor}>
        {heading}
        <Notice>
          <p>{refusalSentence(outcome.because)}</p>
        </Notice>
      </DeskPage>
    )
  const about = valueForPage(outcome, path)
  return (
    <DeskPage visitor={visitor}>
      {heading}
      <div className="stack-wide">
        <p>
          Entry {entry}
          {about.statedAt === undefined ? '' : `, ${momentText(about.statedAt)}`}: {about.withdrawn} records
          added, {about.changed} changed.
        </p>
        {about.rested.length === 0 ? (
          <Form action={undoAction.bind(null, { entry })} first={freshForm()}>
            <SubmitButton>Undo all of it</SubmitButton>
          </Form>
        ) : (
          <Notice>
            <p>
              <strong>It cannot be undone, because later records rest on it.</strong> Correct or withdraw them
              first.
            </p>
            <ul className="marked">
              {about.rested.map((record) => (
                <li key={record}>{record}</li>
              ))}
              {about.more === 0 ? null : <li>and {about.more} more</li>}
            </ul>
          </Notice>
        )}
        <p>
          <a href="/sheets">Back without undoing it</a>
        </p>
      </div>
    </DeskPage>
  )
}
