import { askBriefly, openRecords } from '../../lib/core/authority/ask.ts'
import { openMatrix } from '../../lib/core/authority/matrix.ts'
import { STANDINGS, rankOf } from '../../lib/core/rulebooks/standing.ts'
import { bigProgram, itemsOf } from './big-program.ts'
import { median, printLine, rssMiB, timed } from './rounds.ts'
import { drawnPairs } from './sampled-pairs.ts'

const PEOPLE = Number(process.argv[2] ?? 20_000)
const ITEMS = Number(process.argv[3] ?? 200)
const ROUNDS = 5
const CHECKED = 1000
const GOAL_MS = 1000

const records = bigProgram(PEOPLE, ITEMS)
const opened = await timed(() => openRecords(records))
const authority = opened.value
const items = itemsOf(authority)
const before = rssMiB()
const times: number[] = []
let last: Uint8Array | undefined
for (let round = 0; round <= ROUNDS; round += 1) {
  last = undefined
  const { ms, value } = await timed(() => openMatrix(authority, items).decide())
  // The first round warms up.
  if (round > 0) times.push(ms)
  last = value
}
if (last === undefined) throw new RangeError('no round was run')
const ranks = last
const counts = STANDINGS.map(
  (standing, rank) => [standing, ranks.filter((one) => one === rank).length] as const,
)
printLine('decision-sizes', {
  people: String(PEOPLE),
  items: String(ITEMS),
  pairs: String(PEOPLE * ITEMS),
  open_ms: opened.ms,
  rss_before_mib: before,
  rss_mib: rssMiB(),
})
printLine(
  'decision-standings',
  Object.fromEntries(counts.map(([standing, count]) => [standing, String(count)])),
)
const ms = median(times)
printLine('decision', { ours_ms: ms, ratio: GOAL_MS / ms, goal: 1 })

let differ = 0
const asked = await timed(() => {
  for (const { person, item } of drawnPairs(PEOPLE, ITEMS, CHECKED, 4)) {
    const [id, asked] = [authority.people[person]?.id, items[item]]
    if (id === undefined || asked === undefined) throw new RangeError('the pair lies outside the table')
    const [answer] = askBriefly(authority, { ...asked, today: asked.first, persons: [id] })
    if (answer === undefined) throw new RangeError('nobody is asked')
    if (rankOf(answer.standing) === ranks[person * ITEMS + item]) continue
    differ += 1
    console.log(
      `differs: ${answer.person} item ${item}: decided ${ranks[person * ITEMS + item]}, ${answer.standing}`,
    )
  }
})
printLine('decision-reasons', { answers: String(CHECKED), us_each: (asked.ms * 1000) / CHECKED, differ })
if (differ > 0) process.exitCode = 1
