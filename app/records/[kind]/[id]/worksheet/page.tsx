import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { callQuery } from '../../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../../lib/usecases/door/runtime.ts'
import { worksheetOfItem } from '../../../../../lib/usecases/records/worksheet-of-item.ts'
import { dayText } from '../../../../../lib/wording/days.ts'
import { capitalised } from '../../../../../lib/wording/lists.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../../../../../lib/wording/notice.ts'
import { freshForm } from '../../../../_door/form-outcome.ts'
import { valueForPage } from '../../../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../../../_door/visitor.ts'
import { DeskPage } from '../../../../_parts/desk-page.tsx'
import { Form } from '../../../../_parts/form.client.tsx'
import { Notice } from '../../../../_parts/notice.tsx'
import { PageHeading } from '../../../../_parts/page-heading.tsx'
import { Said } from '../../../../_parts/said.tsx'
import { Section } from '../../../../_parts/section.tsx'
import { namesOffered } from '../../../form/form-page.ts'
import { withOptions } from '../../../form/parts.ts'
import { RecordFields } from '../../../form/record-fields.client.tsx'
import { ToldActs } from '../../../form/record-form.client.tsx'
import { choicesFor, mayWrite, sectionAt } from '../../../record-at.ts'
import { recordPath } from '../../../section-words.ts'
import { SheetOnPaper } from '../sheet-on-paper.tsx'
import { factorParts, RATED_PARTS, SEEN } from './worksheet-form.ts'
import { worksheetAction } from './worksheet-action.ts'

export const metadata: Metadata = { title: 'Complexity worksheet' }

/** The complexity worksheet of a log, a tree or expected work: to fill in, and to print blank or filled. */
export default async function WorksheetPage({ params }: { params: Promise<{ kind: string; id: string }> }) {
  const { kind, id } = await params
  const section = sectionAt(kind)
  const own = recordPath(section, id)
  const path = `${own}/worksheet`
  const visitor = await visitorOf(path)
  const sheet = valueForPage(
    await callQuery(runtime(), worksheetOfItem, { input: { item: id } }, await caller()),
    path,
  )
  if (sheet.section !== section) notFound()
  const choices = await choicesFor(path)
  const parts = withOptions(RATED_PARTS, choices)
  const writes = mayWrite(visitor, 'ratings')
  const rater = choices.people.find((one) => one.id === visitor.person)?.name
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: own, words: 'The record' }}
        title="Complexity worksheet"
        lead={
          <Said>{`${sheet.item.name}: what is seen at it, and how complex that makes the work at least.`}</Said>
        }
      />
      <div className="stack-wide">
        <Notice>
          <p>
            <strong>Walking away is always open, and never a fault.</strong> {AUTHORITY_IS_NOT_SAFETY} No
            published numeric rating of complexity exists: the floors below are those of {sheet.edition.name}.
            The size-up at the log or tree stands above this sheet.
          </p>
        </Notice>
        {writes ? (
          <Form action={worksheetAction.bind(null, id)} first={freshForm()}>
            <RecordFields parts={factorParts(sheet.factors)} prefix={SEEN} names={{}} suggested={{}} />
            <RecordFields
              parts={parts}
              prefix="rated"
              names={namesOffered(parts, choices)}
              suggested={{
                'rated.day': dayText(sheet.day),
                ...(rater === undefined ? {} : { 'rated.rater': rater }),
              }}
            />
            <ToldActs tell="See how complex this makes it" act="Record the rating" />
          </Form>
        ) : null}
      </div>
      <Section
        id="sheet"
        title="The sheet"
        caption="To print and fill in by hand. Nothing crossed means not seen, and what is required and not seen leaves it unrated."
      >
        <SheetOnPaper sheet={sheet} signed="Rated by, on, signed:" />
      </Section>
      <Section id="rated" title="Ratings and raises on record">
        {sheet.rated.length === 0 ? <p>Nobody has rated it yet.</p> : null}
        <ul className="histories">
          {sheet.rated.map((one) => (
            <li key={one.id}>
              <a href={recordPath(one.section, one.id)}>
                <Said>{capitalised(one.says)}</Said>
              </a>
            </li>
          ))}
        </ul>
        {mayWrite(visitor, 'raises') ? (
          <p>
            <a className="button" href={`${recordPath('raises', 'new')}?item=${encodeURIComponent(id)}`}>
              Raise it, with a reason
            </a>
          </p>
        ) : null}
      </Section>
      <p className="back">
        <a href={own}>Back to the record</a>
      </p>
    </DeskPage>
  )
}
