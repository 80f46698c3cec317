import { readFileSync } from 'node:fs'
import { z } from 'zod'
import { knownMigrations, type Migration } from '../../lib/platform/database/migrations.ts'

/** Holds the SHA-256 of every migration that has landed. */
export const LANDED_FILE = new URL('landed-migrations.json', import.meta.url)

export type Landed = Readonly<Record<string, string>>

/** Reads what has landed, as the file has it or as another text of it. */
export function readLanded(text = readFileSync(LANDED_FILE, 'utf8')): Landed {
  return z.record(z.string(), z.string()).parse(JSON.parse(text))
}

/** What was done to migrations since they landed, and which have not landed yet. */
export function landedProblems(landed: Landed, known: readonly Migration[] = knownMigrations()): string[] {
  const hashes = new Map(known.map(({ name, checksum }) => [name, checksum]))
  const last = Object.keys(landed).sort().at(-1) ?? ''
  return [
    ...Object.entries(landed)
      .filter(([name, hash]) => hashes.get(name) !== hash)
      .map(([name]) =>
        hashes.has(name)
          ? `${name} has landed and was edited: databases hold its first text. Put it back and write another.`
          : `${name} has landed and is gone.`,
      ),
    ...known
      .filter(({ name }) => !Object.hasOwn(landed, name))
      .map(({ name }) =>
        name < last
          ? `${name} comes before ${last}, which has landed: databases would lack it for ever. Give it a later name.`
          : `${name} is not recorded. When it lands: npx tsx tests/prisma/land-migrations.ts`,
      ),
  ]
}
