import { spawnSync } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { codeOf } from './refusal.ts'

/** What PostgreSQL writes into `postmaster.pid` of a cluster while it runs, or leaves there when it is killed. */
export type Postmaster = { pid: number; socketFolder: string | undefined }

const PID_LINE = 0
const SOCKET_FOLDER_LINE = 4

/** Reads `postmaster.pid`; undefined where there is none. The socket's folder is written a moment after the id. */
export function readPostmaster(cluster: string): Postmaster | undefined {
  const lines = pidFileLines(cluster)
  const pid = Number(lines?.[PID_LINE])
  if (!Number.isInteger(pid) || pid <= 0) return undefined
  const socketFolder = lines?.[SOCKET_FOLDER_LINE]
  return { pid, socketFolder: socketFolder === '' ? undefined : socketFolder }
}

/**
 * Whether the process is the server of this cluster, told by its command line: an id alone may have been given to
 * another process since, and a killed server stays as a zombie where nobody waits for it.
 */
export function isServerOf(cluster: string, pid: number): boolean {
  return isAlive(pid) && commandLine(pid).includes(` -D ${cluster} `)
}

/** The words of a process's command line, each followed by a space; empty where it has none. */
function commandLine(pid: number): string {
  if (process.platform === 'linux') {
    try {
      return fs.readFileSync(`/proc/${pid}/cmdline`, 'utf8').replaceAll('\0', ' ')
    } catch {
      return ''
    }
  }
  return `${spawnSync('ps', ['-ww', '-o', 'command=', '-p', String(pid)], { encoding: 'utf8' }).stdout.trim()} `
}

/**
 * Makes a stale pid file harmless. PostgreSQL will not start while a process with the id in the file lives, whatever
 * it is; an id of its own parent it takes for stale, and still looks whether processes of the killed server hold its
 * shared memory. So the id becomes ours. Removing the file would switch that second look off.
 */
export function disarmStalePidFile(cluster: string): void {
  const lines = pidFileLines(cluster)
  if (lines === undefined) return
  const pid = Number(lines[PID_LINE])
  if (!isAlive(pid) || isServerOf(cluster, pid)) return
  lines[PID_LINE] = String(process.pid)
  // Never through a link: the folder is the server's, and this program may be root.
  const { O_WRONLY, O_TRUNC, O_NOFOLLOW } = fs.constants
  const file = fs.openSync(pidFile(cluster), O_WRONLY | O_TRUNC | O_NOFOLLOW)
  fs.writeSync(file, lines.join('\n'))
  fs.closeSync(file)
}

/** Waits until the server of the cluster has ended; false where it has not by then. */
export async function waitForEnd(cluster: string, pid: number, milliseconds: number): Promise<boolean> {
  for (const until = Date.now() + milliseconds; Date.now() < until; await pause(20)) {
    if (!isServerOf(cluster, pid)) return true
  }
  return !isServerOf(cluster, pid)
}

/** Whether a process of this id is there, a zombie included. */
export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return codeOf(error) === 'EPERM'
  }
}

function pidFile(cluster: string): string {
  return path.join(cluster, 'postmaster.pid')
}

function pidFileLines(cluster: string): string[] | undefined {
  try {
    return fs.readFileSync(pidFile(cluster), 'utf8').split('\n')
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return undefined
    throw error
  }
}
