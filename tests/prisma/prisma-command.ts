import { spawn } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { onTestFinished } from 'vitest'

export const ROOT = fileURLToPath(new URL('../../', import.meta.url))
export const ENGINE = join(ROOT, 'prisma/schema-engine.mjs')

/** What a command printed and how it ended. */
export type Ended = { code: number; out: string; err: string }

/** Runs a script of Node; `input` goes to it whole. */
export function runNode(
  args: readonly string[],
  options: { env?: Record<string, string>; input?: string } = {},
): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const { DATABASE_URL: _, DATABASE_OWNER_URL: __, ...inherited } = process.env
    const env = { ...inherited, NO_COLOR: '1', CHECKPOINT_DISABLE: '1', ...options.env }
    const child = spawn(process.execPath, args, { cwd: ROOT, env })
    const ended = { code: 1, out: '', err: '' }
    child.stdout.setEncoding('utf8').on('data', (text: string) => (ended.out += text))
    child.stderr.setEncoding('utf8').on('data', (text: string) => (ended.err += text))
    child.once('error', reject)
    child.once('close', (code) => resolve({ ...ended, code: code ?? 1 }))
    child.stdin.end(options.input ?? '')
  })
}

/** The stock command line of Prisma on this repository's schema, or on that of a folder with a config of its own. */
export function prisma(
  words: readonly string[],
  where: { url?: string; folder?: string } = {},
): Promise<Ended> {
  const { url, folder } = where
  const config = folder === undefined ? [] : ['--config', join(folder, 'prisma.config.mjs')]
  return runNode([join(ROOT, 'node_modules/prisma/build/index.js'), ...words, ...config], {
    env: { PRISMA_SCHEMA_ENGINE_BINARY: ENGINE, ...(url === undefined ? {} : { DATABASE_URL: url }) },
  })
}

/** A folder with a small schema and its migrations, by their names; gone when the test ends. */
export function schemaFolder(migrations: Readonly<Record<string, string>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'kerfbook-schema-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  writeFileSync(join(folder, 'schema.prisma'), SMALL_SCHEMA)
  writeFileSync(
    join(folder, 'prisma.config.mjs'),
    `const url = process.env['DATABASE_URL']
     export default {
       schema: ${JSON.stringify(join(folder, 'schema.prisma'))},
       migrations: { path: ${JSON.stringify(join(folder, 'migrations'))} },
       ...(url === undefined ? {} : { datasource: { url } }),
     }`,
  )
  mkdirSync(join(folder, 'migrations'))
  writeFileSync(join(folder, 'migrations/migration_lock.toml'), 'provider = "postgresql"\n')
  for (const [name, sql] of Object.entries(migrations)) writeMigration(folder, name, sql)
  return folder
}

/** Writes a migration of such a folder, or writes it anew. */
export function writeMigration(folder: string, name: string, sql: string): void {
  mkdirSync(join(folder, 'migrations', name), { recursive: true })
  writeFileSync(join(folder, 'migrations', name, 'migration.sql'), sql)
}

/** What the small schema says, with what Prisma cannot say: a function whose body holds semicolons, and a check. */
export const FIRST_SQL = `
CREATE TABLE "thing" ("id" UUID NOT NULL, "name" TEXT, CONSTRAINT "thing_pkey" PRIMARY KEY ("id"));
CREATE FUNCTION no_thing() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE EXCEPTION 'no; never'; RETURN NEW; END $$;
ALTER TABLE "thing" ADD CHECK ("name" <> '');
`

const SMALL_SCHEMA = `
generator client {
  provider = "prisma-client"
  output   = "./generated"
}
datasource db {
  provider = "postgresql"
}
model Thing {
  id   String  @id @db.Uuid
  name String?
  @@map("thing")
}
`
