import { appendFileSync, cpSync, existsSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it, onTestFinished } from 'vitest'
import { generate } from '../../lib/start/generate.mjs'

const ROOT = new URL('../../', import.meta.url)

/** A repository with nothing in it but what the client is generated from. */
function smallRepository(): string {
  const root = mkdtempSync(join(tmpdir(), 'kerfbook-generate-'))
  onTestFinished(() => rmSync(root, { recursive: true, force: true }))
  for (const path of ['package.json', 'prisma.config.ts', 'prisma/schema-engine.mjs', 'prisma/engine']) {
    cpSync(new URL(path, ROOT), join(root, path), { recursive: true })
  }
  symlinkSync(new URL('node_modules', ROOT), join(root, 'node_modules'))
  writeFileSync(
    join(root, 'prisma/schema.prisma'),
    `generator client {\n  provider = "prisma-client"\n  output   = "../lib/store/generated"\n}\n` +
      `datasource db {\n  provider = "postgresql"\n}\nmodel Thing {\n  id String @id\n}\n`,
  )
  return root
}

it('the client is generated where it is not there, and again only when the schema changed', async () => {
  const root = smallRepository()
  expect(await generate(root)).toMatchObject({ ok: true, note: '' })
  expect(existsSync(join(root, 'lib/store/generated/models/Thing.ts'))).toBe(true)
  expect(await generate(root)).toMatchObject({ ok: true, note: 'nothing to do' })
  appendFileSync(join(root, 'prisma/schema.prisma'), 'model Other {\n  id String @id\n}\n')
  expect(await generate(root)).toMatchObject({ ok: true, note: '' })
  expect(existsSync(join(root, 'lib/store/generated/models/Other.ts'))).toBe(true)
})

it('a schema that cannot be read fails in words, and leaves no stamp', async () => {
  const root = smallRepository()
  appendFileSync(join(root, 'prisma/schema.prisma'), 'model Other {\n  id Strange @id\n}\n')
  const { ok, output } = await generate(root)
  expect(ok).toBe(false)
  expect(output).toContain('Strange')
  expect(existsSync(join(root, 'lib/store/generated/stamp.txt'))).toBe(false)
})
