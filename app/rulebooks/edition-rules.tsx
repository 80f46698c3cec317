import type { EditionToRead } from '../../lib/usecases/rulebooks/edition-to-read.ts'
import { bookSectionWords } from '../../lib/wording/editions.ts'
import { Section } from '../_parts/section.tsx'
import { Grants } from './[edition]/grants.tsx'
import { MarkKey } from './[edition]/mark-key.tsx'
import { RuleItem } from './[edition]/rule-item.tsx'

/** The rules of an edition: how well they are supported, what its levels give, then each with its source and mark. */
export function EditionRules({
  read: { marks, rules, grants, sections },
  confirmAt,
}: {
  read: EditionToRead
  /** Where a rule from memory is confirmed, for those who may. */
  confirmAt?: string
}) {
  return (
    <>
      <MarkKey marks={marks} rules={rules} />
      {grants.length === 0 ? null : (
        <Section
          id="grants"
          title={bookSectionWords.grants}
          caption="What a card of each level allows. Training never meets a need of the work."
        >
          {grants.map((table) => (
            <Grants key={`${table.sawKind} ${table.workKind}`} table={table} />
          ))}
        </Section>
      )}
      {sections.map(({ section, rules: own }) => (
        <Section
          key={section}
          id={`rules-${section}`}
          title={section === 'grants' ? 'The rules behind that' : bookSectionWords[section]}
          caption={own.length === 1 ? '1 rule' : `${own.length} rules`}
        >
          <ol className="rules">
            {own.map((rule) => (
              <RuleItem key={rule.id} rule={rule} confirmAt={confirmAt} />
            ))}
          </ol>
        </Section>
      ))}
    </>
  )
}
