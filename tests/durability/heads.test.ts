import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { expect, it, onTestFinished } from 'vitest'
import { openHeads } from '../../lib/cli/serve/heads.ts'
import { readHeadLog } from '../../lib/core/journal/heads.ts'

const HEADS = [1, 2, 3].map((n) => ({ n, hash: String(n).repeat(64) }))

/** What a log holds after it was cut to so many bytes and the third head was added. */
function afterCut(bytes: number) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'kerfbook-h-'))
  onTestFinished(() => fs.rmSync(folder, { recursive: true }))
  const log = path.join(folder, 'heads.log')
  const first = openHeads(folder)
  for (const head of HEADS.slice(0, 2)) first.append(head)
  const whole = fs.readFileSync(log, 'utf8').length
  fs.truncateSync(log, whole + bytes)
  openHeads(folder).append(HEADS[2]!)
  return readHeadLog(fs.readFileSync(log, 'utf8'))
}

it('[P4] a head whose line a crash has cut off does not spoil the next one', () => {
  expect(afterCut(0)).toEqual({ heads: HEADS, unreadable: [] })
  for (const bytes of [-1, -40, -90])
    expect(afterCut(bytes)).toEqual({ heads: [HEADS[0], HEADS[2]], unreadable: [] })
})
