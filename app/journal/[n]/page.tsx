import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../lib/usecases/door/runtime.ts'
import { readEntry } from '../../../lib/usecases/journal/read-entry.ts'
import { momentText } from '../../../lib/wording/days.ts'
import { valueForPage } from '../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../_door/visitor.ts'
import { DeskPage } from '../../_parts/desk-page.tsx'
import { PageHeading } from '../../_parts/page-heading.tsx'
import { Said } from '../../_parts/said.tsx'
import { Section } from '../../_parts/section.tsx'
import { Table, type Column } from '../../_parts/table.tsx'

export const metadata: Metadata = { title: 'An entry of the journal' }

/** One entry: who did what, the ids of what it is about, and its place in the chain. */
export default async function EntryPage({ params }: { params: Promise<{ n: string }> }) {
  const { n: typed } = await params
  const path = `/journal/${typed}`
  const visitor = await visitorOf(path)
  // An address with other letters than figures is that of no entry.
  if (!/^[1-9][0-9]{0,9}$/.test(typed)) notFound()
  const entry = valueForPage(
    await callQuery(runtime(), readEntry, { input: { n: Number(typed) } }, await caller()),
    path,
  )
  const { n, last } = entry
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: `/journal?through=${n}`, words: 'Journal' }}
        title={`Entry ${n}`}
        lead={
          <>
            <bdi>
              <strong>{entry.by}</strong>
            </bdi>{' '}
            <Said>{entry.sentence}</Said>
          </>
        }
      />
      <Section id="entry" title="The entry">
        <dl className="facts">
          {entry.statedAt === undefined ? null : (
            <>
              <dt>Stated, by a program file, as of</dt>
              <dd>{momentText(entry.statedAt)}</dd>
            </>
          )}
          <dt>Written here</dt>
          <dd>{momentText(entry.at)}</dd>
          <dt>Account</dt>
          <dd>{entry.account ?? 'none'}</dd>
          <dt>Kind</dt>
          <dd>{entry.event}</dd>
          <dt>About</dt>
          <dd>{entry.about.length === 0 ? 'nobody by name' : entry.about.join(', ')}</dd>
          <dt>Its hash</dt>
          <dd className="hash">{entry.hash}</dd>
          <dt>Hash of the entry before</dt>
          <dd className="hash">{entry.prev ?? 'none: this is the first'}</dd>
        </dl>
        <nav className="row pages" aria-label="Entries beside this one">
          {n === 1 ? null : (
            <a rel="prev" href={`/journal/${n - 1}`}>
              Entry {n - 1}
            </a>
          )}
          {n === last ? null : (
            <a rel="next" href={`/journal/${n + 1}`}>
              Entry {n + 1}
            </a>
          )}
        </nav>
      </Section>
      <Section
        id="facts"
        title="Facts"
        caption="Their ids and the digests of what they say; what they say stands with the records."
      >
        <Facts of={entry.recorded} caption="Recorded by this entry" columns={RECORDED} />
        <Facts of={entry.closed} caption="Closed by this entry" columns={CLOSED} />
        {entry.recorded.all + entry.closed.all === 0 ? <p>It recorded and closed no fact.</p> : null}
      </Section>
    </DeskPage>
  )
}

type FactNamed = { table: string; id: string }

function Facts<Fact extends FactNamed>({
  of: { shown, all },
  caption,
  columns,
}: {
  of: { shown: readonly Fact[]; all: number }
  caption: string
  columns: readonly Column<Fact>[]
}) {
  if (all === 0) return null
  const count =
    shown.length < all ? `the first ${shown.length} of ${all.toLocaleString('en-US')}` : String(all)
  return (
    <Table
      caption={`${caption}: ${count}`}
      columns={columns}
      rows={shown}
      rowKey={({ table, id }) => `${table} ${id}`}
    />
  )
}

const CLOSED: readonly Column<FactNamed>[] = [
  { key: 'id', head: 'Id', cell: ({ id }) => id },
  { key: 'table', head: 'Table', cell: ({ table }) => table },
]

const RECORDED: readonly Column<FactNamed & { digest: string }>[] = [
  ...CLOSED,
  { key: 'digest', head: 'Digest', cell: ({ digest }) => <span className="hash">{digest}</span> },
]
