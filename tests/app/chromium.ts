import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type Browser } from 'playwright-core'

const PATHS = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome']
/** `update` does not wait for the lists of another `update`, so only one worker at a time gets as far as asking. */
const LOCK = join(tmpdir(), 'kerfbook-chromium.lock')
const WAIT = '-o DPkg::Lock::Timeout=120'
const COMMAND = `apt-get ${WAIT} update && apt-get ${WAIT} install -y --no-install-recommends chromium`

/** Nothing that a test does not ask for: no sandbox (root), no traffic of the browser's own. */
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** Starts the browser of the machine; where there is none and we are root it is installed first. */
export async function openBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: chromiumPath(), args: FLAGS })
}

function chromiumPath(): string {
  const found = PATHS.find(existsSync)
  if (found !== undefined) return found
  if (process.getuid?.() !== 0) {
    throw new Error(`These tests need Chromium, and only root may install it. Run: sudo sh -c '${COMMAND}'`)
  }
  const ended = spawnSync('flock', [LOCK, 'sh', '-c', COMMAND], {
    encoding: 'utf8',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  })
  if (ended.status !== 0) throw new Error(`Chromium could not be installed (${COMMAND}):\n${ended.stderr}`)
  const installed = PATHS.find(existsSync)
  if (installed === undefined) throw new Error(`${COMMAND} ended well, and there is still no Chromium.`)
  return installed
}
