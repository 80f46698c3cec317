import type { readDifference } from '../../lib/usecases/rulebooks/difference.ts'
import type { FigureChange } from '../../lib/core/rulebooks/edition-diff.ts'
import { capitalised } from '../../lib/wording/lists.ts'
import { markWords } from '../../lib/wording/work-words.ts'
import { Section } from '../_parts/section.tsx'
import { Table, type Column } from '../_parts/table.tsx'

/** What changes from one edition to another. */
export type DifferenceToRead = ReturnType<(typeof readDifference)['answer']>

const COLUMNS: readonly Column<FigureChange>[] = [
  { key: 'name', head: 'What', cell: ({ name }) => name },
  { key: 'before', head: 'Before', cell: ({ before }) => before ?? 'not stated' },
  { key: 'after', head: 'After', cell: ({ after }) => after ?? 'no longer stated' },
]

/** The difference of two editions: the edition itself, its levels, and rule by rule what is added, gone and changed. */
export function Difference({ of: { isSame, edition, levels, rules } }: { of: DifferenceToRead }) {
  const same = rules.same === 1 ? '1 rule is the same in both.' : `${rules.same} rules are the same in both.`
  if (isSame) return <p>Nothing differs. {same}</p>
  return (
    <>
      <p>{same}</p>
      {edition.length === 0 ? null : (
        <Section id="edition" title="The edition">
          <Changes of={edition} caption="What changes of the edition itself" />
        </Section>
      )}
      {levels.added.length + levels.removed.length + levels.changed.length === 0 ? null : (
        <Section id="levels" title="Levels">
          <Named words="Added" ids={levels.added} />
          <Named words="Gone" ids={levels.removed} />
          {levels.changed.map(({ level, changes }) => (
            <Changes key={level} of={changes} caption={`What changes of the level ${level}`} />
          ))}
        </Section>
      )}
      <Rules id="added" title="Rules added" rules={rules.added} />
      <Rules id="gone" title="Rules gone" rules={rules.removed} />
      {rules.changed.length === 0 ? null : (
        <Section id="changed" title="Rules changed" caption={countText(rules.changed.length)}>
          {rules.changed.map(({ id, changes }) => (
            <Changes key={id} of={changes} caption={id} />
          ))}
        </Section>
      )}
    </>
  )
}

function Changes({ of: changes, caption }: { of: readonly FigureChange[]; caption: string }) {
  return <Table isEven caption={caption} columns={COLUMNS} rows={changes} rowKey={({ name }) => name} />
}

function Named({ words, ids }: { words: string; ids: readonly string[] }) {
  if (ids.length === 0) return null
  return (
    <p>
      {words}: {ids.join(', ')}.
    </p>
  )
}

function Rules({
  id,
  title,
  rules,
}: {
  id: string
  title: string
  rules: DifferenceToRead['rules']['added']
}) {
  if (rules.length === 0) return null
  return (
    <Section id={id} title={title} caption={countText(rules.length)}>
      <ol className="rules">
        {rules.map((rule) => (
          <li key={rule.id} className="rule-item">
            <h3 className="rule-id">{rule.id}</h3>
            <div className="rule-body">
              <p className="entry">{rule.says}</p>
              <p className="caption">
                <strong>{capitalised(markWords[rule.mark])}.</strong> {rule.source}
              </p>
            </div>
          </li>
        ))}
      </ol>
    </Section>
  )
}

function countText(count: number): string {
  return count === 1 ? '1 rule' : `${count} rules`
}
