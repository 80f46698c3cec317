import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

const PROGRAM = '/usr/bin/soffice'
const INSTALL = 'apt-get update && apt-get install -y --no-install-recommends libreoffice-calc-nogui'

/**
 * What the spreadsheet program of Debian makes of a file when it opens it and saves it in another form; where it is
 * not there and we are root it is installed first.
 */
export function savedBySpreadsheet(bytes: Uint8Array, from: 'csv' | 'xlsx', to: 'csv' | 'xlsx'): Buffer {
  if (!existsSync(PROGRAM)) install()
  const folder = mkdtempSync(join(tmpdir(), 'kerfbook-spreadsheet-'))
  try {
    writeFileSync(join(folder, `sheet.${from}`), bytes)
    const out = join(folder, 'saved')
    const profile = `-env:UserInstallation=file://${join(folder, 'profile')}`
    // Comma, double quote, UTF-8, from the first row: how it asks about text that is opened or saved.
    const filter = to === 'csv' ? 'csv:Text - txt - csv (StarCalc):44,34,76,1' : to
    const reading = from === 'csv' ? ['--infilter=CSV:44,34,76,1'] : []
    const words = [
      '--headless',
      ...reading,
      '--convert-to',
      filter,
      '--outdir',
      out,
      join(folder, `sheet.${from}`),
    ]
    const ended = spawnSync(PROGRAM, [profile, ...words], { encoding: 'utf8', timeout: 120_000 })
    const saved = join(out, `sheet.${to}`)
    if (!existsSync(saved)) throw new Error(`${PROGRAM} saved nothing:\n${ended.stdout}${ended.stderr}`)
    return readFileSync(saved)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

function install(): void {
  const ended = spawnSync('sh', ['-c', INSTALL], {
    encoding: 'utf8',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  })
  if (ended.status !== 0)
    throw new Error(`No spreadsheet program could be installed (${INSTALL}):\n${ended.stderr}`)
}
