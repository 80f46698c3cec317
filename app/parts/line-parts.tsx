import { dateOf } from '../../lib/core/calendar/dates.ts'
import type { LapseRun } from '../../lib/drawings/lapse-line.ts'
import { STATUSES, type Status } from '../../lib/drawings/status.ts'
import { LapseKey, LapseLine, LapseScale } from '../_parts/lapse-line.tsx'
import { Level } from '../_parts/level.tsx'
import { Section } from '../_parts/section.tsx'
import { StatusMark } from '../_parts/status-mark.tsx'

const MEANS: Readonly<Record<Status, string>> = {
  current: 'Holds today, and more than 60 days beyond',
  'lapses-soon': 'Holds, and its last day is within 60 days or inside what was asked',
  lapsed: 'It counted once; its last day is past',
  suspended: 'Suspended or stood down, from a day, until a day or until lifted',
  'not-yet': 'Known, and not so: no card for it, too young, outside a restriction, still to begin',
  'not-on-record': 'The record does not hold what a rule asks for. Never a yes',
}

const WINDOW = { first: dateOf('2027-05-01'), last: dateOf('2027-10-31') }
const ASKED = { first: dateOf('2027-07-08'), last: dateOf('2027-07-15') }
const TODAY = dateOf('2027-05-03')

const run = (kind: LapseRun['kind'], first: string, last?: string): LapseRun => ({
  kind,
  first: dateOf(first),
  ...(last === undefined ? {} : { last: dateOf(last) }),
})

/** A line of each kind: its name, what it says in words, and its runs. */
const LINES: readonly (readonly [string, string, readonly LapseRun[]])[] = [
  ['On their own, to a last day', 'through 11 July 2027', [run('independent', '2025-04-14', '2027-07-11')]],
  ['On their own, past the edge', 'through 13 April 2028', [run('independent', '2025-04-14', '2028-04-13')]],
  [
    'Renewed, no gap',
    'through 12 April 2030',
    [run('independent', '2024-07-19', '2027-07-18'), run('independent', '2027-07-19', '2030-04-12')],
  ],
  [
    'Renewed a day late',
    'none on 11 July 2027',
    [run('independent', '2024-07-11', '2027-07-10'), run('independent', '2027-07-12', '2030-07-11')],
  ],
  ['Under a B or C', 'through 14 August 2027', [run('own-level', '2026-01-01', '2027-08-14')]],
  ['In training', 'through 14 August 2027', [run('training', '2026-01-01', '2027-08-14')]],
  [
    'Suspended',
    'from 19 May 2027 until lifted',
    [run('independent', '2025-04-14', '2027-05-18'), run('suspended', '2027-05-19')],
  ],
  ['Not on record', 'no first aid on record', [run('unknown', '2027-01-01')]],
  ['No', 'no card for this work', [run('none', '2027-01-01')]],
]

/** Marks, levels and lapse lines. */
export function LineParts() {
  return (
    <>
      <Section
        id="marks"
        title="Status marks"
        caption="Six. A word, a shape and a fill, never a colour alone"
      >
        <table className="table">
          <thead>
            <tr>
              <th scope="col">Mark</th>
              <th scope="col">Means</th>
            </tr>
          </thead>
          <tbody>
            {STATUSES.map((status) => (
              <tr key={status}>
                <th scope="row">
                  <StatusMark of={status} />
                </th>
                <td>{MEANS[status]}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Section>
      <Section id="levels" title="Levels" caption="A letter in a box, never a colour">
        <p className="row">
          <Level of="A" />
          <Level of="B" />
          <Level of="C" />
        </p>
      </Section>
      <Section
        id="lines"
        title="Lapse line"
        caption="A bar where it holds. A cut ends it, an arrow goes on; the wash is what was asked, the stroke is today"
      >
        <table className="table answers" role="table">
          <thead role="rowgroup">
            <tr role="row">
              <th role="columnheader" scope="col">
                Kind
              </th>
              <th role="columnheader" scope="col">
                Days <LapseScale window={WINDOW} asked={ASKED} />
              </th>
              <th role="columnheader" scope="col">
                In words
              </th>
            </tr>
          </thead>
          <tbody role="rowgroup">
            {LINES.map(([name, says, runs]) => (
              <tr key={name} role="row">
                <th role="rowheader" scope="row">
                  {name}
                </th>
                <td role="cell" className="days">
                  <LapseLine
                    window={WINDOW}
                    runs={runs}
                    asked={ASKED}
                    today={TODAY}
                    title={name}
                    says={says}
                  />
                </td>
                <td role="cell">{says}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <LapseKey under="under a B or C" />
      </Section>
    </>
  )
}
