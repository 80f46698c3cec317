import type { Metadata } from 'next'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../lib/usecases/door/runtime.ts'
import { LIST_RECORDS } from '../../../lib/usecases/records/list-records.ts'
import { readGroupOf } from '../../../lib/usecases/records/readable.ts'
import { valueForPage } from '../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../_door/visitor.ts'
import { addressWith, type AddressWords } from '../../_parts/address.ts'
import { DeskPage } from '../../_parts/desk-page.tsx'
import { PageHeading } from '../../_parts/page-heading.tsx'
import { TableFilter } from '../../_parts/table-filter.tsx'
import { TablePages } from '../../_parts/table-pages.tsx'
import { mayWrite, sectionAt } from '../record-at.ts'
import { whoMayCounts } from '../../../lib/usecases/records/who-may-counts.ts'
import { DOUBT_WORDS } from '../doubt-words.ts'
import { recordPath, SECTION_WORDS } from '../section-words.ts'
import { enterPath } from '../enter-path.ts'
import { TakeOut } from '../../_parts/take-out.tsx'
import { listInput } from './list-input.ts'
import { RecordsTable } from './records-table.tsx'

type Address = { params: Promise<{ kind: string }>; searchParams: Promise<AddressWords> }

/** The page's title: what the records are. */
export async function generateMetadata({ params }: Address): Promise<Metadata> {
  return { title: SECTION_WORDS[sectionAt((await params).kind)].title }
}

/** The records of a section, as a table that the address filters and orders. */
export default async function RecordsPage({ params, searchParams }: Address) {
  const section = sectionAt((await params).kind)
  const words = await searchParams
  const path = recordPath(section)
  const here = addressWith(path, words, {})
  const visitor = await visitorOf(here)
  const group = readGroupOf(section)
  const { input, view, isWithdrawn: withdrawn } = listInput(section, words)
  const list = valueForPage(await callQuery(runtime(), LIST_RECORDS[group], { input }, await caller()), here)
  const isWork = section === 'items' || section === 'expectedWork'
  const items = list.page.rows.map(({ id }) => id)
  const mayAsk = isWork && !withdrawn && visitor.permissions.includes('read-standing')
  const whoMay = mayAsk
    ? valueForPage(await callQuery(runtime(), whoMayCounts, { input: { items } }, await caller()), here)
    : undefined
  const { title, one, lead } = SECTION_WORDS[section]
  return (
    <DeskPage visitor={visitor}>
      <PageHeading within={{ href: '/records', words: 'Records' }} title={title} lead={lead} />
      <div className="stack-wide records">
        {mayWrite(visitor, section) ? (
          <p>
            <a className="button main" href={enterPath(section)}>
              Enter {one}
            </a>
          </p>
        ) : null}
        <TableFilter
          path={path}
          words={words}
          keep={['sort', 'order']}
          fields={[
            { name: 'says', label: 'Says, or is about' },
            {
              name: 'doubt',
              label: 'To look at',
              any: 'whatever there is',
              options: DOUBT_WORDS.map(({ kind, words: label }) => ({ value: kind, label })),
            },
            {
              name: 'state',
              label: 'How it stands',
              any: 'on record now',
              options: [{ value: 'withdrawn', label: 'Withdrawn' }],
            },
          ]}
        />
        <div className="stack">
          <RecordsTable
            section={section}
            rows={list.page.rows}
            address={{ path, words, view }}
            caption={captionOf(list.page.all, list.all, withdrawn)}
            aboutPeople={group === 'people'}
            {...(whoMay === undefined ? {} : { whoMay })}
          />
          <TablePages path={path} words={words} shown={list.page} of="records" />
          {list.page.all === 0 ? null : <TakeOut path={path} words={words} of="records" />}
        </div>
      </div>
    </DeskPage>
  )
}

function captionOf(shown: number, all: number, withdrawn: boolean): string {
  const of = shown === all ? records(all) : `${shown} of ${records(all)}`
  return withdrawn ? `${of}, withdrawn` : of
}

function records(count: number): string {
  return count === 1 ? '1 record' : `${count} records`
}
