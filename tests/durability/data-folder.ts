import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { onTestFinished } from 'vitest'
import { stopServerOf } from '../../lib/platform/database/embedded-server.ts'

/** A data folder to be made by one test; server and folder end with the test. */
export function freshDataFolder(): string {
  const parent = fs.mkdtempSync(path.join(os.tmpdir(), 'kerfbook-k-'))
  // The server may run as another user, who has to pass through.
  fs.chmodSync(parent, 0o711)
  const folder = path.join(parent, 'data')
  onTestFinished(async () => {
    await stopServerOf(folder)
    fs.rmSync(parent, { recursive: true, force: true })
  })
  return folder
}
