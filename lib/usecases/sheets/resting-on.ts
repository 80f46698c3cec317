import type { Sections } from '../../core/authority/records.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import type { Version } from '../../core/kernel/versions.schema.ts'
import { SECTION_NAMES, type Fact } from '../../core/program/sections.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import { NAMING_FIELDS } from '../records/named-by.ts'
import { namesIn, recordName } from '../records/record-name.ts'
import type { RecordSection } from '../records/record-kinds.ts'

type Named = { section: RecordSection; fact: Sections[RecordSection] }

/** Records of other entries that name one of these, as people call them, each once; accounts among them. */
export function restingOn(snapshot: Snapshot, entry: number, added: readonly Named[]): readonly string[] {
  const { program, n, accounts } = snapshot
  const ids = idsByField(added)
  const called = namesIn(snapshot)
  const isOther = (fact: Version) => fact.recordedIn !== entry && isKnownAt(fact, n)
  const records = SECTION_NAMES.flatMap((section) =>
    (program[section] as readonly Fact[])
      .filter((fact) => isOther(fact) && names(fact, ids))
      .map((fact) => recordName(called, section, fact)),
  )
  const held = accounts
    .filter((fact) => isOther(fact) && names(fact, ids))
    .map(({ signInName }) => `the account ${signInName}`)
  return [...new Set([...records, ...held])]
}

/** In which fields which ids would name one of the records. */
function idsByField(added: readonly Named[]): ReadonlyMap<string, ReadonlySet<string>> {
  const ids = new Map<string, Set<string>>()
  const put = (field: string, id: string) => {
    const known = ids.get(field)
    if (known === undefined) ids.set(field, new Set([id]))
    else known.add(id)
  }
  for (const { section, fact } of added) {
    for (const field of NAMING_FIELDS[section]) put(field, fact.id)
    // What somebody says to be wrong names the record by its id alone.
    put('record', fact.id)
    if (section === 'cards' && 'number' in fact) put('subject.number', fact.number)
  }
  return ids
}

function names(value: unknown, ids: ReadonlyMap<string, ReadonlySet<string>>, within = ''): boolean {
  if (Array.isArray(value)) return value.some((each) => names(each, ids, within))
  if (typeof value !== 'object' || value === null) return false
  return Object.entries(value).some(([key, each]) => {
    const wanted = ids.get(key) ?? ids.get(`${within}.${key}`)
    if (wanted !== undefined && [each].flat().some((one) => typeof one === 'string' && wanted.has(one)))
      return true
    return names(each, ids, key)
  })
}
