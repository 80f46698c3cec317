import type { Metadata } from 'next'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../lib/usecases/door/runtime.ts'
import { AHEAD_KINDS, AHEAD_SORTS, lapsesAhead } from '../../../lib/usecases/people/lapses-ahead.ts'
import { dayText, monthText } from '../../../lib/wording/days.ts'
import { heldText } from '../../../lib/wording/held.ts'
import { capitalised } from '../../../lib/wording/lists.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../../../lib/wording/notice.ts'
import { dayFromToday } from '../../../lib/wording/standing-lines.ts'
import { takenAwayText } from '../../../lib/wording/taken-away.ts'
import { valueForPage } from '../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../_door/visitor.ts'
import { addressWith, type AddressWords } from '../../_parts/address.ts'
import { DeskPage } from '../../_parts/desk-page.tsx'
import { PageHeading } from '../../_parts/page-heading.tsx'
import { Said } from '../../_parts/said.tsx'
import { Section } from '../../_parts/section.tsx'
import { Table, type Column } from '../../_parts/table.tsx'
import { TableFilter, type FilterField } from '../../_parts/table-filter.tsx'
import { TablePages } from '../../_parts/table-pages.tsx'
import { readTableView } from '../../_parts/table-view.ts'
import { TakeOut } from '../../_parts/take-out.tsx'
import { askedOf, KIND_WORDS, SPANS } from './asked-ahead.ts'

export const metadata: Metadata = { title: 'Recertification ahead' }

const PATH = '/people/ahead'
/** What lapses in the time ahead: by person, month and unit, with what each lapse takes away. */
export default async function AheadPage({ searchParams }: { searchParams: Promise<AddressWords> }) {
  const words = await searchParams
  const here = addressWith(PATH, words, {})
  const visitor = await visitorOf(here)
  const view = readTableView(words, AHEAD_SORTS, { sort: 'last' })
  const ahead = valueForPage(
    await callQuery(runtime(), lapsesAhead, { input: { ...askedOf(words), ...view } }, await caller()),
    here,
  )
  const { rows, page, months, today, through } = ahead
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: '/people', words: 'People' }}
        title="Recertification ahead"
        lead="What lapses in the time ahead, whose it is, and what each lapse takes away by itself."
      />
      <div className="stack-wide">
        <TableFilter
          path={PATH}
          words={words}
          fields={fieldsOf(ahead.units, months)}
          keep={['sort', 'order']}
        />
        <div className="stack">
          <Table
            caption={`${page.all === 1 ? '1 thing lapses' : `${page.all} things lapse`}, from ${dayText(today)} through ${dayText(through)}. What a renewal carries on is left out.`}
            columns={columnsOf(ahead)}
            rows={rows}
            rowKey={({ person, what, last }) => `${person} ${JSON.stringify(what)} ${last}`}
            address={{ path: PATH, words, view }}
            empty={<p>Nothing that you may see lapses in this time.</p>}
          />
          <TablePages path={PATH} words={words} shown={page} of="what lapses" />
          {page.all === 0 ? null : <TakeOut path={PATH} words={words} of="lapses" />}
        </div>
        <Section id="months" title="By month">
          {months.length === 0 ? (
            <p>Nothing lapses.</p>
          ) : (
            <table className="table folds" role="table">
              <caption>How much lapses in each month</caption>
              <thead role="rowgroup">
                <tr role="row">
                  {['Month', ...AHEAD_KINDS.map((kind) => KIND_WORDS[kind])].map((head) => (
                    <th key={head} scope="col" role="columnheader">
                      {head}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody role="rowgroup">
                {months.map(({ month, counts }) => (
                  <tr key={month} role="row">
                    <th scope="row" role="rowheader">
                      <a href={addressWith(PATH, words, { month, page: undefined })}>{monthText(month)}</a>
                    </th>
                    {AHEAD_KINDS.map((kind) => (
                      <td key={kind} role="cell" data-head={KIND_WORDS[kind]}>
                        {counts[kind]}
                      </td>
                    ))}
                  </tr>
                ))}
              </tbody>
            </table>
          )}
        </Section>
        <p>
          <strong>{AUTHORITY_IS_NOT_SAFETY}</strong>
        </p>
        <p className="caption">
          “By itself”: the day after, with this one thing going on and everything else as it is on record, for
          crosscut work of one inch in the person’s own unit. Where two things end together, each takes
          nothing away by itself.
        </p>
      </div>
    </DeskPage>
  )
}

type Ahead = ReturnType<typeof lapsesAhead.answer>
type Row = Ahead['rows'][number]

function columnsOf({ names, today }: Ahead): Column<Row>[] {
  return [
    {
      key: 'last',
      head: 'Last day',
      sorts: true,
      speaksForItself: true,
      cell: ({ last }) => dayFromToday(last, today),
    },
    {
      key: 'name',
      head: 'Person',
      sorts: true,
      cell: ({ person, name }) => (
        <a href={`/people/${person}`}>
          <Said>{name}</Said>
        </a>
      ),
    },
    {
      key: 'unit',
      head: 'Unit',
      sorts: true,
      cell: ({ units }) => units.map(names.place).join(', ') || 'none',
    },
    {
      key: 'what',
      head: 'What lapses',
      sorts: true,
      cell: ({ what }) => <Said>{capitalised(heldText(what, names))}</Said>,
    },
    {
      key: 'lost',
      head: 'Takes away by itself',
      cell: ({ lost }) =>
        lost.length === 0 ? (
          <span className="caption">nothing by itself</span>
        ) : (
          <ul>
            {lost.map((one) => (
              <li key={`${one.workKind} ${one.from} ${one.to}`}>{takenAwayText(one)}</li>
            ))}
          </ul>
        ),
    },
  ]
}

function fieldsOf(units: Ahead['units'], months: Ahead['months']): FilterField[] {
  return [
    {
      name: 'kind',
      label: 'What',
      any: 'anything',
      options: AHEAD_KINDS.map((kind) => ({ value: kind, label: KIND_WORDS[kind] })),
    },
    {
      name: 'unit',
      label: 'Unit',
      any: 'any unit',
      options: units.map(({ id, name }) => ({ value: id, label: name })),
    },
    {
      name: 'month',
      label: 'Month',
      any: 'any month',
      options: months.map(({ month }) => ({ value: month, label: monthText(month) })),
    },
    { name: 'days', label: 'How far ahead', any: 'six months', options: SPANS },
  ]
}
