import { describe, expect, it } from 'vitest'
import { sectionSchemas } from '../../lib/core/program/program.schema.ts'
import { SECTION_NAMES } from '../../lib/core/program/sections.ts'
import { TABLES } from '../../lib/store/tables/all.ts'
import { day, maybeText, record, text, whole, type Tables } from '../../lib/store/tables/columns.ts'

/** A schema with a check on the whole is still an object with fields. */
function fieldsOf(section: (typeof SECTION_NAMES)[number]): string[] {
  const versionFields = ['id', 'recordedIn', 'supersededIn', 'supersedes']
  return Object.keys(sectionSchemas[section].shape).filter((field) => !versionFields.includes(field))
}

describe('the declared columns', () => {
  it.each(SECTION_NAMES)('are one for each field of the schema: %s', (section) => {
    expect(TABLES[section].columns.map(({ field }) => field).sort()).toEqual(fieldsOf(section).sort())
  })

  it('are named for their unit, or for what they name', () => {
    const names = (section: (typeof SECTION_NAMES)[number]) =>
      Object.fromEntries(TABLES[section].columns.map(({ field, name }) => [field, name]))
    expect(names('items')).toMatchObject({
      workKind: 'work_kind',
      diameter: 'diameter_sixteenths',
      height: 'height_feet',
      place: 'place_id',
    })
  })

  it('do not compile where a field has none, or one of another kind', () => {
    type LiftColumns = Tables<'lifts'>['lifts']['columns']
    const good = { suspension: record('suspensions'), day, decision: text, by: text }
    const { by: _by, ...withoutBy } = good
    // @ts-expect-error a field without a column
    const missing: LiftColumns = withoutBy
    const lift: LiftColumns = good
    // @ts-expect-error a column without a field
    const strange: LiftColumns = { ...lift, read: text }
    // @ts-expect-error a day in a column of texts
    const texts: LiftColumns = { ...good, day: text }
    // @ts-expect-error a text in a column of numbers
    const numbers: LiftColumns = { ...good, by: whole }
    // @ts-expect-error a field that is always there in a column that may be empty
    const empty: LiftColumns = { ...good, by: maybeText }
    expect([lift, missing, strange, texts, numbers, empty]).toHaveLength(6)
  })
})
