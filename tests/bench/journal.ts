import { randomBytes, randomUUID } from 'node:crypto'
import { join } from 'node:path'
import pg from 'pg'
import { REPOSITORY } from '../../lib/platform/database/data-folder.ts'
import { recordUuid } from '../../lib/store/record-ids.ts'
import { callCommand } from '../../lib/usecases/door/call-command.ts'
import { openRuntime } from '../../lib/usecases/door/open-runtime.ts'
import { recordPerson } from '../durability/record-person.ts'
import { startBenchDatabase } from './bench-database.ts'
import { loadBigProgram } from './big-journal.ts'
import { median, printLine, timed } from './rounds.ts'

const COMMANDS = Number(process.argv[2] ?? 200)
const ROUNDS = 5
const CONNECTIONS = 8
const SIZES = [0, 5000]

const database = await startBenchDatabase()
const runtime = await openRuntime({ url: database.appUrl, seeds: join(REPOSITORY, 'seeds'), begin: 'own' })
// The owner may make tables; the same tables without journal, trigger and reference to the entry.
const pool = new pg.Pool({ connectionString: database.ownerUrl, max: CONNECTIONS })
try {
  await pool.query('CREATE TABLE plain_person (LIKE person INCLUDING ALL)')
  await pool.query(
    `CREATE TABLE plain_person_fact (LIKE person_fact INCLUDING ALL,
       FOREIGN KEY (person_id) REFERENCES plain_person (id))`,
  )
  for (const people of SIZES) {
    if (people > 0) await loadBigProgram(runtime.store, people, 0)
    for (const atOnce of [1, CONNECTIONS]) await compare(people, atOnce)
  }
} finally {
  await pool.end()
  await runtime.store.close()
  await database.stop()
}

/** Ours and the peer in turn, so many senders at once, each sending one after the other. */
async function compare(people: number, atOnce: number): Promise<void> {
  const ours: number[] = []
  const plain: number[] = []
  // The first round warms up.
  for (let round = 0; round <= ROUNDS; round += 1) {
    const us = await timed(() => send(atOnce, commandOurs))
    const them = await timed(() => send(atOnce, insertPlain))
    if (round === 0) continue
    ours.push((COMMANDS * 1000) / us.ms)
    plain.push((COMMANDS * 1000) / them.ms)
  }
  printLine('journal', {
    people: String(people),
    at_once: String(atOnce),
    ours_per_s: median(ours),
    peer: 'same_inserts_without_journal',
    peer_per_s: median(plain),
    of_peer: median(ours.map((rate, round) => rate / (plain[round] ?? Number.NaN))),
  })
}

async function send(atOnce: number, one: () => Promise<void>): Promise<void> {
  let left = COMMANDS
  const sender = async () => {
    while (left > 0) {
      left -= 1
      await one()
    }
  }
  await Promise.all(Array.from({ length: atOnce }, sender))
}

/** A command through the door: permission, input, lock, snapshot, decision, facts, digests, entry, commit. */
async function commandOurs(): Promise<void> {
  const input = { id: `person-${randomUUID()}`, name: 'Invented' }
  const outcome = await callCommand(
    runtime,
    recordPerson,
    { input, command: randomUUID() },
    { kind: 'start' },
  )
  if (outcome.kind !== 'done') throw new Error(`a command was not done: ${outcome.kind}`)
}

/** The rows that such a command leaves but for the entry, in a transaction of their own by the driver alone. */
async function insertPlain(): Promise<void> {
  const code = `person-${randomUUID()}`
  const id = recordUuid('people', code)
  const client = await pool.connect()
  try {
    await client.query('BEGIN')
    await client.query('INSERT INTO plain_person (id, code) VALUES ($1, $2)', [id, code])
    await client.query(
      `INSERT INTO plain_person_fact (id, person_id, name, recorded_in, salt) VALUES ($1, $2, 'Invented', 1, $3)`,
      [randomUUID(), id, randomBytes(16)],
    )
    await client.query('COMMIT')
  } finally {
    client.release()
  }
}
