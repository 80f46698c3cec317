import type { Metadata } from 'next'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../lib/usecases/door/runtime.ts'
import { whoLooked } from '../../../lib/usecases/people/my-record.ts'
import type { Instant } from '../../../lib/core/calendar/instants.ts'
import { momentText } from '../../../lib/wording/days.ts'
import { lookText } from '../../../lib/wording/looks.ts'
import { valueForPage } from '../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../_door/visitor.ts'
import { DeskPage } from '../../_parts/desk-page.tsx'
import { PageHeading } from '../../_parts/page-heading.tsx'
import { Section } from '../../_parts/section.tsx'
import { Table } from '../../_parts/table.tsx'

export const metadata: Metadata = { title: 'Who has looked' }

const PATH = '/my/looked'

/** Who has looked at one's own record; lists, of which only the length was written down, stand apart. */
export default async function LookedPage() {
  const visitor = await visitorOf(PATH)
  const looked = valueForPage(await callQuery(runtime(), whoLooked, { input: {} }, await caller()), PATH)
  const zone = visitor.timeZone
  const columns = (shows: 'what' | 'count') => [
    { key: 'at', head: 'When', cell: ({ at }: Row) => momentText(at as Instant, zone) },
    { key: 'by', head: 'Who', cell: ({ by }: Row) => <bdi>{by}</bdi> },
    {
      key: 'what',
      head: 'What',
      cell: ({ useCase, count }: Row) =>
        shows === 'what' ? lookText(useCase) : `${lookText(useCase)}, ${count} people`,
    },
  ]
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: '/my', words: 'My record' }}
        title="Who has looked"
        lead="Each time somebody opened your record is written down, your own looks too."
      />
      <div className="stack-wide">
        <Section
          id="openings"
          title="Your record by itself"
          caption={shown(looked.openings.length, looked.allOpenings)}
        >
          <Table
            caption="Who opened your record"
            columns={columns('what')}
            rows={looked.openings}
            rowKey={keyOf}
            empty={<p>Nobody so far.</p>}
          />
        </Section>
        <Section
          id="lists"
          title="Lists of people"
          caption={`Of a list only its length is written down: you may have stood in these or not. ${shown(looked.lists.length, looked.allLists)}`}
        >
          <Table
            caption="Who looked at lists of people"
            columns={columns('count')}
            rows={looked.lists}
            rowKey={keyOf}
            empty={<p>Nobody so far.</p>}
          />
        </Section>
      </div>
    </DeskPage>
  )
}

type Row = { at: string; by: string; useCase: string; count: number }

function keyOf({ at, by, useCase }: Row): string {
  return `${at} ${by} ${useCase}`
}

function shown(count: number, all: number): string {
  return count < all ? `The newest ${count} of ${all.toLocaleString('en')}.` : ''
}
