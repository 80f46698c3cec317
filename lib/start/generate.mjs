import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { runCommand } from './run-command.mjs'

/** @typedef {import('./stages.mjs').StageResult} StageResult */

const SCHEMA = 'prisma/schema.prisma'
const STAMP = 'lib/store/generated/stamp.txt'
/** The generator is named in the schema; its code comes with these. */
const PACKAGES = ['prisma', '@prisma/client']

/** Prisma else asks its maker about newer versions, and prints the answer among what is wanted. */
const quiet = { CHECKPOINT_DISABLE: '1', PRISMA_HIDE_UPDATE_MESSAGE: '1' }

/**
 * Writes the database client below lib/store/generated, where the schema or Prisma changed since it was last written.
 * @param {string} root
 * @returns {Promise<StageResult>}
 */
export async function generate(root) {
  const wanted = stampOf(root)
  const stamp = join(root, STAMP)
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) {
    return { name: 'generate', ok: true, seconds: 0, note: 'nothing to do', output: '' }
  }
  const command = ['node_modules/prisma/build/index.js', 'generate']
  const ended = await runCommand(process.execPath, command, { cwd: root, env: quiet })
  // Written last: a run that was cut off leaves no stamp, and is done again.
  if (ended.code === 0) writeFileSync(stamp, wanted)
  return { name: 'generate', ok: ended.code === 0, seconds: ended.seconds, note: '', output: ended.output }
}

/** @param {string} root what the client was written from, a line each */
export function stampOf(root) {
  const versions = PACKAGES.map((name) => {
    const file = join(root, 'node_modules', name, 'package.json')
    return `${name} ${JSON.parse(readFileSync(file, 'utf8')).version}`
  })
  const schema = createHash('sha256')
    .update(readFileSync(join(root, SCHEMA)))
    .digest('hex')
  return [...versions, `${SCHEMA} ${schema}`, ''].join('\n')
}
