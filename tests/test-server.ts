import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { stopServerOf } from '../lib/platform/database/embedded-server.ts'
import { isAlive } from '../lib/platform/database/postmaster.ts'

/** Workers are child processes of the run and inherit its environment. */
const VARIABLE = 'KERFBOOK_TEST_SERVER'
const FOLDER = /^kerfbook-tests-([0-9]+)-/

/** The data folder of this run's server. */
export function testServerFolder(): string {
  const folder = process.env[VARIABLE]
  if (folder === undefined) throw new Error(`${VARIABLE} is not set: run this by vitest`)
  return folder
}

/**
 * Called by vitest before the workers. It only names a folder: the server starts when the first test asks for it, so
 * that tests of the core alone wait for nothing. Answers what ends it after the run.
 */
export async function setup(): Promise<() => Promise<void>> {
  await sweepKilledRuns()
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), `kerfbook-tests-${process.pid}-`))
  // The server may run as another user, who has to pass through.
  fs.chmodSync(folder, 0o711)
  process.env[VARIABLE] = path.join(folder, 'data')
  return () => end(folder)
}

async function end(folder: string): Promise<void> {
  await stopServerOf(path.join(folder, 'data'))
  fs.rmSync(folder, { recursive: true, force: true })
}

/** A run that was killed leaves its server behind; the next run ends it. */
async function sweepKilledRuns(): Promise<void> {
  for (const name of fs.readdirSync(os.tmpdir())) {
    const pid = FOLDER.exec(name)?.[1]
    const folder = path.join(os.tmpdir(), name)
    const isOurs = pid !== undefined && fs.statSync(folder).uid === process.getuid?.()
    if (isOurs && !isAlive(Number(pid))) await end(folder)
  }
}
