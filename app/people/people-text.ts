import type { PersonRow } from '../../lib/usecases/people/list.ts'
import type { CalendarDate } from '../../lib/core/calendar/dates.ts'
import { dayText } from '../../lib/wording/days.ts'
import { heldText } from '../../lib/wording/held.ts'
import { capitalised } from '../../lib/wording/lists.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../../lib/wording/notice.ts'
import type { Names } from '../../lib/wording/names.ts'
import { lineReasons, lineText } from '../../lib/wording/standing-lines.ts'

/** People as rows of texts: what the table shows, with the reasons, and the notice that belongs beside it. */
export function peopleText(
  rows: readonly PersonRow[],
  { names, today, day }: { names: Names; today: CalendarDate; day: CalendarDate },
): readonly (readonly string[])[] {
  const head = [
    'Number here',
    'Name',
    'Unit',
    'Organisation',
    'Bucking',
    'Why, bucking',
    'Felling',
    'Why, felling',
    'Lapses next',
    'On',
  ]
  const lines = rows.map(({ id, units, organisations, lines: { bucking, felling }, next }) => [
    ...[
      id,
      names.person(id),
      units.map(names.place).join(', '),
      organisations.map(names.organisation).join(', '),
    ],
    ...[bucking, felling].flatMap((line) =>
      line === undefined
        ? ['', '']
        : [
            `${line.level === undefined ? '' : `Level ${line.level}: `}${capitalised(lineText(line, day === today ? today : undefined))}`,
            lineReasons(line, names).join(' '),
          ],
    ),
    next === undefined ? '' : capitalised(heldText(next.what, names)),
    next === undefined ? '' : dayText(next.last),
  ])
  return [head, ...lines, [AUTHORITY_IS_NOT_SAFETY]]
}
