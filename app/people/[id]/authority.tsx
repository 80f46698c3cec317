import { statusOfDays } from '../../../lib/drawings/status.ts'
import type { Holding } from '../../../lib/usecases/people/holdings.ts'
import type { PersonPage } from '../../../lib/usecases/people/person.ts'
import type { Stratum } from '../../../lib/usecases/people/strata.ts'
import { dayText, spanText } from '../../../lib/wording/days.ts'
import { heldText } from '../../../lib/wording/held.ts'
import { capitalised } from '../../../lib/wording/lists.ts'
import { markedDayText } from '../../../lib/wording/then.ts'
import { complexitiesText, lineReasons, lineText } from '../../../lib/wording/standing-lines.ts'
import { askedAsText, coversDay, heldUntilText } from '../../../lib/wording/strata.ts'
import { sawKindWords, workKindWords } from '../../../lib/wording/work-words.ts'
import { LapseKey, LapseLine } from '../../_parts/lapse-line.tsx'
import { Level } from '../../_parts/level.tsx'
import { Said } from '../../_parts/said.tsx'
import { Section } from '../../_parts/section.tsx'
import { StatusMark } from '../../_parts/status-mark.tsx'
import { Table } from '../../_parts/table.tsx'
import { countedFrom } from '../counted-from.ts'
import { LineMark } from '../line-mark.tsx'
import { lineRuns } from '../line-runs.ts'
import { stratumQuestion } from './stratum-question.ts'

/** A person's authority as strata: each kind of work, and under it what holds it up. `known` is the knowing asked for. */
export function Authority({ person, known }: { person: PersonPage; known: string | undefined }) {
  const { days, day, today, holdings, strata } = person
  const shown = `Each line shows ${spanText(days)}; ${markedDayText(day, today)}.`
  return (
    <Section id="authority" title="Authority" caption={<Said>{askedAs(person)}</Said>}>
      <div className="strata stack-wide">
        <Table
          caption={`By kind of work and how complex it is. ${shown}`}
          columns={[
            { key: 'work', head: 'Work', speaksForItself: true, cell: (one) => <WorkName stratum={one} /> },
            {
              key: 'line',
              head: 'Line',
              speaksForItself: true,
              cell: (one) => <StratumLine stratum={one} person={person} />,
            },
            {
              key: 'status',
              head: 'Status',
              speaksForItself: true,
              cell: ({ status }) => <LineMark of={status} />,
            },
            {
              key: 'says',
              head: day === today ? 'Today' : `On ${dayText(day)}`,
              speaksForItself: true,
              cell: (one) => <StratumWords stratum={one} person={person} known={known} />,
            },
          ]}
          rows={strata}
          rowKey={({ work, complexities }) => `${work.workKind} ${work.sawKind} ${complexities.join()}`}
        />
        <Table
          caption="What holds it up, and what stops it: of the cards and certificates that a kind of work asks for, the shortest decides."
          columns={[
            {
              key: 'what',
              head: 'Held',
              speaksForItself: true,
              cell: ({ what }) => <Said>{capitalised(heldText(what, person.names))}</Said>,
            },
            {
              key: 'line',
              head: 'Line',
              speaksForItself: true,
              cell: (one) => <HoldingLine holding={one} person={person} />,
            },
            {
              key: 'status',
              head: 'Status',
              speaksForItself: true,
              cell: (one) => <HoldingMark holding={one} day={day} />,
            },
            { key: 'says', head: 'Last day', cell: (one) => holdingText(one, person) },
          ]}
          rows={holdings.filter((one) => isShown(one, days.first))}
          rowKey={({ what }) => JSON.stringify(what)}
          empty={<p>No card, certificate or suspension is on record.</p>}
        />
      </div>
      <LapseKey />
    </Section>
  )
}

type Day = PersonPage['day']

/** What the strata were asked about, so that nobody takes them for an answer about a log. */
function askedAs({ strata, names }: PersonPage): string {
  const work = strata[0]?.work
  return work === undefined ? '' : askedAsText(work, names)
}

function WorkName({ stratum: { work, complexities, level } }: { stratum: Stratum }) {
  return (
    <>
      {capitalised(workKindWords[work.workKind])}, {sawKindWords[work.sawKind].replace(/^a /, '')}
      <span className="level-words">
        {level === undefined ? null : <Level of={level.level} />}
        {complexitiesText(complexities)}
      </span>
    </>
  )
}

function StratumLine({ stratum, person }: { stratum: Stratum; person: PersonPage }) {
  const { work, complexities, spans } = stratum
  return (
    <LapseLine
      window={person.days}
      runs={lineRuns(spans)}
      today={person.day}
      title={`${capitalised(workKindWords[work.workKind])}, ${complexitiesText(complexities)}`}
      says={lineText(stratum, countedFrom(person))}
    />
  )
}

function StratumWords({
  stratum,
  person,
  known,
}: {
  stratum: Stratum
  person: PersonPage
  known: string | undefined
}) {
  const { work, complexities } = stratum
  return (
    <>
      {capitalised(lineText(stratum, countedFrom(person)))}.
      {lineReasons(stratum, person.names).map((reason) => (
        <p key={reason} className="caption">
          <Said>{reason}</Said>
        </p>
      ))}
      <p className="small">
        <a href={stratumQuestion(stratum, person, known)}>
          Ask about this
          <span className="hidden-by-sight">
            : {workKindWords[work.workKind]} with {sawKindWords[work.sawKind]},{' '}
            {complexitiesText(complexities)}
          </span>
        </a>
      </p>
    </>
  )
}

function HoldingLine({ holding: { what, runs, last }, person }: { holding: Holding; person: PersonPage }) {
  return (
    <LapseLine
      window={person.days}
      runs={runs}
      today={person.day}
      title={capitalised(heldText(what, person.names))}
      says={holdingText({ what, runs, ...(last === undefined ? {} : { last }) }, person)}
    />
  )
}

function HoldingMark({ holding: { what, runs, last }, day }: { holding: Holding; day: Day }) {
  const covering = runs.find((run) => coversDay(run, day))
  if (what.kind === 'suspension') {
    return covering === undefined ? <span className="mark">Over</span> : <StatusMark of="suspended" />
  }
  if (covering?.kind === 'unknown') return <StatusMark of="not-on-record" />
  if (covering !== undefined) return <StatusMark of={statusOfDays(covering.first, last, day)} />
  const begins = runs.some(({ first }) => first !== undefined && first > day)
  return <StatusMark of={begins ? 'not-yet' : 'lapsed'} />
}

/** Until when something holds, began or is over. */
function holdingText({ what, runs, last }: Holding, person: PersonPage): string {
  const held = { kind: what.kind, runs, ...(last === undefined ? {} : { last }) }
  return heldUntilText(held, person.day, countedFrom(person))
}

/** What bears on the authority, and is not over since before the days shown; certificates and cards stay to be seen. */
function isShown({ what, runs }: Holding, first: Day): boolean {
  if (what.kind === 'designation' || what.kind === 'permission') return false
  if (what.kind !== 'suspension') return true
  return runs.some(({ last }) => last === undefined || last >= first)
}
