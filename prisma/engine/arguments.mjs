/**
 * What the Prisma command line asks of its engine.
 * @typedef {{ kind: 'serve', url: string, datamodels: string[] }} Serve
 * @typedef {{ kind: 'database-command', command: string, url: string }} DatabaseCommand
 * @typedef {{ kind: 'version' } | DatabaseCommand | Serve} Asked
 */

/** Options that carry a value and mean nothing to the WebAssembly build. */
const ignored = new Set(['--enabled-preview-features', '--extension-types'])

/**
 * Reads the command line of the engine. An argument it does not know is refused: a newer Prisma that asks for more
 * must fail here, and not do half of what it was asked.
 * @param {readonly string[]} args as in `--datamodels FILE --datasource {"url": …} [cli COMMAND]`
 * @returns {Asked}
 */
export function readArguments(args) {
  let url = ''
  let command
  const datamodels = []
  for (let at = 0; at < args.length; at += 1) {
    const arg = args[at] ?? ''
    if (arg === '--version' || arg === '-V') return { kind: 'version' }
    const value = args[(at += 1)]
    if (value === undefined) throw new Error(`The schema engine was given ${arg} without a value.`)
    if (arg === '--datamodels') datamodels.push(value)
    else if (arg === '--datasource') url = JSON.parse(value).url ?? ''
    else if (arg === 'cli') command = value
    else if (!ignored.has(arg)) throw new Error(`The schema engine does not know the argument ${arg}.`)
  }
  return command === undefined
    ? { kind: 'serve', url, datamodels }
    : { kind: 'database-command', command, url }
}
