import type { Metadata } from 'next'
import { callQuery } from '../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { aboutErasing } from '../../../../lib/usecases/people/erase.ts'
import { freshForm } from '../../../_door/form-outcome.ts'
import { requirePermission } from '../../../_door/require-permission.ts'
import { valueForPage } from '../../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../../_door/visitor.ts'
import { DeskPage } from '../../../_parts/desk-page.tsx'
import { SubmitButton } from '../../../_parts/fields.client.tsx'
import { Form } from '../../../_parts/form.client.tsx'
import { LongTextField } from '../../../_parts/long-text-field.client.tsx'
import { Notice } from '../../../_parts/notice.tsx'
import { PageHeading } from '../../../_parts/page-heading.tsx'
import { Section } from '../../../_parts/section.tsx'
import { StepUpField } from '../../../_parts/step-up-field.client.tsx'
import { eraseAction } from './erase-action.ts'

export const metadata: Metadata = { title: 'Erase a name and an age' }

/** The page to check before somebody's name and age are erased: what goes, what stays, and what stands against it. */
export default async function ErasePage({ params }: { params: Promise<{ id: string }> }) {
  const own = `/people/${encodeURIComponent((await params).id)}`
  const visitor = await visitorOf(`${own}/erase`)
  requirePermission(visitor, 'erase')
  const who = await caller()
  const input = { person: (await params).id }
  const about = valueForPage(await callQuery(runtime(), aboutErasing, { input }, who), `${own}/erase`)
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: own, words: about.name }}
        title="Erase the name and age"
        lead="For somebody who works here no more and asks for it, or whose time to be kept is over. It cannot be taken back."
      />
      <div className="stack-wide">
        <Section id="goes" title="What goes">
          <p>
            The name, the birth date, the day they are of age from and who attested it, in{' '}
            {about.versions === 1 ? 'the one version' : `all ${about.versions} versions`} on record. From then
            on they read “Erased by entry …”. Past answers name them so too, and of days on which an age
            decides, say that it is not on record.
          </p>
        </Section>
        <Section id="stays" title="What stays">
          <ul className="marked">
            <li>
              What they held and what was decided: cards, certificates, agreements, suspensions, under an id.
            </li>
            <li>The journal: who recorded what, and when. It says by whom this was erased, and why.</li>
            <li>Their name where they signed for somebody else, as who saw a paper or decided.</li>
            <li>
              What others wrote in words, and the sign-in name of an account. Correct words that name them
              first.
            </li>
            <li>
              Copies outside: backups made before, printed pages, files that were taken out. Kerfbook cannot
              reach those.
            </li>
          </ul>
        </Section>
        {about.against.length === 0 ? (
          <Form action={eraseAction.bind(null, { person: about.id })} first={freshForm()}>
            <LongTextField
              name="why"
              label="Why"
              hint="It stands in the journal, with your name. Do not name them here."
            />
            <StepUpField isAsked={who.kind === 'account' && !who.steppedUp} />
            <SubmitButton>Erase it for ever</SubmitButton>
          </Form>
        ) : (
          <Notice>
            <p>
              <strong>It cannot be erased now.</strong>
            </p>
            <ul className="marked">
              {about.against.map((sentence) => (
                <li key={sentence}>{sentence}</li>
              ))}
            </ul>
          </Notice>
        )}
        <p>
          <a href={own}>Back without erasing it</a>
        </p>
      </div>
    </DeskPage>
  )
}
