import { spawn } from 'node:child_process'

/** @typedef {{ code: number, output: string, stdout: string, seconds: number }} Finished */

/** @type {Set<import('node:child_process').ChildProcess>} */
const running = new Set()

/** What is gathered is printed later, so without colours; and `npm test --silent` does not hush npm's own errors. */
const plainOutput = { NO_COLOR: '1', FORCE_COLOR: undefined, npm_config_loglevel: 'warn' }

/**
 * Runs a program to its end and gathers what it printed. Code 127 when it could not be started.
 * @param {string} program
 * @param {readonly string[]} args
 * @param {{ cwd?: string, env?: Record<string, string | undefined> }} [options]
 * @returns {Promise<Finished>}
 */
export function runCommand(program, args, options = {}) {
  const began = performance.now()
  return new Promise((resolve) => {
    const child = spawn(program, args, {
      ...options,
      env: { ...process.env, ...plainOutput, ...options.env },
      stdio: ['ignore', 'pipe', 'pipe'],
    })
    running.add(child)
    let output = ''
    let stdout = ''
    child.stdout.setEncoding('utf8').on('data', (text) => {
      stdout += text
      output += text
    })
    child.stderr.setEncoding('utf8').on('data', (text) => (output += text))
    /** @param {number} code */
    const finish = (code) => {
      running.delete(child)
      resolve({ code, output, stdout, seconds: (performance.now() - began) / 1000 })
    }
    child.on('error', (fault) => {
      output += `${program} could not be started: ${fault.message}\n`
      finish(127)
    })
    child.on('close', (code) => finish(code ?? 1))
  })
}

/** Ends the children that are still running, when the run itself is interrupted. */
export function endRunning() {
  for (const child of running) child.kill('SIGTERM')
}
