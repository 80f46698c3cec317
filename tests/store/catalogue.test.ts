import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { STORED_NAMES, TABLES, type FieldColumn, type SectionTables } from '../../lib/store/tables/all.ts'
import { cloneDatabase, withClient, type TestDatabase } from '../builders/test-database.ts'
import { readCatalogue, type CatalogueTable } from './catalogue.ts'

let database: TestDatabase
let tables: Map<string, CatalogueTable>
let desk: Map<string, CatalogueTable>

beforeAll(async () => {
  database = await cloneDatabase()
  await withClient(database.ownerUrl, async (client) => {
    tables = await readCatalogue(client, 'public')
    desk = await readCatalogue(client, 'desk')
  })
})

afterAll(() => database.drop())

const table = (name: string): CatalogueTable => {
  const found = tables.get(name)
  if (found === undefined) throw new Error(`there is no table ${name}`)
  return found
}

const TYPES: Record<FieldColumn['kind'], string> = {
  text: 'text',
  whole: 'integer',
  truth: 'boolean',
  day: 'date',
  json: 'jsonb',
  inches: 'integer',
  feet: 'double precision',
  record: 'uuid',
}

const DEFERRED = ' DEFERRABLE INITIALLY DEFERRED'

/** What every table of facts has beside the columns that are declared for it. */
function expectedKeys({ anchor, fact, anchorColumn, columns }: SectionTables): string[] {
  const references = columns.flatMap((column) =>
    column.kind === 'record'
      ? [`FOREIGN KEY (${column.name}) REFERENCES ${TABLES[column.to].anchor}(id)`]
      : [],
  )
  return [
    'PRIMARY KEY (id)',
    `FOREIGN KEY (${anchorColumn}) REFERENCES ${anchor}(id)`,
    `FOREIGN KEY (recorded_in) REFERENCES entry(n)${DEFERRED}`,
    `FOREIGN KEY (superseded_in) REFERENCES entry(n)${DEFERRED}`,
    `FOREIGN KEY (supersedes, ${anchorColumn}, recorded_in) REFERENCES ${fact}(id, ${anchorColumn}, superseded_in)${DEFERRED}`,
    ...references,
    'CHECK ((superseded_in > recorded_in))',
    'CHECK ((octet_length(salt) >= 16))',
  ]
}

describe('the tables of facts, as the catalogue of the database has them', () => {
  it('are those that are declared, each with its anchor, and no others', () => {
    const facts = [...tables.keys()].filter((name) => name.endsWith('_fact'))
    expect(facts.sort()).toEqual(STORED_NAMES.map((name) => TABLES[name].fact).sort())
    expect([...tables.keys()].filter((name) => !name.endsWith('_fact')).sort()).toEqual(
      [
        ...STORED_NAMES.map((name) => TABLES[name].anchor),
        '_prisma_migrations',
        'access_log',
        'answer',
        'card_number',
        'entry',
      ].sort(),
    )
  })

  it.each(STORED_NAMES)('have the declared columns: %s', (section) => {
    const { fact, anchorColumn, columns } = TABLES[section]
    // In whatever order: a column that a later migration added stands last.
    const declared = [
      'id uuid not null',
      `${anchorColumn} uuid not null`,
      ...columns.map(
        ({ name, kind, isOptional }) => `${name} ${TYPES[kind]}${isOptional ? '' : ' not null'}`,
      ),
      'recorded_in bigint not null',
      'superseded_in bigint',
      'salt bytea not null',
      'supersedes uuid',
      ...(section === 'people' ? ['erased_in bigint'] : []),
    ]
    expect([...table(fact).columns].sort()).toEqual(declared.sort())
  })

  it.each(STORED_NAMES)('have their keys: %s', (section) => {
    const { fact, anchorColumn } = TABLES[section]
    const constraints = [...table(fact).constraints.values()]
    expect(constraints).toEqual(expect.arrayContaining(expectedKeys(TABLES[section])))
    expect([...table(fact).indexes.values()]).toEqual(
      expect.arrayContaining([
        'UNIQUE btree (supersedes)',
        `UNIQUE btree (id, ${anchorColumn}, superseded_in)`,
        `UNIQUE btree (${anchorColumn}) WHERE (superseded_in IS NULL)`,
      ]),
    )
  })

  it.each(STORED_NAMES)('have triggers that hold what was known: %s', (section) => {
    const { fact } = TABLES[section]
    const once = (event: string, does: string) =>
      `AFTER ${event} ON public.${fact} REFERENCING NEW TABLE AS written FOR EACH STATEMENT EXECUTE FUNCTION ${does}()`
    const onCommit = (event: string, does: string) =>
      `AFTER ${event} ON public.${fact}${DEFERRED} FOR EACH ROW ${does}()`
    // Of a person an erasure blanks columns, which closes nothing.
    const isErased = section === 'people'
    expect(table(fact).triggers).toEqual([
      isErased
        ? onCommit(
            'INSERT OR UPDATE',
            'WHEN (((new.superseded_in IS NOT NULL) OR (new.erased_in IS NOT NULL))) EXECUTE FUNCTION refuse_settling_person_for_another',
          )
        : onCommit(
            'INSERT OR UPDATE',
            'WHEN ((new.superseded_in IS NOT NULL)) EXECUTE FUNCTION refuse_closing_for_another',
          ),
      isErased
        ? `AFTER UPDATE ON public.${fact} REFERENCING OLD TABLE AS before NEW TABLE AS written FOR EACH STATEMENT EXECUTE FUNCTION refuse_closing_person_in_past()`
        : once('UPDATE', 'refuse_closing_in_past'),
      ...(section === 'cards' ? [once('INSERT', 'refuse_undecided_card')] : []),
      onCommit('INSERT', 'EXECUTE FUNCTION refuse_recording_for_another'),
      once('INSERT', 'refuse_recording_in_past'),
      `BEFORE UPDATE ON public.${fact} FOR EACH ROW EXECUTE FUNCTION ${isErased ? 'refuse_change_of_person' : 'refuse_change'}()`,
    ])
  })

  it.each(STORED_NAMES)('let the app read, add and close, and nothing else: %s', (section) => {
    const { fact, anchor } = TABLES[section]
    expect(table(fact).rights).toEqual(['SELECT', 'INSERT'])
    expect(table(fact).updatable).toEqual(['superseded_in'])
    expect(table(anchor).rights).toEqual(['SELECT', 'INSERT'])
    expect(table(anchor).updatable).toEqual([])
  })
})

