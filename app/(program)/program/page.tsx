import type { Metadata } from 'next'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../lib/usecases/door/runtime.ts'
import { aboutProgram } from '../../../lib/usecases/program/first-day.ts'
import { dayText } from '../../../lib/wording/days.ts'
import { valueForPage } from '../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../_door/visitor.ts'
import { addressWord, type AddressWords } from '../../_parts/address.ts'
import { DeskPage } from '../../_parts/desk-page.tsx'
import { Notice } from '../../_parts/notice.tsx'
import { PageHeading } from '../../_parts/page-heading.tsx'
import { Section } from '../../_parts/section.tsx'

export const metadata: Metadata = { title: 'The program' }

const PATH = '/program'

/** What this program is, and from when its own cards come from decisions only. */
export default async function ProgramPage({ searchParams }: { searchParams: Promise<AddressWords> }) {
  const visitor = await visitorOf(PATH)
  const about = valueForPage(await callQuery(runtime(), aboutProgram, { input: {} }, await caller()), PATH)
  const did = addressWord(await searchParams, 'did')
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        title="The program"
        lead="What this program is called, by whose clocks its days go, which book is in force, and from when it decides itself."
      />
      {did === 'set' ? (
        <Notice kind="kept">
          <p>The first day of deciding here is set.</p>
        </Notice>
      ) : null}
      <Section id="what" title="What it is">
        <dl className="facts">
          <div className="fact">
            <dt>Name</dt>
            <dd>
              <bdi>{about.name}</bdi>
            </dd>
          </div>
          <div className="fact">
            <dt>Clocks</dt>
            <dd>{about.timeZone}</dd>
          </div>
          <div className="fact">
            <dt>Rule book where no place names one</dt>
            <dd>
              <bdi>{about.bookName}</bdi>
            </dd>
          </div>
          <div className="fact">
            <dt>First day of deciding here</dt>
            <dd>
              {about.firstDayOfDeciding === undefined ? 'none is set' : dayText(about.firstDayOfDeciding)}
            </dd>
          </div>
        </dl>
        <p className="caption">
          The program’s own cards effective from that day on come from a decision; others say by whom they
          were issued and that they were carried in. Without such a day no card is held to it.
        </p>
        {visitor.programWide.includes('bring-in-program') ? (
          <p>
            <a href="/program/file">Bring in a program file, or take the whole program out</a>
          </p>
        ) : null}
        {visitor.programWide.includes('keep-program') ? (
          <p>
            <a className="button" href="/program/first-day">
              Set the first day of deciding
            </a>
          </p>
        ) : null}
      </Section>
    </DeskPage>
  )
}
