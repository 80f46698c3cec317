import type { Metadata } from 'next'
import { callQuery } from '../../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../../lib/usecases/door/runtime.ts'
import { readDifference } from '../../../../../lib/usecases/rulebooks/difference.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../../../../../lib/wording/notice.ts'
import { valueForPage } from '../../../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../../../_door/visitor.ts'
import { DeskPage } from '../../../../_parts/desk-page.tsx'
import { PageHeading } from '../../../../_parts/page-heading.tsx'
import { Difference } from '../../../difference.tsx'

export const metadata: Metadata = { title: 'What differs between two editions' }

/** What changes from another adopted edition to this one. */
export default async function AgainstPage({
  params,
}: {
  params: Promise<{ edition: string; other: string }>
}) {
  const { edition, other } = await params
  const path = `/rulebooks/${edition}/against/${other}`
  const visitor = await visitorOf(path)
  const input = { before: { adopted: other }, after: { adopted: edition } }
  const difference = valueForPage(await callQuery(runtime(), readDifference, { input }, await caller()), path)
  const { before, after } = difference
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: `/rulebooks/${after.id}`, words: after.name }}
        title="What differs"
        lead={`From ${before.name} to ${after.name}, rule by rule, both as this program adopted them.`}
      />
      <p>
        <strong>{AUTHORITY_IS_NOT_SAFETY}</strong>
      </p>
      <Difference of={difference} />
    </DeskPage>
  )
}
