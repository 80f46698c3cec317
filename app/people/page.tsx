import type { Metadata } from 'next'
import { STATUSES } from '../../lib/drawings/status.ts'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import { listPeople } from '../../lib/usecases/people/list.ts'
import { dayText, spanText } from '../../lib/wording/days.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../../lib/wording/notice.ts'
import { asOfSentence } from '../../lib/wording/openings.ts'
import { markedDayText } from '../../lib/wording/then.ts'
import { valueForPage } from '../_door/value-for-page.ts'
import { caller, visitorOf } from '../_door/visitor.ts'
import { addressWith, type AddressWords } from '../_parts/address.ts'
import { DeskPage } from '../_parts/desk-page.tsx'
import { ErrorSummary } from '../_parts/error-summary.client.tsx'
import type { FormProblem } from '../_parts/form-state.ts'
import { LapseKey } from '../_parts/lapse-line.tsx'
import { PageHeading } from '../_parts/page-heading.tsx'
import { TakeOut } from '../_parts/take-out.tsx'
import { TableFilter, type FilterField } from '../_parts/table-filter.tsx'
import { TablePages } from '../_parts/table-pages.tsx'
import { STATUS_WORDS } from '../_parts/status-mark.tsx'
import { mayWrite } from '../records/record-at.ts'
import { askedPeople, filterProblems, FILTER_LABELS, listInput, type AskedPeople } from './asked-people.ts'
import { NobodyYet } from './nobody-yet.tsx'
import { PeopleTable } from './people-table.tsx'
import { thenFields, ThenNotice } from './then.tsx'
import { thenFaults } from './typed-then.ts'

export const metadata: Metadata = { title: 'People' }

const PATH = '/people'

/** Everybody whose standing the visitor may read, as a table that the address filters and orders. */
export default async function PeoplePage({ searchParams }: { searchParams: Promise<AddressWords> }) {
  const words = await searchParams
  const here = addressWith(PATH, words, {})
  const visitor = await visitorOf(here)
  const asked = askedPeople(words)
  const { list, problems } = await listed(asked, here)
  const { rows, page, names, day, today, days } = list
  const { typed: then } = asked.then
  const isKnownThen = then.known !== undefined && !problems.some(({ field }) => field === 'known')
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        title="People"
        lead={`Who may buck and fell ${day === today ? 'today' : `on ${dayText(day)}`}, at which level, until when, and what lapses next.`}
      />
      <div className="stack-wide people">
        <ErrorSummary state={{ command: '', tries: 0, problems, values: {} }} />
        <ThenNotice told={{ ...list, knownThen: isKnownThen }} path={PATH} words={words} />
        {list.reached <= 1 && visitor.programWide.includes('bring-in-program') ? <NobodyYet /> : null}
        <p>
          <a href="/people/ahead">What lapses in the time ahead</a>
        </p>
        {mayWrite(visitor, 'people') ? (
          <p>
            <a className="button" href="/people/new">
              Enter a person
            </a>
          </p>
        ) : null}
        <TableFilter
          path={PATH}
          words={words}
          fields={filterFields(list, problems)}
          keep={['sort', 'order']}
        />
        <div className="stack">
          <PeopleTable
            rows={rows}
            address={{ path: PATH, words, view: asked.view }}
            caption={captionOf(list)}
            names={names}
            today={today}
            day={day}
            then={then}
            days={days}
          />
          <TablePages path={PATH} words={words} shown={page} of="people" />
          {page.all === 0 ? null : <TakeOut path={PATH} words={words} of="people" />}
        </div>
        <LapseKey />
        <p>
          <strong>{AUTHORITY_IS_NOT_SAFETY}</strong>
        </p>
        <p className="caption">
          Each line is for crosscut work in the person’s own unit, with two people on the saw and a log of one
          inch, so that what restricts a card to smaller logs does not hide its level. Ask about a real log or
          tree on the first page. {asOfSentence(list.n, list.statedAt, today)}
        </p>
      </div>
    </DeskPage>
  )
}

type List = Awaited<ReturnType<typeof listed>>['list']

/** The list as asked; without the filters that were typed wrongly, where some were. */
async function listed(asked: AskedPeople, here: string) {
  const who = await caller()
  const typed = listInput(asked)
  const first = await callQuery(runtime(), listPeople, { input: typed.input }, who)
  const unfit = thenFaults(first)
  if (unfit.length === 0) return { list: valueForPage(first, here), problems: typed.problems }
  const { input, problems } = listInput(asked, filterProblems(unfit))
  return { list: valueForPage(await callQuery(runtime(), listPeople, { input }, who), here), problems }
}

function filterFields({ units, organisations }: List, problems: readonly FormProblem[]): FilterField[] {
  const choices = (of: readonly { id: string; name: string }[]) =>
    of.map(({ id, name }) => ({ value: id, label: name }))
  const fields: FilterField[] = [
    { name: 'name', label: FILTER_LABELS.name },
    { name: 'unit', label: FILTER_LABELS.unit, options: choices(units), any: 'any unit' },
    {
      name: 'organisation',
      label: FILTER_LABELS.organisation,
      options: choices(organisations),
      any: 'any organisation',
    },
    {
      name: 'status',
      label: FILTER_LABELS.status,
      any: 'any status',
      options: [
        ...STATUSES.map((status) => ({ value: status, label: STATUS_WORDS[status] })),
        { value: 'no-card', label: 'No card' },
        { value: 'no', label: 'No, for another reason' },
      ],
    },
    { name: 'lapsesBy', label: FILTER_LABELS.lapsesBy, hint: 'Like 1 Aug 27' },
  ]
  const withProblems = fields.map((field) => {
    const problem = problems.find((one) => one.field === field.name)
    return problem === undefined ? field : { ...field, problem: problem.message }
  })
  return [...withProblems, ...thenFields(problems)]
}

function captionOf({ page, reached, days, day, today }: List): string {
  const who = page.all === reached ? people(reached) : `${page.all} of ${people(reached)}`
  return `${who}. Each line shows ${spanText(days)}; ${markedDayText(day, today)}.`
}

function people(count: number): string {
  return count === 1 ? '1 person' : `${count} people`
}
