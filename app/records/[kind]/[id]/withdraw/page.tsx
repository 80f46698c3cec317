import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { capitalised } from '../../../../../lib/wording/lists.ts'
import { freshForm } from '../../../../_door/form-outcome.ts'
import { DeskPage } from '../../../../_parts/desk-page.tsx'
import { Form } from '../../../../_parts/form.client.tsx'
import { Notice } from '../../../../_parts/notice.tsx'
import { PageHeading } from '../../../../_parts/page-heading.tsx'
import { Said } from '../../../../_parts/said.tsx'
import { withdrawAction } from '../../../form/change-actions.ts'
import { ToldActs, VersionField, WhyField } from '../../../form/record-form.client.tsx'
import { recordForPage, requireWriting } from '../../../record-at.ts'

export const metadata: Metadata = { title: 'Withdraw a record' }

/** The page to withdraw a record that never should have stood. */
export default async function WithdrawPage({ params }: { params: Promise<{ kind: string; id: string }> }) {
  const { kind, id } = await params
  const { section, own, visitor, record } = await recordForPage(kind, id, '/withdraw')
  requireWriting(visitor, section)
  const [latest] = record.versions
  if (record.version === undefined || latest === undefined) notFound()
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: own, words: 'The record' }}
        title={section === 'joins' ? 'Part them again' : 'Withdraw it'}
        lead={
          <Said>{`${capitalised(latest.says)}. For what never should have stood; what was so and is over gets a last day instead.`}</Said>
        }
      />
      <div className="stack-wide">
        {record.namedBy === 0 ? null : (
          <Notice>
            <p>
              {record.namedBy === 1 ? 'Another record names' : `${record.namedBy} other records name`} this
              one, and would be about nothing. Correct or withdraw {record.namedBy === 1 ? 'it' : 'them'}{' '}
              first.
            </p>
          </Notice>
        )}
        {section === 'suspensions' ? (
          <Notice>
            <p>
              Withdrawing says that this should never have stood. Lifting a suspension is a decision of a
              certifying official; decisions have no page here yet.
            </p>
          </Notice>
        ) : null}
        <Form action={withdrawAction.bind(null, { section, id })} first={freshForm()}>
          <VersionField version={record.version} />
          <WhyField hint="Why it never should have stood, and how you know. It stays in the history, with your name." />
          <ToldActs
            tell="See what this changes"
            act={section === 'joins' ? 'Part them again' : 'Withdraw it'}
          />
        </Form>
        <p>
          <a href={own}>Back without withdrawing it</a>
        </p>
      </div>
    </DeskPage>
  )
}
