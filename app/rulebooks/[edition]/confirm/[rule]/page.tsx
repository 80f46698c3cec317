import type { Metadata } from 'next'
import { notFound, redirect } from 'next/navigation'
import { callQuery } from '../../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../../lib/usecases/door/runtime.ts'
import { readEdition } from '../../../../../lib/usecases/rulebooks/read-edition.ts'
import { dayText } from '../../../../../lib/wording/days.ts'
import { freshForm } from '../../../../_door/form-outcome.ts'
import { requirePermission } from '../../../../_door/require-permission.ts'
import { valueForPage } from '../../../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../../../_door/visitor.ts'
import { DeskPage } from '../../../../_parts/desk-page.tsx'
import { SubmitButton, TextField } from '../../../../_parts/fields.client.tsx'
import { Form } from '../../../../_parts/form.client.tsx'
import { LongTextField } from '../../../../_parts/long-text-field.client.tsx'
import { Notice } from '../../../../_parts/notice.tsx'
import { PageHeading } from '../../../../_parts/page-heading.tsx'
import { Section } from '../../../../_parts/section.tsx'
import { RuleBody } from '../../rule-item.tsx'
import { ruleAnchor } from '../../../../_parts/rule-address.ts'
import { confirmAction } from './confirm-action.ts'
import { LABELS } from './labels.ts'

export const metadata: Metadata = { title: 'Confirm a rule' }

/** The page to check before a rule from memory is confirmed: what it says, and what was read. */
export default async function ConfirmPage({
  params,
}: {
  params: Promise<{ edition: string; rule: string }>
}) {
  const { edition: id, rule: ruleId } = await params
  const back = `/rulebooks/${id}`
  const path = `${back}/confirm/${ruleId}`
  const visitor = await visitorOf(path)
  requirePermission(visitor, 'confirm-rules')
  const read = valueForPage(
    await callQuery(runtime(), readEdition, { input: { edition: id } }, await caller()),
    path,
  )
  const rule = read.sections.flatMap(({ rules }) => rules).find((one) => one.id === ruleId)
  if (rule === undefined || rule.mark !== 'from-memory') notFound()
  // What is confirmed already shows by whom in its place.
  if (rule.confirmed !== undefined) redirect(`${back}#${ruleAnchor(rule.id)}`)
  const name = visitor.name ?? visitor.signInName
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: `${back}#${ruleAnchor(rule.id)}`, words: read.edition.name }}
        title={`Confirm ${rule.id}`}
        lead="Confirm it when you have read its source yourself and the source says what the rule says."
      />
      <Section id="the-rule" title="The rule">
        <RuleBody rule={rule} />
      </Section>
      <Section id="confirmation" title="Your confirmation">
        <Notice>
          <p>
            It will stand in the journal under your name, <bdi>{name}</bdi>, and in the book for everybody to
            read. The rule stays as it is. If the source says something else, do not confirm it: that is a new
            edition.
          </p>
        </Notice>
        <Form
          action={confirmAction.bind(null, { edition: id, version: read.version, rule: rule.id })}
          first={freshForm()}
        >
          <TextField
            name="day"
            label={LABELS.day}
            hint="Like 8 July 2027 or 8 Jul 27."
            autoComplete="off"
            suggested={dayText(read.today)}
          />
          <LongTextField
            name="read"
            label={LABELS.read}
            hint="Title, edition or date, section, and the words that say it."
          />
          <SubmitButton>Confirm the rule</SubmitButton>
        </Form>
        <p>
          <a href={`${back}#${ruleAnchor(rule.id)}`}>Back without confirming</a>
        </p>
      </Section>
    </DeskPage>
  )
}
