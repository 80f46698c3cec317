import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { openRecords } from '../../lib/core/authority/ask.ts'
import { openMatrix } from '../../lib/core/authority/matrix.ts'
import { bigProgram, itemsOf } from './big-program.ts'
import { ourAnswers } from './our-answers.ts'
import { median, printLine, rssMiB, timed } from './rounds.ts'
import { drawnPeople } from './sampled-pairs.ts'

const SIZES = [
  [200, 50],
  [2000, 50],
  [20_000, 50],
  [2000, 5],
  [2000, 200],
] as const
const ROUNDS = 3
/** Answers are asked of people drawn, so that no size asks more pairs than this. */
const MOST_ANSWERS = 100_000

const [people, items] = process.argv.slice(2).map(Number)
if (people === undefined || items === undefined) {
  // Each size has a process of its own, so that neither memory nor warmed code is carried over.
  for (const size of SIZES) {
    const args = [...process.execArgv, fileURLToPath(import.meta.url), ...size.map(String)]
    const { status } = spawnSync(process.execPath, args, { stdio: 'inherit' })
    if (status !== 0) process.exitCode = 1
  }
} else {
  await measure(people, items)
}

async function measure(peopleCount: number, itemCount: number): Promise<void> {
  const records = bigProgram(peopleCount, itemCount)
  const opened = await timed(() => openRecords(records))
  const authority = opened.value
  const columns = itemsOf(authority)
  const asked = drawnPeople(peopleCount, Math.floor(MOST_ANSWERS / itemCount), 7)
  const decided: number[] = []
  const answered: number[] = []
  for (let round = 0; round <= ROUNDS; round += 1) {
    const decide = await timed(() => openMatrix(authority, columns).decide().length)
    const answer = await timed(() => ourAnswers(authority, columns, asked).length)
    // The first round warms up.
    if (round === 0) continue
    decided.push(decide.ms)
    answered.push(answer.ms)
  }
  const microseconds = 1000
  printLine('growth', {
    people: String(peopleCount),
    items: String(itemCount),
    open_us_per_person: (opened.ms * microseconds) / peopleCount,
    decide_us_per_pair: (median(decided) * microseconds) / (peopleCount * itemCount),
    answer_us_per_pair: (median(answered) * microseconds) / (asked.length * itemCount),
    asked: String(asked.length * itemCount),
    rss_mib: rssMiB(),
  })
}
