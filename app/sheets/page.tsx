import type { Metadata } from 'next'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import { listSheets, type ListedSheet } from '../../lib/usecases/sheets/desk-of-sheets.ts'
import { isUnderWay } from '../../lib/usecases/sheets/start-bringing-in.ts'
import { DAYS_ON_DESK } from '../../lib/usecases/sheets/put-in.ts'
import { kindField } from '../../lib/usecases/sheets/settings.schema.ts'
import { agoText } from '../../lib/wording/days.ts'
import { capitalised } from '../../lib/wording/lists.ts'
import { sheetKindWords } from '../../lib/wording/sheets.ts'
import { freshForm } from '../_door/form-outcome.ts'
import { valueForPage } from '../_door/value-for-page.ts'
import { caller, visitorOf } from '../_door/visitor.ts'
import { addressWord, type AddressWords } from '../_parts/address.ts'
import { DeskPage } from '../_parts/desk-page.tsx'
import { Notice } from '../_parts/notice.tsx'
import { PageHeading } from '../_parts/page-heading.tsx'
import { Section } from '../_parts/section.tsx'
import { Table, type Column } from '../_parts/table.tsx'
import { TakeOut } from '../_parts/take-out.tsx'
import { PutInForm } from './put-in-form.client.tsx'
import { putInAction } from './sheet-actions.ts'

export const metadata: Metadata = { title: 'Bring in a sheet' }

const PATH = '/sheets'

const DID: Readonly<Record<string, string>> = {
  'thrown-away': 'The sheet is thrown away. What it had brought in stays.',
  undone: 'It is undone: every record says again what it said before.',
}

/** Sheets to bring in, those on the desk, and the way to undo one. */
export default async function SheetsPage({ searchParams }: { searchParams: Promise<AddressWords> }) {
  const visitor = await visitorOf(PATH)
  const { sheets, kinds } = valueForPage(
    await callQuery(runtime(), listSheets, { input: {} }, await caller()),
    PATH,
  )
  const did = DID[addressWord(await searchParams, 'did') ?? '']
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        title="Bring in a sheet"
        lead="People, cards, certificates and more from a spreadsheet. You see what it would do, row by row, before anything is recorded, and can undo it afterwards."
      />
      {did === undefined ? null : (
        <Notice kind="kept">
          <p>{did}</p>
        </Notice>
      )}
      <div className="stack-wide">
        <Section id="new" title="A sheet">
          <PutInForm
            action={putInAction}
            first={freshForm()}
            kinds={kinds.map((kind) => ({ value: kind, label: capitalised(sheetKindWords[kind]) }))}
          />
        </Section>
        <Section
          id="desk"
          title="On your desk"
          caption={`Nobody else sees these. Each lies here for ${DAYS_ON_DESK} days at most.`}
        >
          <Table
            caption="Sheets on your desk"
            columns={COLUMNS}
            rows={sheets}
            rowKey={({ id }) => id}
            empty={<p>There is none. Put one in above.</p>}
          />
        </Section>
        <Section
          id="take-out"
          title="Records to change in a spreadsheet"
          caption="Everything on record within your reach, with our own headings. Change some cells and put the sheet in above: nothing else changes. A restriction in figures, and several on one card, stay as they are. XLSX keeps zeros before a number; a spreadsheet that opens CSV drops them."
        >
          <ul>
            {kinds.map((kind) => (
              <li key={kind}>
                <TakeOut
                  path={`${PATH}/records/${kind}`}
                  words={{}}
                  of={sheetKindWords[kind]}
                  lead={capitalised(sheetKindWords[kind])}
                />
              </li>
            ))}
          </ul>
        </Section>
        {visitor.programWide.includes('bring-in-program') ? (
          <Section id="program" title="The whole program">
            <p>
              <a href="/program/file">Bring in a program file, or take the whole program out</a>
            </p>
          </Section>
        ) : null}
      </div>
    </DeskPage>
  )
}

type Row = ListedSheet

const COLUMNS: readonly Column<Row>[] = [
  {
    key: 'name',
    head: 'Sheet',
    cell: ({ id, name }) => (
      <a href={`/sheets/${id}`}>
        <bdi>{name}</bdi>
      </a>
    ),
  },
  { key: 'kind', head: 'Of', cell: ({ kind }) => sheetKindWords[kindField.parse(kind)] },
  {
    key: 'since',
    head: 'Put in',
    cell: ({ putInAt }) => agoText(Math.max(0, Math.floor((Date.now() - putInAt.getTime()) / 60_000))),
  },
  { key: 'stands', head: 'How it stands', cell: (row) => <Standing row={row} /> },
]

function Standing({ row: { id, entry } }: { row: Row }) {
  if (isUnderWay(runtime(), id)) return 'being brought in'
  if (entry === undefined) return 'not brought in'
  return (
    <>
      brought in by entry {entry}. <a href={`/sheets/undo/${entry}`}>Undo it</a>
    </>
  )
}
