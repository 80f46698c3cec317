import { fileURLToPath } from 'node:url'
import { defineConfig } from 'prisma/config'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))

// Prisma's own engine is a download; ours stands in for it (prisma/schema-engine.mjs).
process.env['PRISMA_SCHEMA_ENGINE_BINARY'] ??= here('prisma/schema-engine.mjs')

// The owner's role migrates; the app's role may not. `generate` and a difference of two schemas need neither.
const url = process.env['DATABASE_OWNER_URL'] ?? process.env['DATABASE_URL']

export default defineConfig({
  schema: here('prisma/schema.prisma'),
  migrations: { path: here('prisma/migrations') },
  ...(url === undefined ? {} : { datasource: { url } }),
})
