import { generate } from './generate.mjs'
import { install } from './stages.mjs'

/**
 * Brings a clone to where its code can run: packages installed, database client written.
 * @param {string} root
 * @param {(line: string) => void} say told before what takes long
 * @returns {Promise<import('./stages.mjs').StageResult>} the step that failed, or the last
 */
export async function prepare(root, say) {
  for (const step of [
    { words: 'Installing packages …', run: install },
    { words: 'Writing the database client …', run: generate },
  ]) {
    const told = setTimeout(() => say(step.words), 300)
    const result = await step.run(root)
    clearTimeout(told)
    if (!result.ok) return result
  }
  return { name: 'prepare', ok: true, seconds: 0, note: '', output: '' }
}
