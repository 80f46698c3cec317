import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

/** What the built pages are made of. */
const SOURCES = [
  'app',
  'lib',
  'seeds/books',
  'next.config.mjs',
  'instrumentation.ts',
  'proxy.ts',
  'package-lock.json',
  'tsconfig.json',
  'tsconfig.app.json',
]

/**
 * Builds the pages, unless they were built from these very sources before. Throws with what the build printed.
 * @param stopping ends the build and makes this throw
 */
export async function buildPages(
  root: string,
  say: (line: string) => void,
  stopping?: AbortSignal,
): Promise<void> {
  const folder = join(root, process.env['KERFBOOK_DIST'] ?? '.next')
  const stamp = join(folder, 'kerfbook-sources')
  const sources = digestOf(root)
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === sources) return
  say('Building the pages; this takes a minute, and only after a change …')
  // A build that is cut off leaves neither the old pages nor the new.
  rmSync(stamp, { force: true })
  await runBuild(root, stopping)
  mkdirSync(folder, { recursive: true })
  writeFileSync(stamp, sources)
}

function digestOf(root: string): string {
  const hash = createHash('sha256')
  for (const source of SOURCES) addTo(hash, root, source)
  return hash.update(process.version).digest('hex')
}

function addTo(hash: ReturnType<typeof createHash>, root: string, path: string): void {
  const full = join(root, path)
  if (!existsSync(full)) return
  const entries = readEntries(full)
  if (entries === undefined) {
    hash.update(`${path}\n`).update(readFileSync(full))
    return
  }
  for (const name of entries) addTo(hash, root, `${path}/${name}`)
}

function readEntries(path: string): string[] | undefined {
  try {
    return readdirSync(path).sort()
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOTDIR') return undefined
    throw error
  }
}

function runBuild(root: string, stopping: AbortSignal | undefined): Promise<void> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['node_modules/next/dist/bin/next', 'build'], {
      cwd: root,
      env: { ...process.env, NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' },
      stdio: ['ignore', 'pipe', 'pipe'],
    })
    const end = () => child.kill('SIGTERM')
    stopping?.addEventListener('abort', end)
    const printed: Buffer[] = []
    child.stdout.on('data', (bytes: Buffer) => printed.push(bytes))
    child.stderr.on('data', (bytes: Buffer) => printed.push(bytes))
    child.once('error', reject)
    child.once('close', (code) => {
      stopping?.removeEventListener('abort', end)
      if (code === 0) resolve()
      else reject(new Error(`The pages could not be built.\n${Buffer.concat(printed).toString('utf8')}`))
    })
  })
}
