import type { RecordSection } from '../../../lib/usecases/records/record-kinds.ts'
import type { RecordRow } from '../../../lib/usecases/records/list-records.ts'
import type { WhoMay } from '../../../lib/usecases/records/who-may-counts.ts'
import { dayText, momentText } from '../../../lib/wording/days.ts'
import { capitalised } from '../../../lib/wording/lists.ts'
import { Said } from '../../_parts/said.tsx'
import { Table, type Column, type TableAddress } from '../../_parts/table.tsx'
import { recordPath } from '../section-words.ts'

/** The records of a section: what each says, whom it is about, its days, and who recorded it when. */
export function RecordsTable({
  section,
  rows,
  address,
  caption,
  aboutPeople,
  whoMay,
}: {
  section: RecordSection
  rows: readonly RecordRow[]
  address: TableAddress
  caption: string
  aboutPeople: boolean
  /** Of logs and trees, how many of those within reach stand how. */
  whoMay?: Readonly<Record<string, WhoMay>>
}) {
  const columns: Column<RecordRow>[] = [
    {
      key: 'says',
      head: 'What it says',
      sorts: true,
      speaksForItself: true,
      cell: (row) => says(section, row),
    },
    ...(aboutPeople ? [{ key: 'person', head: 'About', sorts: true as const, cell: person }] : []),
    ...(rows.some(({ first, last }) => first !== undefined || last !== undefined) ? DAYS : []),
    ...(whoMay === undefined
      ? []
      : [
          {
            key: 'who-may',
            head: 'Who may',
            cell: ({ id }: RecordRow) => <Counted id={id} of={whoMay[id]} />,
          },
        ]),
    { key: 'recorded', head: 'Recorded', sorts: true, cell: recorded },
  ]
  return (
    <Table
      caption={caption}
      columns={columns}
      rows={rows}
      rowKey={({ id }) => id}
      address={address}
      empty={
        <p>
          Nothing that you may read fits this. <a href={address.path}>Show everything</a>
        </p>
      }
    />
  )
}

const DAYS: readonly Column<RecordRow>[] = [
  {
    key: 'first',
    head: 'From',
    sorts: true,
    cell: ({ first }) => (first === undefined ? '–' : dayText(first)),
  },
  {
    key: 'last',
    head: 'Through',
    sorts: true,
    cell: ({ last }) => (last === undefined ? '–' : dayText(last)),
  },
]

/** How many may do it, over all its days, with the way to who they are. */
function Counted({ id, of }: { id: string; of: WhoMay | undefined }) {
  const href = `/?item=${encodeURIComponent(id)}&saw=crosscut`
  if (of === undefined) return <a href={href}>ask who may</a>
  const supervised = of['own-level'] + of.training
  return (
    <>
      <a href={href}>{of.independent} on their own</a>
      <br />
      <span className="small">
        {supervised} under somebody, {of.unknown} not on record
      </span>
    </>
  )
}

function says(section: RecordSection, { id, says: phrase, doubts }: RecordRow) {
  return (
    <>
      <a href={recordPath(section, id)}>
        <Said>{capitalised(phrase)}</Said>
      </a>
      {doubts.map((sentence) => (
        <span key={sentence} className="doubt small">
          <Said>{`To look at: ${sentence}`}</Said>
        </span>
      ))}
    </>
  )
}

function person({ person: about }: RecordRow) {
  if (about === undefined) return <span className="caption">nobody alone</span>
  return (
    <a href={`/people/${about.id}`}>
      <bdi>
        <Said>{about.name}</Said>
      </bdi>
    </a>
  )
}

function recorded({ recorded: entry }: RecordRow) {
  if (entry === undefined) return '–'
  return (
    <span className="small">
      {momentText(entry.at)} by <bdi>{entry.by}</bdi>
    </span>
  )
}
