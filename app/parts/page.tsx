import type { Metadata } from 'next'
import { visitorOf } from '../_door/visitor.ts'
import { DeskPage } from '../_parts/desk-page.tsx'
import { PageHeading } from '../_parts/page-heading.tsx'
import { AnswerParts } from './answer-parts.tsx'
import { FormParts } from './form-parts.tsx'
import { LineParts } from './line-parts.tsx'

export const metadata: Metadata = { title: 'Parts' }

/** Every part of the pages with its states, for whoever builds one or wants to see what a mark means. */
export default async function PartsPage() {
  const visitor = await visitorOf('/parts')
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        title="Parts"
        lead="Each part of the pages once, with its states: what the marks, lines and frames mean. What they say here is made up."
      />
      <LineParts />
      <AnswerParts />
      <FormParts />
    </DeskPage>
  )
}
