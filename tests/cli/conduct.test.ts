import { spawn, spawnSync } from 'node:child_process'
import { closeSync, mkdtempSync, openSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { readArguments } from '../../lib/cli/arguments.ts'
import { printableLine, printableText } from '../../lib/cli/printable.ts'
import { run } from '../../lib/cli/run.ts'
import { systemWords } from '../../lib/cli/system-words.ts'
import { answered, DEMO, DEMO_DAY, FELLING, fileWith, refusedWith, runLine } from './command-line.ts'

const ROOT = fileURLToPath(new URL('../../', import.meta.url))
const MAIN = join(ROOT, 'lib/cli/main.ts')
const COMMANDS = ['ask', 'explain', 'matrix', 'check', 'rate', 'book', 'agreement', 'cut']

describe('misuse', () => {
  it.each([
    ['no command', [], 'A command is missing.'],
    ['an unknown command', ['aks'], 'Is ask meant?'],
    ['a command like no other', ['zzzzzz'], 'not known'],
    ['an unknown option', ['ask', DEMO, '--wrk', 'felling'], 'Is --work meant?'],
    ['an unknown option like no other', ['ask', DEMO, '--zzzzzz'], 'The option --zzzzzz is not known here.'],
    ['an unknown short option', ['ask', DEMO, '-x'], '-x is not known'],
    ['an option twice', ['ask', DEMO, '--item', 'a', '--item', 'b'], '--item is given twice.'],
    ['no value', ['ask', DEMO, '--item'], '--item wants a value: ID.'],
    ['an empty value', ['ask', DEMO, '--item='], '--item wants a value: ID.'],
    ['an option in the place of a value', ['ask', DEMO, '--item', '--json'], '--item wants a value'],
    ['a flag with a value', ['ask', DEMO, '--json=yes'], '--json takes no value.'],
    ['a prototype as an option', ['ask', DEMO, '--__proto__', '--constructor'], '--__proto__ is not known'],
    ['no file', ['check'], 'FILE is missing.'],
    ['two files', ['check', 'a', 'b'], 'One FILE is wanted, and there are 2.'],
    ['two forms', ['matrix', DEMO, '--csv', '--json'], 'not both'],
    ['a question without its parts', ['ask', DEMO], '--diameter IN is missing.'],
    ['nobody to explain', ['explain', DEMO, ...FELLING], '--person ID is missing'],
    ['an empty list', ['ask', DEMO, ...FELLING, '--company', 'a,,b'], 'one comma between them'],
  ])('[CL1] [CL2] %s is said in words', (_title, words, said) => {
    const err = refusedWith(2, ...words)
    expect(err).toContain(said)
    expect(err).toContain('--help')
  })

  it('[CL2] everything is said at once', () => {
    const err = refusedWith(2, 'ask', DEMO, '--wrk', 'x', '--item', '--json', '--item', 'y')
    expect(err.trim().split('\n')).toHaveLength(3)
    expect(refusedWith(2, 'ask', DEMO).trim().split('\n')).toHaveLength(6)
  })

  it('[CL2] a value that begins with a dash may stand after an equals sign', () => {
    const given = readArguments(['--item=-x', 'file'], { item: { value: 'ID', says: '' } })
    expect(given).toMatchObject({ ok: true, value: { operands: ['file'] } })
    expect(given.ok && given.value.values.get('item')).toBe('-x')
  })
})

describe('help', () => {
  it('[CL3] the program lists its commands, and that authority is not safety', () => {
    const help = answered('--help')
    for (const command of COMMANDS) expect(help).toContain(`  ${command} `)
    expect(help).toContain('Authority is not safety')
    expect([answered('-h'), answered('help')]).toEqual([help, help])
  })

  it.each(COMMANDS)('[CL3] %s says how it is called, and its examples work', (command) => {
    const help = answered(command, '--help')
    expect(answered('help', command)).toBe(help)
    expect(help).toContain(`npm run -s kerfbook -- ${command}`)
    const examples = help.split('Examples:\n')[1]!.trim().split('\n')
    expect(examples.length).toBeGreaterThan(0)
    for (const example of examples) {
      const words = example
        .trim()
        .match(/"[^"]*"|\S+/g)!
        .map((word) => word.replaceAll('"', ''))
      const [file, ...rest] = words.slice(words.indexOf('--') + 2)
      expect(answered(command, file!.replace(/^seeds\//, `${ROOT}seeds/`), ...rest)).not.toBe('')
    }
  })
})

describe('bad input', () => {
  const question = ['--item', 'x']
  it.each([
    ['missing', 'nowhere/at-all.json', 'is not there'],
    ['a directory', ROOT, 'is a directory'],
    ['a file in the place of a directory', `${DEMO}/x.json`, 'a part of the path is a file'],
    ['without end', '/dev/zero', 'too large'],
    ['nothing', '/dev/null', 'empty'],
    ['a name too long', `${'x'.repeat(5000)}.json`, 'longer name'],
  ])('[CL4] a file that is %s', (_title, path, said) => {
    for (const words of [
      ['ask', path, ...question],
      ['check', path],
      ['rate', path],
      ['book', path],
      ['matrix', path],
      ['agreement', path],
      ['cut', path],
    ]) {
      expect(refusedWith(1, ...words)).toContain(said)
    }
  })

  it.each([
    ['binary', new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 0xff]), 'not text'],
    ['cut off', '{"format": "kerfbook-program/1", ', 'not JSON'],
    ['something else', '{"hello": 1}', 'format'],
    ['a key of its own kind', '{"__proto__": {}}', '__proto__'],
    [
      'a name of a million letters',
      JSON.stringify({ format: 'kerfbook-program/1', program: 'x'.repeat(1e6) }),
      'program',
    ],
    ['an empty program', '{}', 'missing'],
    ['a list', '[]', 'object'],
  ])('[CL4] a file that is %s', (_title, content, said) => {
    const path = fileWith(content)
    for (const words of [
      ['ask', path, ...question],
      ['check', path],
    ]) {
      const err = refusedWith(1, ...words)
      expect(err).toContain(said)
      expect(err.length).toBeLessThan(5000)
    }
    expect(refusedWith(1, 'rate', path)).not.toBe('')
    expect(refusedWith(1, 'book', path)).not.toBe('')
  })

  it.each([
    ['read', 'EACCES', 'may not be read with your permissions.'],
    ['read', 'EISDIR', 'is a directory. A file is wanted.'],
    ['read', 'EIO', 'could not be read: the device or disk gives an error.'],
    ['read', 'EWEIRD', 'could not be read (EWEIRD).'],
    ['write', 'ENOSPC', 'no room is left on the disk.'],
    ['write', 'EACCES', 'it may not be written with your permissions.'],
    ['write', 'EISDIR', 'a directory stands in its place.'],
    ['write', 'EWEIRD', 'the system says EWEIRD.'],
  ] as const)(
    '[CL4] [CL25] where the system does not %s because of %s there are words',
    (doing, code, words) => {
      expect(systemWords(doing, Object.assign(new Error(`${code}: no`), { code }))).toBe(words)
    },
  )

  it('[CL4] a file of which the system gives nothing is refused in words', () => {
    expect(refusedWith(1, 'check', '/proc/self/mem')).toContain('the device or disk gives an error')
  })

  it('[CL4] a number that is too large and more values than a file may hold are refused in words', () => {
    const file = readFileSync(DEMO, 'utf8')
    const large = file.replace(/"line": ?\d+/, '"line": 1e400')
    expect(refusedWith(1, 'check', fileWith(large))).toContain('The number is too large to be read.')
    const many = fileWith(`{"format": "kerfbook-program/1", "people": [${'{},'.repeat(4_000_000)}{}]}`)
    expect(refusedWith(1, 'check', many)).toContain('The file holds too many values.')
  })

  it('[CL4] a program without entries has nothing on record', () => {
    const demo = JSON.parse(answered('ask', DEMO, ...FELLING, '--json')) as { program: { id: string } }
    const path = fileWith(
      JSON.stringify({
        format: 'kerfbook-program/1',
        draft: true,
        program: { id: demo.program.id, name: 'Empty', timeZone: 'America/Denver', book: 'none' },
        entries: [],
      }),
    )
    expect(refusedWith(1, 'ask', path, ...FELLING)).toMatch(/no entries|book/)
  })

  it('[CL5] a fault of the program is said to be one, and its stack is shown only when asked for', () => {
    const words = ['ask', DEMO, ...FELLING.slice(0, -2)]
    const faulty = (debug: boolean) => {
      let err = ''
      const code = run(words, {
        out: () => undefined,
        err: (text) => {
          err += text
        },
        now: () => {
          throw new Error('the clock is broken')
        },
        debug,
        width: 100,
      })
      expect(code).toBe(1)
      return err
    }
    expect(faulty(false)).toBe(
      'A fault of Kerfbook, not of the input: the clock is broken\nRun again with KERFBOOK_DEBUG=1 to see where.\n',
    )
    expect(faulty(true)).toMatch(/^\s+at /m)
  })
})

describe('text that is safe to show', () => {
  it('[CL7] control characters and marks that turn the reading order are replaced', () => {
    expect(printableLine('a\u001b[2Jb\u202ec\u0000')).toBe('a\ufffd[2Jb\ufffdc\ufffd')
    expect(printableLine('نور الدين')).toBe('نور الدين')
  })

  it('[CL7] a text with line ends stays on one line', () => {
    expect(printableText(['a\n\nOn their own: 4\tx', 'b'])).toBe('a On their own: 4 x\nb\n')
  })

  it('[CL7] what stood on the command line is shown harmless', () => {
    expect(refusedWith(2, 'ask', DEMO, '--work', '\u001b[31mfell')).not.toContain('\u001b')
    expect(refusedWith(1, 'check', 'no\u001b[31m.json')).not.toContain('\u001b')
  })
})

describe('the real command line', () => {
  const node = (words: readonly string[], env: Record<string, string> = {}) =>
    spawnSync(process.execPath, ['--import', 'tsx', MAIN, ...words], {
      cwd: ROOT,
      encoding: 'utf8',
      env: { ...process.env, ...env },
    })

  it('[CL1] answers with 0 on the output stream, the same as in one process', () => {
    const words = ['ask', 'seeds/demo.json', ...FELLING]
    const ran = node(words)
    expect(ran.stderr).toBe('')
    expect(ran.status).toBe(0)
    expect(ran.stdout).toBe(runLine(['ask', DEMO, ...FELLING]).out)
  })

  it('[CL1] [CL4] refuses with 1 and 2 on the error stream', () => {
    const missing = node(['check', join(mkdtempSync(join(tmpdir(), 'kerfbook-')), 'none.json')])
    expect([missing.status, missing.stdout]).toEqual([1, ''])
    expect(missing.stderr).toMatch(/^.*is not there\.\n$/)
    const misused = node(['ask', '--zzz'])
    expect([misused.status, misused.stdout]).toEqual([2, ''])
  })

  it('[CL25] a full disk is said in words, and not called a fault of the program', () => {
    for (const words of [['matrix', 'seeds/demo.json', '--csv'], ['check', 'seeds/demo.json'], ['--help']]) {
      const full = openSync('/dev/full', 'w')
      const ran = spawnSync(process.execPath, ['--import', 'tsx', MAIN, ...words], {
        cwd: ROOT,
        encoding: 'utf8',
        stdio: ['ignore', full, 'pipe'],
      })
      closeSync(full)
      expect(ran.stderr).toBe('The answer could not be written: no room is left on the disk.\n')
      expect(ran.status).toBe(1)
    }
  })

  it('[CL6] a reader who goes away is no fault, and a slow one gets everything', async () => {
    const words = ['ask', 'seeds/demo.json', ...FELLING, '--json']
    const gone = spawn(process.execPath, ['--import', 'tsx', MAIN, ...words], { cwd: ROOT })
    gone.stdout.destroy()
    let err = ''
    gone.stderr.on('data', (text: Buffer) => {
      err += text.toString()
    })
    const code = await new Promise((resolve) => gone.on('close', resolve))
    expect([code, err]).toEqual([0, ''])

    const line = [process.execPath, '--import', 'tsx', MAIN, ...words].map((word) => `'${word}'`).join(' ')
    const slow = spawnSync('sh', ['-c', `${line} | (sleep 3; cat)`], { cwd: ROOT, encoding: 'utf8' })
    expect(slow.stdout.length).toBeGreaterThan(100_000)
    expect(slow.stdout).toBe(runLine(['ask', DEMO, ...FELLING, '--json']).out)
  })

  it('[CL11] takes the day from the clock of this machine', () => {
    const ran = node([
      'ask',
      'seeds/demo.json',
      ...FELLING.slice(0, -DEMO_DAY.length),
      '--person',
      'p-lukasz-wrzos',
    ])
    expect(ran.status).toBe(0)
    expect(ran.stdout).toMatch(/Today is \d+ \w+ \d{4}\./)
  })
})
