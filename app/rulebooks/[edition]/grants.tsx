import { COMPLEXITIES } from '../../../lib/core/rulebooks/words.ts'
import type { GrantsToRead } from '../../../lib/usecases/rulebooks/edition-to-read.ts'
import { capitalised } from '../../../lib/wording/lists.ts'
import { standingText } from '../../../lib/wording/standings.ts'
import { complexityWords, sawKindWords, workKindWords } from '../../../lib/wording/work-words.ts'
import { Level } from '../../_parts/level.tsx'
import { Table, type Column } from '../../_parts/table.tsx'
import { ruleAnchor } from '../../_parts/rule-address.ts'

type Row = GrantsToRead['rows'][number]

const COLUMNS: readonly Column<Row>[] = [
  {
    key: 'level',
    head: 'Level on the card',
    cell: ({ level, name, rule }) => (
      <a href={`#${ruleAnchor(rule)}`}>
        <Level of={level} />
        {restOfName(name, level)}
      </a>
    ),
  },
  ...COMPLEXITIES.map((complexity): Column<Row> => ({
    key: complexity,
    head: capitalised(complexityWords[complexity]),
    cell: ({ cells }) => standingText(cells[complexity]),
  })),
]

/** The name of a level after its letter, which stands in the box already. */
function restOfName(name: string, level: string): string {
  return name.startsWith(level) ? name.slice(level.length) : ` ${name}`
}

/** What the levels give for one kind of work with one kind of saw. */
export function Grants({ table: { workKind, sawKind, rows } }: { table: GrantsToRead }) {
  return (
    <Table
      isEven
      caption={`${capitalised(workKindWords[workKind])} with ${sawKindWords[sawKind]}`}
      columns={COLUMNS}
      rows={rows}
      rowKey={({ level }) => level}
    />
  )
}