describe('the other tables, as the catalogue has them', () => {
  it('are anchors of an id and a code that never come twice', () => {
    for (const section of STORED_NAMES) {
      const { anchor } = TABLES[section]
      const more = section === 'cards' ? ['number text not null', 'line integer not null'] : []
      expect(table(anchor).columns).toEqual(['id uuid not null', 'code text not null', ...more])
      expect([...table(anchor).indexes.values()]).toEqual(
        expect.arrayContaining(['UNIQUE btree (id)', 'UNIQUE btree (code)']),
      )
    }
  })

  it('hold a line of a number to one card, and a number to one person', () => {
    expect([...table('card').indexes.values()]).toContain('UNIQUE btree (number, line)')
    expect([...table('card_number').indexes.values()]).toContain('UNIQUE btree (number)')
    const keys = [...table('card_fact').constraints.values()]
    expect(keys).toContain('FOREIGN KEY (card_id, number, line) REFERENCES card(id, number, line)')
    expect(keys).toContain('FOREIGN KEY (number, person_id) REFERENCES card_number(number, person_id)')
  })

  it('hold the journal in one line', () => {
    const entry = table('entry')
    expect([...entry.constraints.values()]).toEqual(
      expect.arrayContaining([
        'PRIMARY KEY (n)',
        'FOREIGN KEY (prev_n) REFERENCES entry(n)',
        'FOREIGN KEY (prev) REFERENCES entry(hash)',
        'CHECK (((n = 1) = (prev IS NULL)))',
      ]),
    )
    expect([...entry.indexes.values()]).toEqual(
      expect.arrayContaining(['UNIQUE btree (command)', 'UNIQUE btree (prev)', 'UNIQUE btree (hash)']),
    )
  })

  it('let the app add to the journal, the access log and the answers, and change nothing in them', () => {
    for (const name of ['entry', 'access_log', 'answer', 'card_number']) {
      expect(table(name).rights).toEqual(['SELECT', 'INSERT'])
      expect(table(name).updatable).toEqual([])
    }
    expect(table('_prisma_migrations').rights).toEqual(['SELECT'])
  })

  it('belong to the owner, whom the app is not', () => {
    for (const { owner } of [...tables.values(), ...desk.values()]) expect(owner).toBe('kerfbook_owner')
  })

  it('are on the desk the app may do with as it likes', () => {
    expect([...desk.keys()]).toEqual([
      'link',
      'password',
      'session',
      'setting',
      'sheet',
      'sheet_columns',
      'tries',
    ])
    for (const { rights } of desk.values()) expect(rights).toEqual(['SELECT', 'INSERT', 'UPDATE', 'DELETE'])
  })
})
