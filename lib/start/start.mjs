// `npm start`: on a bare clone it installs, generates, and hands over to the server. Node built-ins only.
import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { prepare } from './prepare.mjs'

const root = fileURLToPath(new URL('../..', import.meta.url))

process.exitCode = await main(process.argv.slice(2))

/** @param {readonly string[]} args */
async function main(args) {
  if (Number(process.versions.node.split('.')[0]) < 20) {
    console.error(`Kerfbook needs Node 20 or newer; this is ${process.version}.`)
    return 2
  }
  const prepared = await prepare(root, (line) => console.log(line))
  if (!prepared.ok) {
    console.error(prepared.output.trimEnd())
    console.error(`${prepared.name} failed; nothing was started.`)
    return 1
  }
  return serve(args)
}

/**
 * Runs the server until it ends. Ctrl+C reaches it by the terminal; this process waits for it to put everything away.
 * @param {readonly string[]} args
 * @returns {Promise<number>}
 */
function serve(args) {
  const child = spawn(process.execPath, ['--import', 'tsx', 'lib/cli/serve/main.ts', ...args], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, NODE_ENV: 'production' },
  })
  for (const signal of /** @type {const} */ (['SIGTERM', 'SIGHUP']))
    process.on(signal, () => child.kill(signal))
  process.on('SIGINT', () => undefined)
  const parent = process.ppid
  // npm hands SIGTERM to its shell, which dies of it and tells nobody.
  const look = () => void (process.ppid !== parent && child.kill('SIGTERM'))
  const watch = process.env['npm_lifecycle_event'] === 'start' ? setInterval(look, 500) : undefined
  return new Promise((resolve) => {
    child.once('error', (error) => {
      clearInterval(watch)
      console.error(error.message)
      resolve(1)
    })
    child.once('exit', (code) => {
      clearInterval(watch)
      resolve(code ?? 1)
    })
  })
}
