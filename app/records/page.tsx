import type { Metadata } from 'next'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import { recordCounts } from '../../lib/usecases/records/record-counts.ts'
import { valueForPage } from '../_door/value-for-page.ts'
import { caller, visitorOf } from '../_door/visitor.ts'
import { DeskPage } from '../_parts/desk-page.tsx'
import { PageHeading } from '../_parts/page-heading.tsx'
import { Section } from '../_parts/section.tsx'
import { DOUBT_WORDS } from './doubt-words.ts'
import { enterPath } from './enter-path.ts'
import { mayWrite } from './record-at.ts'
import { recordPath, SECTION_WORDS } from './section-words.ts'

export const metadata: Metadata = { title: 'Records' }

const PATH = '/records'

/** Everything that answers rest on, by kind: how much of it there is, what to look at, and where to enter more. */
export default async function RecordsRoom() {
  const visitor = await visitorOf(PATH)
  const { sections, doubts } = valueForPage(
    await callQuery(runtime(), recordCounts, { input: {} }, await caller()),
    PATH,
  )
  const told = DOUBT_WORDS.flatMap(({ kind, words }) =>
    doubts.filter((one) => one.kind === kind).map((one) => ({ ...one, words })),
  )
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        title="Records"
        lead="Everything that the answers rest on, to be entered and corrected. Nothing is written over."
      />
      <Section
        id="look"
        title="To look at"
        caption="No error: answers count these by the rules. Somebody should look."
      >
        {told.length === 0 ? (
          <p>Nothing within your reach.</p>
        ) : (
          <ul className="histories">
            {told.map(({ kind, section, count, words }) => (
              <li key={`${kind} ${section}`}>
                <a href={`${recordPath(section)}?doubt=${kind}`}>{words}</a>: {count}
              </li>
            ))}
          </ul>
        )}
      </Section>
      {visitor.permissions.includes('stand-down') ? (
        <p className="row">
          <a className="button" href="/stand-down">
            Stand somebody down
          </a>
        </p>
      ) : null}
      <p>
        <a href="/program">The program itself, and from when it decides</a>
      </p>
      <Section id="kinds" title="By kind">
        <ul className="histories">
          {sections.map(({ section, count }) => (
            <li key={section}>
              <p>
                <a href={recordPath(section)}>
                  <strong>{SECTION_WORDS[section].title}</strong>
                </a>
                : {count}
                {mayWrite(visitor, section) ? (
                  <>
                    {' '}
                    <a href={enterPath(section)} aria-label={`Enter ${SECTION_WORDS[section].one}`}>
                      enter one
                    </a>
                  </>
                ) : null}
              </p>
              <p className="caption">{SECTION_WORDS[section].lead}</p>
            </li>
          ))}
        </ul>
      </Section>
    </DeskPage>
  )
}
