import type { Metadata } from 'next'
import { visitorOf } from '../_door/visitor.ts'
import { DeskPage } from '../_parts/desk-page.tsx'
import { PageHeading } from '../_parts/page-heading.tsx'
import { roleWords } from '../_parts/role-words.ts'
import { Section } from '../_parts/section.tsx'

export const metadata: Metadata = { title: { absolute: 'Kerfbook' } }

/** The first page: so far it names the program and says who one is here. */
export default async function FirstPage() {
  const visitor = await visitorOf('/')
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        title={<bdi>{visitor.program}</bdi>}
        lead="This page names the program and says who you are here."
      />
      <Section id="you" title="You">
        <dl className="facts">
          {visitor.name === undefined ? null : (
            <>
              <dt>Name</dt>
              <dd>
                <bdi>{visitor.name}</bdi>
              </dd>
            </>
          )}
          <dt>Signed in as</dt>
          <dd>{visitor.signInName}</dd>
          <dt>Roles</dt>
          <dd>{visitor.roles.length === 0 ? 'none today' : visitor.roles.map(roleWords).join(', ')}</dd>
        </dl>
      </Section>
    </DeskPage>
  )
}
