import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it, onTestFinished, vi } from 'vitest'
import { emptyDatabase } from '../builders/test-database.ts'
import { prisma, ROOT, type Ended } from './prisma-command.ts'

// Each command line of Prisma is a process of its own, which takes its time where the machine is busy.
vi.setConfig({ testTimeout: 300_000 })

/** Compares what migrations make with what a schema says; the exit code is 0 where they agree, 2 where they differ. */
async function difference(migrations: string, schema: string): Promise<Ended> {
  const database = await emptyDatabase()
  onTestFinished(() => database.drop())
  const words = ['migrate', 'diff', '--from-migrations', migrations, '--to-schema', schema, '--exit-code']
  return prisma(words, { url: database.superUrl })
}

function copied(path: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'kerfbook-drift-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  const copy = join(folder, 'copy')
  cpSync(join(ROOT, path), copy, { recursive: true })
  return copy
}

const MIGRATIONS = join(ROOT, 'prisma/migrations')
const SCHEMA = join(ROOT, 'prisma/schema.prisma')

describe('migrations and schema', () => {
  it('agree', async () => {
    expect(await difference(MIGRATIONS, SCHEMA)).toMatchObject({
      ...{ code: 0, out: expect.stringContaining('No difference detected') as string },
    })
  })

  it('are told where a model was added to the schema alone', async () => {
    const schema = copied('prisma/schema.prisma')
    const before = readFileSync(schema, 'utf8')
    const planted = `${before}\nmodel Planted {\n  id String @id @db.Uuid\n\n  @@map("planted")\n  @@schema("public")\n}\n`
    writeFileSync(schema, planted)
    expect(await difference(MIGRATIONS, schema)).toMatchObject({
      ...{ code: 2, out: expect.stringContaining('planted') as string },
    })
  })

  it('are told where a column was changed by a migration alone', async () => {
    const migrations = copied('prisma/migrations')
    mkdirSync(join(migrations, '9999_planted'))
    const planted = 'ALTER TABLE person_fact ALTER COLUMN name DROP NOT NULL;'
    writeFileSync(join(migrations, '9999_planted/migration.sql'), planted)
    expect(await difference(migrations, SCHEMA)).toMatchObject({
      ...{ code: 2, out: expect.stringContaining('person_fact') as string },
    })
  })
})
