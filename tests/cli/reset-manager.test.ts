import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, expect, it, vi } from 'vitest'
import { signIn } from '../../lib/usecases/accounts/sign-in.ts'
import { callDeskCommand } from '../../lib/usecases/door/call-desk.ts'
import { openDemoRuntime, type TestRuntime } from '../builders/test-runtime.ts'
import { runLater } from './database-line.ts'

let opened: TestRuntime
const folder = mkdtempSync(join(tmpdir(), 'kerfbook-reset-'))
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())
afterEach(() => vi.unstubAllEnvs())

function run(...words: string[]) {
  vi.stubEnv('DATABASE_URL', opened.database.appUrl)
  vi.stubEnv('KERFBOOK_DATA', folder)
  return runLater(...words)
}

const tryPassword = async (password: string) =>
  (await callDeskCommand(opened.runtime, signIn, { input: { name: 'marit', password } }, { kind: 'nobody' }))
    .kind

it('[CL32] shows a new password once; it opens the account, the old one does not, and the head is kept', async () => {
  const { code, out } = await run('reset-manager', 'marit')
  expect(code).toBe(0)
  const password = /^ {2}(\S{24})$/m.exec(out)?.[1] ?? ''
  expect(await tryPassword('two-hands-a-saw')).toBe('refused')
  expect(await tryPassword(password)).toBe('done')
  expect(readFileSync(join(folder, 'heads.log'), 'utf8')).toContain('78')
})

it('[CL32] refuses who manages nothing, and says what is missing', async () => {
  expect(await run('reset-manager', 'anneli')).toMatchObject({
    code: 1,
    err: 'Nobody who signs in as anneli is a program manager here.\n',
  })
  expect(await run('reset-manager')).toMatchObject({ code: 2 })
  expect(await run('reset-manager', 'a', 'b')).toMatchObject({ code: 2 })
})
