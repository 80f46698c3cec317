import type { RuleToRead } from '../../../lib/usecases/rulebooks/edition-to-read.ts'
import { confirmedSentence, supportText } from '../../../lib/wording/book-pages.ts'
import { ruleAnchor } from '../../_parts/rule-address.ts'
import { Said } from '../../_parts/said.tsx'

/**
 * A rule: what it says, its figures, its source and mark, and what another source says. One that nobody has confirmed
 * leads to the page to confirm it on, for those who may.
 */
export function RuleItem({ rule, confirmAt }: { rule: RuleToRead; confirmAt: string | undefined }) {
  const { id, mark, confirmed } = rule
  const isOpen = mark === 'from-memory' && confirmed === undefined
  return (
    <li className="rule-item" id={ruleAnchor(id)}>
      <h3 className="rule-id">{id}</h3>
      <RuleBody rule={rule} />
      {isOpen && confirmAt !== undefined ? (
        <p>
          <a className="button" href={`${confirmAt}/${id}`} aria-label={`Confirm the rule ${id}`}>
            Confirm
          </a>
        </p>
      ) : null}
    </li>
  )
}

/** What a rule says and on what that rests. */
export function RuleBody({
  rule: { says, figures, mark, source, disagrees, confirmed },
}: {
  rule: RuleToRead
}) {
  return (
    <div className="rule-body">
      <p className="entry">{says}</p>
      {figures.length === 0 ? null : (
        <dl className="facts">
          {figures.map(({ name, value }) => (
            <div key={name} className="fact">
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      )}
      <p className="caption">
        <strong>{supportText(mark, confirmed !== undefined)}.</strong> {source}
      </p>
      {disagrees === undefined ? null : (
        <p className="caption">
          <strong>Another source says:</strong> {disagrees}
        </p>
      )}
      {confirmed === undefined ? null : (
        <p className="caption">
          <strong>
            <Said>{confirmedSentence(confirmed)}</Said>
          </strong>{' '}
          What was read: <bdi className="entry">{confirmed.read}</bdi>
        </p>
      )}
    </div>
  )
}
