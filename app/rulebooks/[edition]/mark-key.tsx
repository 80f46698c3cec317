import { MARKS, type Mark } from '../../../lib/core/rulebooks/words.ts'
import { MARK_EXPLANATIONS } from '../../../lib/wording/book-pages.ts'
import { capitalised } from '../../../lib/wording/lists.ts'
import { markWords } from '../../../lib/wording/work-words.ts'
import { Section } from '../../_parts/section.tsx'

/** How well the rules are supported: how many carry each mark, and what the mark means. */
export function MarkKey({ marks, rules }: { marks: Readonly<Record<Mark, number>>; rules: number }) {
  return (
    <Section id="marks" title="How well it is supported" caption={rules === 1 ? '1 rule' : `${rules} rules`}>
      <dl className="facts">
        {MARKS.filter((mark) => marks[mark] > 0).map((mark) => (
          <div key={mark} className="fact">
            <dt>
              <strong>{marks[mark]}</strong> {capitalised(markWords[mark])}
            </dt>
            <dd>{MARK_EXPLANATIONS[mark]}</dd>
          </div>
        ))}
      </dl>
    </Section>
  )
}
