import { openRecords } from '../../core/authority/ask.ts'
import type { Authority } from '../../core/authority/authority-index.ts'
import { recordsAt } from '../../core/program/known.ts'
import type { Program } from '../../core/program/program.schema.ts'
import { readProgram } from '../../core/program/read-program.ts'
import { SECTION_NAMES } from '../../core/program/sections.ts'
import type { EntrySaved, World } from '../door/use-case.ts'
import { mergedProgram } from '../program/merged-program.ts'

/**
 * The records as they would be known after one more entry, opened for asking; nothing where the program would not be
 * sound. Nothing is written.
 */
export function authorityAfter(
  { snapshot: { program, n }, now }: World,
  saved: readonly EntrySaved[],
): Authority | undefined {
  const sections: readonly string[] = SECTION_NAMES
  const record = saved.flatMap(({ changes }) =>
    changes.record.flatMap((one, index) => {
      const section = SECTION_NAMES.find((name) => name === one.section)
      return section === undefined ? [] : [{ ...one, section, index }]
    }),
  )
  const withdraw = saved.flatMap(({ changes }) =>
    changes.withdraw.filter(({ section }) => sections.includes(section)),
  )
  const read = readProgram(mergedProgram(program, n, record, withdraw, now))
  return read.ok ? openedAt(read.value, n + 1) : undefined
}

function openedAt(program: Program, n: number): Authority {
  return openRecords(recordsAt(program, n))
}
