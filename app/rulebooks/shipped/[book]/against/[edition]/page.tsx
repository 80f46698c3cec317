import type { Metadata } from 'next'
import { callQuery } from '../../../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../../../lib/usecases/door/runtime.ts'
import { readDifference } from '../../../../../../lib/usecases/rulebooks/difference.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../../../../../../lib/wording/notice.ts'
import { valueForPage } from '../../../../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../../../../_door/visitor.ts'
import { DeskPage } from '../../../../../_parts/desk-page.tsx'
import { PageHeading } from '../../../../../_parts/page-heading.tsx'
import { Difference } from '../../../../difference.tsx'

export const metadata: Metadata = { title: 'An edition as it ships' }

/** What changes from an edition as it was adopted here to the same edition as it ships now. */
export default async function ShippedAgainstPage({
  params,
}: {
  params: Promise<{ book: string; edition: string }>
}) {
  const { book, edition } = await params
  const path = `/rulebooks/shipped/${book}/against/${edition}`
  const visitor = await visitorOf(path)
  const input = { before: { adopted: edition }, after: { shipped: edition } }
  const difference = valueForPage(await callQuery(runtime(), readDifference, { input }, await caller()), path)
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: `/rulebooks/${edition}`, words: difference.before.name }}
        title="As it ships now"
        lead={`From ${difference.before.name} as this program adopted it to the same edition as it ships with this version. What was adopted stays as it is.`}
      />
      <p>
        <strong>{AUTHORITY_IS_NOT_SAFETY}</strong>
      </p>
      <Difference of={difference} />
    </DeskPage>
  )
}
