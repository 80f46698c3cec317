import { PERMISSION_WORDS, reachText, roleText } from '../../../../lib/access/words.ts'
import { ALL_USE_CASES } from '../../../../lib/usecases/all.ts'
import type { RoleHeld } from '../../../../lib/usecases/accounts/what-i-may-do.ts'
import { dayText, spanText } from '../../../../lib/wording/days.ts'
import { capitalised } from '../../../../lib/wording/lists.ts'
import { Said } from '../../../_parts/said.tsx'

/** A role: for what it was given, since when and by whom, and everything that it allows. */
export function RoleItem({ held }: { held: RoleHeld }) {
  const { role, firstDay, lastDay, by, may } = held
  return (
    <li className="rule-item">
      <h3>
        <Said>{capitalised(roleText(role, held))}</Said>
      </h3>
      <div className="rule-body">
        <p className="caption">
          {lastDay === undefined
            ? `Since ${dayText(firstDay)}`
            : capitalised(spanText({ first: firstDay, last: lastDay }))}
          , given by <bdi>{by}</bdi>.
        </p>
        <ul className="marked">
          {may.filter(isAskedFor).map(({ permission, reach }) => {
            const { says, about } = PERMISSION_WORDS[permission]
            return (
              <li key={permission}>
                {says}
                {about === 'people' ? (
                  <span>
                    , <Said>{reachText(reach, held)}</Said>
                  </span>
                ) : null}
                .
              </li>
            )
          })}
        </ul>
      </div>
    </li>
  )
}

/** Whether anything here asks for a permission: one of the table that nothing does yet allows nothing yet. */
function isAskedFor({ permission }: RoleHeld['may'][number]): boolean {
  return ALL_USE_CASES.some((useCase) => useCase.permission === permission)
}
