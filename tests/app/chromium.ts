import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { chromium, type Browser } from 'playwright-core'

const PATHS = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome']
const LOCK = ['-o', 'DPkg::Lock::Timeout=120']
const COMMANDS = [
  ['apt-get', ...LOCK, 'update'],
  ['apt-get', ...LOCK, 'install', '-y', '--no-install-recommends', 'chromium'],
] as const

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
  const written = COMMANDS.map((words) => words.join(' ')).join(' && ')
  if (process.getuid?.() !== 0) {
    throw new Error(`These tests need Chromium, and only root may install it. Run: sudo sh -c '${written}'`)
  }
  for (const [program, ...words] of COMMANDS) {
    const ended = spawnSync(program, words, {
      encoding: 'utf8',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    })
    if (ended.status !== 0) throw new Error(`Chromium could not be installed (${written}):\n${ended.stderr}`)
  }
  const installed = PATHS.find(existsSync)
  if (installed === undefined) throw new Error(`${written} ended well, and there is still no Chromium.`)
  return installed
}
