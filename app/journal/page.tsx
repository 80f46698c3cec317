import type { Metadata } from 'next'
import { headText } from '../../lib/core/journal/heads.ts'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import { readJournal, type ListedEntry } from '../../lib/usecases/journal/read-journal.ts'
import { momentText } from '../../lib/wording/days.ts'
import { valueForPage } from '../_door/value-for-page.ts'
import { caller, visitorOf } from '../_door/visitor.ts'
import { addressWith, addressWord, type AddressWords } from '../_parts/address.ts'
import { DeskPage } from '../_parts/desk-page.tsx'
import { PageHeading } from '../_parts/page-heading.tsx'
import { Said } from '../_parts/said.tsx'
import { Section } from '../_parts/section.tsx'
import { TableFilter } from '../_parts/table-filter.tsx'
import { Table, type Column } from '../_parts/table.tsx'
import { TakeOut } from '../_parts/take-out.tsx'

export const metadata: Metadata = { title: 'Journal' }

const PATH = '/journal'
const THROUGH = 'through'

/** The journal: who did what, the newest first, in pages by number, with the head to keep elsewhere. */
export default async function JournalPage({ searchParams }: { searchParams: Promise<AddressWords> }) {
  const words = await searchParams
  const here = addressWith(PATH, words, {})
  const visitor = await visitorOf(here)
  const typed = addressWord(words, THROUGH)
  const { page, problem } = await pageOf(typed, here)
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        title="Journal"
        lead="Every write to the records, in the order in which it was made: who did what, and when. Nothing in it is edited or removed."
      />
      <Head head={page.head} />
      <Section id="entries" title="Entries" caption={countText(page.last)}>
        <TableFilter
          path={PATH}
          words={words}
          keep={[]}
          fields={[
            { name: THROUGH, label: 'Entries through number', ...(problem === undefined ? {} : { problem }) },
          ]}
        />
        <Table
          caption={
            page.entries.length === 0
              ? 'No entries'
              : `Entries ${page.through} back to ${page.from}. What a program file brought stands at the moment for which the file states it.`
          }
          columns={COLUMNS}
          rows={page.entries}
          rowKey={({ n }) => String(n)}
          empty={<p>The journal is empty: nothing has been recorded yet.</p>}
        />
        <nav className="row pages" aria-label="Pages of the journal">
          {page.later === undefined ? null : (
            <a
              rel="prev"
              href={addressWith(
                PATH,
                {},
                {
                  [THROUGH]: page.later === page.last ? undefined : String(page.later),
                },
              )}
            >
              Later entries
            </a>
          )}
          {page.earlier === undefined ? null : (
            <a rel="next" href={addressWith(PATH, {}, { [THROUGH]: String(page.earlier) })}>
              Earlier entries
            </a>
          )}
        </nav>
        {page.entries.length === 0 ? null : <TakeOut path={PATH} words={words} of="entries" />}
      </Section>
    </DeskPage>
  )
}

const COLUMNS: readonly Column<ListedEntry>[] = [
  {
    key: 'n',
    head: 'Entry',
    speaksForItself: true,
    cell: ({ n }) => (
      <a className="one-line" href={`${PATH}/${n}`}>
        Entry {n}
      </a>
    ),
  },
  {
    key: 'what',
    head: 'Who did what',
    speaksForItself: true,
    cell: ({ by, sentence }) => (
      <>
        <bdi>
          <strong>{by}</strong>
        </bdi>{' '}
        <Said>{sentence}</Said>
      </>
    ),
  },
  { key: 'when', head: 'When', cell: ({ at, statedAt }) => momentText(statedAt ?? at) },
]

/** The page that the address asks for; the newest, with what is wrong, where it asks for none that there is. */
async function pageOf(typed: string | undefined, here: string) {
  const who = await caller()
  const read = async (through?: number) =>
    callQuery(runtime(), readJournal, { input: through === undefined ? {} : { through } }, who)
  if (typed === undefined) return { page: valueForPage(await read(), here) }
  const asked = await read(/^[0-9]{1,10}$/.test(typed) ? Number(typed) : Number.NaN)
  if (asked.kind !== 'invalid') return { page: valueForPage(asked, here) }
  return {
    page: valueForPage(await read(), here),
    problem: 'The number of an entry is a whole number from 1. These are the newest entries.',
  }
}

function Head({ head }: { head: { n: number; hash: string } | undefined }) {
  if (head === undefined) return null
  return (
    <Section
      id="head"
      title="Head"
      caption="The last entry and its hash, which rests on every entry before it."
    >
      <p className="hash">{headText(head)}</p>
      <p className="small">
        Keep it where whoever runs this machine cannot reach it: on paper, or with somebody else. Whoever
        holds it can tell later whether anything up to this entry was altered or cut off, with the command{' '}
        <span className="entry">verify-journal --head</span>.
      </p>
    </Section>
  )
}

function countText(count: number): string {
  return count === 1 ? '1 entry' : `${count.toLocaleString('en-US')} entries`
}
