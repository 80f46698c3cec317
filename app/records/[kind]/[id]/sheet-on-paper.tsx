import type { Observations } from '../../../../lib/core/work/work.schema.ts'
import type { WorksheetShown } from '../../../../lib/usecases/records/worksheet-of-item.ts'
import { complexityWords } from '../../../../lib/wording/work-words.ts'

/** The complexity worksheet as it prints: blank, or with what was seen crossed. */
export function SheetOnPaper({
  sheet,
  seen,
  signed,
}: {
  sheet: Pick<WorksheetShown, 'factors' | 'stackings'>
  seen?: Observations
  /** The line below it: by whom it was rated and when, or where to write that. */
  signed: string
}) {
  return (
    <details className="sheet-on-paper">
      <summary>Show the sheet as it prints</summary>
      {sheet.factors.map(({ factor, name, says, required, options }) => (
        <fieldset key={factor} className="on-paper">
          <legend>
            {name}
            {required ? ', required' : ''}
          </legend>
          <p className="caption">{says}</p>
          <ul>
            {options.map(({ option, name: what, floor }) => (
              <li key={option}>
                <span aria-hidden="true">{seen?.[factor] === option ? '☒' : '☐'}</span> {what}
                {floor === 'least' ? '' : `: at least ${complexityWords[floor]}`}
                {seen?.[factor] === option ? <strong> (seen)</strong> : null}
              </li>
            ))}
          </ul>
        </fieldset>
      ))}
      {sheet.stackings.map((says) => (
        <p key={says}>{says}</p>
      ))}
      <p>{signed}</p>
    </details>
  )
}
