import type { lapsesAhead } from '../../../lib/usecases/people/lapses-ahead.ts'
import { dayText } from '../../../lib/wording/days.ts'
import { heldText } from '../../../lib/wording/held.ts'
import { capitalised } from '../../../lib/wording/lists.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../../../lib/wording/notice.ts'
import { takenAwayText } from '../../../lib/wording/taken-away.ts'

/** What lapses as rows of texts, and the notice that belongs beside it. */
export function aheadText({
  rows,
  names,
}: ReturnType<typeof lapsesAhead.answer>): readonly (readonly string[])[] {
  return [
    ['Last day', 'Number here', 'Person', 'Unit', 'What lapses', 'Takes away by itself'],
    ...rows.map(({ last, person, name, units, what, lost }) => [
      dayText(last),
      person,
      name,
      units.map(names.place).join(', '),
      capitalised(heldText(what, names)),
      lost.map(takenAwayText).join(' '),
    ]),
    [AUTHORITY_IS_NOT_SAFETY],
  ]
}
