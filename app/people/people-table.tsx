import type { CalendarDate } from '../../lib/core/calendar/dates.ts'
import type { Span } from '../../lib/core/calendar/spans.ts'
import type { WorkKind } from '../../lib/core/rulebooks/words.ts'
import type { PersonRow } from '../../lib/usecases/people/list.ts'
import { heldText } from '../../lib/wording/held.ts'
import { capitalised } from '../../lib/wording/lists.ts'
import type { Names } from '../../lib/wording/names.ts'
import { dayFromToday, lineText, shortLineTexts } from '../../lib/wording/standing-lines.ts'
import { workKindWords } from '../../lib/wording/work-words.ts'
import { addressWith } from '../_parts/address.ts'
import { LapseLine } from '../_parts/lapse-line.tsx'
import { Level } from '../_parts/level.tsx'
import { Said } from '../_parts/said.tsx'
import { Table, type Column, type TableAddress } from '../_parts/table.tsx'
import { countedFrom } from './counted-from.ts'
import { LineMark } from './line-mark.tsx'
import { lineRuns } from './line-runs.ts'
import type { TypedThen } from './typed-then.ts'

/** What every row of the table is read with. */
type Shown = {
  names: Names
  today: CalendarDate
  /** The day as of which the lines are told. */
  day: CalendarDate
  days: Span
  /** What the address says of it, for the way to each person. */
  then: TypedThen['typed']
}

/** People as a table: where each belongs, the strongest line for each kind of work, and what lapses next. */
export function PeopleTable({
  rows,
  address,
  caption,
  ...shown
}: Shown & { rows: readonly PersonRow[]; address: TableAddress; caption: string }) {
  const onDay = shown.day === shown.today ? 'today' : 'that day'
  const columns: Column<PersonRow>[] = [
    {
      key: 'name',
      head: 'Name',
      sorts: true,
      speaksForItself: true,
      cell: (row) => <Name row={row} {...shown} />,
    },
    {
      key: 'unit',
      head: 'Unit',
      sorts: true,
      cell: (row) => <Places ids={row.units} of={shown.names.place} none={`no unit ${onDay}`} />,
    },
    {
      key: 'organisation',
      head: 'Organisation',
      sorts: true,
      cell: (row) => (
        <Places ids={row.organisations} of={shown.names.organisation} none={`no organisation ${onDay}`} />
      ),
    },
    ...(['bucking', 'felling'] as const).map((kind) => ({
      key: kind,
      head: capitalised(workKindWords[kind]),
      sorts: true as const,
      cell: (row: PersonRow) => <Standing row={row} kind={kind} {...shown} />,
    })),
    { key: 'next', head: 'Lapses next', sorts: true, cell: (row) => <Next row={row} {...shown} /> },
  ]
  return (
    <Table
      caption={caption}
      columns={columns}
      rows={rows}
      rowKey={({ id }) => id}
      address={address}
      empty={<NobodyFits path={address.path} />}
    />
  )
}

function Name({ row: { id, isOpen }, names, then }: Shown & { row: PersonRow }) {
  const name = (
    <bdi>
      <Said>{names.person(id)}</Said>
    </bdi>
  )
  return isOpen ? <a href={addressWith(`/people/${id}`, then, {})}>{name}</a> : name
}

function Places({ ids, of, none }: { ids: readonly string[]; of: (id: string) => string; none: string }) {
  if (ids.length === 0) return <span className="caption">{none}</span>
  return (
    <ul>
      {ids.map((id) => (
        <li key={id}>
          <bdi>{of(id)}</bdi>
        </li>
      ))}
    </ul>
  )
}

function Standing({ row, kind, names, today, day, days }: Shown & { row: PersonRow; kind: WorkKind }) {
  const line = row.lines[kind]
  const counted = countedFrom({ day, today })
  if (line === undefined || line.status === 'no-card') return <span className="caption">no card</span>
  return (
    <div className="standing">
      <p className="row">
        {line.level === undefined ? null : <Level of={line.level} />}
        <LineMark of={line.status} />
      </p>
      <LapseLine
        window={days}
        runs={lineRuns(line.spans)}
        today={day}
        title={`${names.person(row.id)}, ${workKindWords[kind]}`}
        says={lineText(line, counted)}
      />
      {shortLineTexts(line, line.work.complexity, counted, names).map((sentence) => (
        <p key={sentence} className="small">
          <Said>{sentence}</Said>
        </p>
      ))}
    </div>
  )
}

function Next({ row: { next, isOpen }, names, today, day }: Shown & { row: PersonRow }) {
  if (!isOpen) return <span className="caption">in records of another unit</span>
  if (next === undefined) return <span className="caption">nothing with a day</span>
  return (
    <>
      <span className="small">
        <Said>{capitalised(heldText(next.what, names))}</Said>
      </span>
      <br />
      {dayFromToday(next.last, countedFrom({ day, today }))}
    </>
  )
}

function NobodyFits({ path }: { path: string }) {
  return (
    <>
      <p>Nobody whom you may see fits all of this.</p>
      <p>
        <a className="button" href={path}>
          Show everybody
        </a>
      </p>
    </>
  )
}
