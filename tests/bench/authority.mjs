import { openRecords } from '../../lib/core/authority/ask.ts'
import { openMatrix } from '../../lib/core/authority/matrix.ts'
import { rankOf } from '../../lib/core/rulebooks/standing.ts'
import { canonicalAnswer } from '../properties/canonical.ts'
import { bigProgram, itemsOf } from './big-program.ts'
import { contentsOf, ourAnswers } from './our-answers.ts'
import { caslAbilities, caslDecide, caslWorks } from './peer-casl.mjs'
import { peerFacts } from './peer-facts.ts'
import { jsonRules, jsonRulesDecide } from './peer-json-rules.mjs'
import { loadSql, sqlDecide } from './peer-sql.mjs'
import { plainAnswers } from './plain-slices.ts'
import { startPostgres } from './postgres.mjs'
import { median, printLine, rssMiB, timed } from './rounds.ts'
import { drawnPairs, drawnPeople, renewedPairs } from './sampled-pairs.ts'

const PEOPLE = Number(process.argv[2] ?? 2000)
const ITEMS = Number(process.argv[3] ?? 50)
const ROUNDS = 3
/** Peers that are asked of some people only are asked of so many, drawn, for every item. */
const CASL_PEOPLE = 100
const JSON_RULES_PEOPLE = 20
const PLAIN_PAIRS = 200
const COMPARED_RENEWALS = 1000
const COMPARED_DRAWN = 2000
/** Of the pairs that differ from one peer so many are shown; all are counted. */
const SHOWN = 3

const records = bigProgram(PEOPLE, ITEMS)
const opened = await timed(() => openRecords(records))
const authority = opened.value
const items = itemsOf(authority)
const everybody = records.people.map((_, person) => person)
const pairs = PEOPLE * ITEMS

// Asked and compared before anything is timed, then let go, so that no timed round pays for cleaning it up.
let answers = ourAnswers(authority, items, everybody)
printLine('authority-sizes', {
  people: PEOPLE,
  items: ITEMS,
  pairs,
  cards: records.cards.length,
  certificates: records.certificates.length,
  open_ms: opened.ms,
  ...contentsOf(answers),
  rss_mib: rssMiB(),
})
const ranks = Uint8Array.from(answers, ({ standing }) => rankOf(standing))
let differing = 0
comparePlain()
answers = []

const facts = peerFacts(authority, items)

const times = { ours: [], decide: [], sql: [], casl: [], 'json-rules-engine': [], plain: [] }
const postgres = await startPostgres()
try {
  await loadSql(postgres.client, facts)
  const rules = jsonRules(facts)
  const works = caslWorks(facts)
  const caslPeople = drawnPeople(PEOPLE, CASL_PEOPLE, 5)
  const rulesPeople = drawnPeople(PEOPLE, JSON_RULES_PEOPLE, 6)
  const who = (people) => people.map((person) => facts.people[person])
  const drawn = drawnPairs(PEOPLE, ITEMS, PLAIN_PAIRS, 3)
  // The first round warms up, and what it gives is compared; its times are left out.
  for (let round = 0; round <= ROUNDS; round += 1) {
    const took = (name, ms) => round > 0 && times[name].push(ms)
    const ours = await timed(() => ourAnswers(authority, items, everybody).length)
    took('ours', ours.ms)
    const decide = await timed(() => openMatrix(authority, items).decide().length)
    took('decide', decide.ms)
    const sql = await timed(() => sqlDecide(postgres.client, PEOPLE, ITEMS))
    took('sql', sql.ms)
    const abilities = caslAbilities(facts, who(caslPeople))
    const casl = await timed(() => caslDecide(abilities, works, ITEMS))
    took('casl', (casl.ms * PEOPLE) / caslPeople.length)
    const json = await timed(() => jsonRulesDecide(rules, who(rulesPeople), ITEMS))
    took('json-rules-engine', (json.ms * PEOPLE) / rulesPeople.length)
    let plain = 0
    const ask = plainAnswers(records, (ms) => (plain += ms))
    for (const { person, item } of drawn) ask(records.people[person].id, items[item])
    took('plain', (plain * pairs) / drawn.length)
    if (round > 0) continue
    compareRanks('sql', sql.value, everybody)
    compareRanks('casl', casl.value, caslPeople)
    compareRanks('json-rules-engine', json.value, rulesPeople)
  }
  const asked = {
    'json-rules-engine': `${rulesPeople.length}x${ITEMS}`,
    sql: `${PEOPLE}x${ITEMS}`,
    casl: `${caslPeople.length}x${ITEMS}`,
    plain: `${drawn.length}_pairs`,
  }
  for (const [peer, goal] of [
    ['json-rules-engine', 500],
    ['sql', 50],
    ['casl', 15],
    ['plain', 5],
  ])
    // prettier-ignore
    printLine('authority-pairs', {
      ours_ms: median(times.ours),
      peer,
      peer_ms: median(times[peer]),
      asked: asked[peer],
      ratio: median(times[peer].map((ms, round) => ms / times.ours[round])),
      goal,
    })
  const standingOnly = ['decide', 'json-rules-engine', 'sql', 'casl'].map((name) => [
    `${name === 'decide' ? 'ours' : name}_ms`,
    median(times[name]),
  ])
  printLine('authority-standing', Object.fromEntries(standingOnly))
} finally {
  await postgres.stop()
}
if (differing > 0) {
  console.log(`FAILED: ${differing} pairs differ`)
  process.exitCode = 1
}

/** Peers know no training assignments: pairs that one names are left out, and counted. */
function compareRanks(peer, theirs, people) {
  let compared = 0
  let leftOut = 0
  let differ = 0
  people.forEach((person, row) => {
    for (let item = 0; item < ITEMS; item += 1) {
      if (facts.people[person].learnsOn.has(items[item].work.item)) {
        leftOut += 1
        continue
      }
      compared += 1
      if (theirs[row * ITEMS + item] === ranks[person * ITEMS + item]) continue
      differ += 1
      if (differ <= SHOWN)
        console.log(
          `differs: ${peer} ${facts.people[person].id} ${items[item].work.item}: ours ${ranks[person * ITEMS + item]}, theirs ${theirs[row * ITEMS + item]}`,
        )
    }
  })
  differing += differ
  printLine('authority-compared', { with: peer, what: 'standing', compared, left_out: leftOut, differ })
}

function comparePlain() {
  const renewed = renewedPairs(records, items, COMPARED_RENEWALS)
  const chosen = [...renewed, ...drawnPairs(PEOPLE, ITEMS, COMPARED_DRAWN, 2)]
  const ask = plainAnswers(records, () => undefined)
  let differ = 0
  for (const { person, item } of chosen) {
    const { id } = records.people[person]
    const ours = canonicalAnswer(answers[person * ITEMS + item])
    const theirs = canonicalAnswer(ask(id, items[item]))
    const parts = Object.keys({ ...ours, ...theirs }).filter(
      (part) => JSON.stringify(ours[part]) !== JSON.stringify(theirs[part]),
    )
    if (parts.length === 0) continue
    differ += 1
    if (differ > SHOWN) continue
    for (const part of parts)
      console.log(
        `differs: plain ${id} ${items[item].work.item} ${part}\n  ours   ${JSON.stringify(ours[part])}\n  theirs ${JSON.stringify(theirs[part])}`,
      )
  }
  differing += differ
  printLine('authority-compared', {
    with: 'plain',
    what: 'whole_answer',
    compared: String(chosen.length),
    renewed_on_time: String(renewed.length),
    differ,
  })
}
