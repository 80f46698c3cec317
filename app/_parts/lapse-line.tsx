import type { CalendarDate } from '../../lib/core/calendar/dates.ts'
import type { Span } from '../../lib/core/calendar/spans.ts'
import { lapseLine, type LapseBar, type LapseRun } from '../../lib/drawings/lapse-line.ts'
import { dayText, spanText } from '../../lib/wording/days.ts'

/** Where the bar lies in the line's 24 px of height. */
const TOP = 6
const THICK = 12
const MIDDLE = TOP + THICK / 2
const HEIGHT = 24

/**
 * A lapse line: time runs left to right, a bar where something holds, a cut where it ends, an arrow where it goes on.
 * What it shows must also stand beside it in words; `title` and `says` are for those who do not see it.
 */
export function LapseLine({
  window,
  runs,
  asked,
  today,
  title,
  says,
}: {
  window: Span
  runs: readonly LapseRun[]
  asked?: Span
  today?: CalendarDate
  title: string
  says: string
}) {
  const line = lapseLine(window, runs, {
    ...(asked === undefined ? {} : { asked }),
    ...(today === undefined ? {} : { today }),
  })
  return (
    <svg className="lapse-line" role="img" aria-label={`${title}: ${says}`}>
      <title>{title}</title>
      <desc>{says}</desc>
      {line.asked === undefined ? null : <Wash {...line.asked} />}
      <line className="ground" x1="0" x2="100%" y1={MIDDLE} y2={MIDDLE} />
      {line.bars.map((bar) => (
        <Bar key={`${bar.kind} ${bar.left}`} bar={bar} />
      ))}
      {line.today === undefined ? null : (
        <line className="today" x1={`${line.today}%`} x2={`${line.today}%`} y1="0" y2={HEIGHT} />
      )}
    </svg>
  )
}

function Wash({ left, width }: { left: number; width: number }) {
  const edges = [`${left}%`, `${left + width}%`]
  return (
    <>
      <rect className="wash" x={edges[0]} y="0" width={`${width}%`} height={HEIGHT} />
      {edges.map((x) => (
        <line key={x} className="edge" x1={x} x2={x} y1="0" y2={HEIGHT} />
      ))}
    </>
  )
}

function Bar({ bar: { kind, left, width, cut, goesOn } }: { bar: LapseBar }) {
  const end = `${left + width}%`
  return (
    <>
      <Stretch kind={kind} left={`${left}%`} width={`${width}%`} end={end} />
      {cut === undefined ? null : <line className="cut" x1={end} x2={end} y1="0" y2={HEIGHT} />}
      {goesOn ? (
        <svg x={end} y={TOP} overflow="visible">
          <path className="arrow-ground" d="M-9-1 2 6-9 13H3V-1z" />
          <path className="arrow" d="M-9 0-1 6-9 12" />
        </svg>
      ) : null}
    </>
  )
}

/** The stretch of a bar: full, half, open, rungs or a dotted outline, so that it tells itself apart in grey. */
function Stretch({
  kind,
  left,
  width,
  end,
}: Pick<LapseBar, 'kind'> & { left: string; width: string; end: string }) {
  if (kind === 'independent') {
    return <rect className="full" x={left} y={TOP} width={width} height={THICK} />
  }
  const outline = (
    <rect
      className={kind === 'unknown' ? 'outline dotted' : 'outline'}
      x={left}
      y={TOP + 0.75}
      width={width}
      height={THICK - 1.5}
    />
  )
  switch (kind) {
    case 'own-level':
      return (
        <>
          {outline}
          <rect className="full" x={left} y={MIDDLE} width={width} height={THICK / 2} />
        </>
      )
    case 'suspended':
      return (
        <>
          {outline}
          <line className="rungs" x1={left} x2={end} y1={MIDDLE} y2={MIDDLE} />
        </>
      )
    case 'training':
    case 'unknown':
      return outline
  }
}

/** The scale over a column of lapse lines: the days asked, and under them the first and the last day shown. */
export function LapseScale({ window, asked }: { window: Span; asked?: Span }) {
  return (
    <span className="lapse-scale">
      {asked === undefined ? null : <span className="asked">asked: {spanText(asked)}</span>}
      <span className="ends">
        <span>{dayText(window.first)}</span> <span>{dayText(window.last)}</span>
      </span>
    </span>
  )
}

/** What the stretches of a lapse line mean; `under` names the levels that may supervise. */
export function LapseKey({ under = 'under a supervisor' }: { under?: string }) {
  const kinds = [
    ['independent', 'on their own'],
    ['own-level', under],
    ['training', 'in training'],
    ['suspended', 'suspended'],
    ['unknown', 'not on record'],
  ] as const
  return (
    <ul className="lapse-key">
      {kinds.map(([kind, word]) => (
        <li key={kind}>
          <LapseSample kind={kind} />
          {word}
        </li>
      ))}
      <li>
        <LapseSample kind="none" />
        no
      </li>
    </ul>
  )
}

/** A short piece of a line, beside the word for it. */
export function LapseSample({ kind }: { kind: LapseBar['kind'] | 'none' }) {
  return (
    <svg className="lapse-line sample" aria-hidden="true" focusable="false">
      {kind === 'none' ? (
        <line className="ground" x1="0" x2="100%" y1={MIDDLE} y2={MIDDLE} />
      ) : (
        <Stretch kind={kind} left="1" width="28" end="29" />
      )}
    </svg>
  )
}
