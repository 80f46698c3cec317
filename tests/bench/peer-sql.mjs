import { readFileSync } from 'node:fs'

/** Makes the tables and fills them; the planner is told what is in them. */
export async function loadSql(client, facts) {
  await client.query(textOf('authority-tables.sql'))
  const cards = facts.people.flatMap((person) =>
    person.cards.map((card) => ({ ...card, person: person.number })),
  )
  const suspensions = [
    ...facts.unitSuspensions,
    ...facts.placeSuspensions,
    ...facts.people.flatMap(({ number, suspensions: own }) =>
      own.map((one) => ({ ...one, about: String(number) })),
    ),
    ...new Set(cards.flatMap((card) => card.suspensions)),
  ]
  const ofPeople = (rowsOf) =>
    facts.people.flatMap((person) => rowsOf(person).map((row) => ({ ...row, person: person.number })))
  await fill(
    client,
    'people',
    facts.people.map(({ number, sixteen, eighteen, guardian }) => ({
      person: number,
      sixteen: dateText(sixteen),
      eighteen: dateText(eighteen),
      guardian,
    })),
  )
  await fill(client, 'memberships', ofPeople(({ memberships }) => memberships).map(withDates))
  await fill(client, 'certificates', ofPeople(({ certificates }) => certificates).map(withDates))
  await fill(
    client,
    'cards',
    cards.map((card, index) => ({
      ...withDates(card),
      card: index,
      kinds_stated: card.areKindsStated,
      work_kind: card.workKinds,
    })),
  )
  await fill(
    client,
    'restrictions',
    cards.flatMap(({ restrictions }, index) =>
      restrictions.map((one) => ({ ...one, card: index, work_kinds: one.workKinds })),
    ),
  )
  await fill(
    client,
    'suspensions',
    suspensions.map((one) => ({ ...withDates(one), work_kinds: one.workKinds })),
  )
  await fill(
    client,
    'grants',
    facts.grants.map((one) => ({ ...one, card_book: one.cardBook, work_kind: one.workKind })),
  )
  await fill(
    client,
    'item_days',
    facts.itemDays.map((one) => ({
      ...one,
      day: dateText(one.day),
      work_kind: one.workKind,
    })),
  )
  await client.query('vacuum analyze')
}

/** The rank of everybody for every item, by the one query, all rows fetched. */
export async function sqlDecide(client, peopleCount, itemCount) {
  const { rows } = await client.query({ text: textOf('authority.sql'), rowMode: 'array' })
  const ranks = new Uint8Array(peopleCount * itemCount)
  for (const [person, item, rank] of rows) ranks[person * itemCount + item] = rank
  if (rows.length !== ranks.length) throw new Error(`the query gave ${rows.length} rows, not ${ranks.length}`)
  return ranks
}

/** The plan of the query, for who wants to improve it. */
export async function sqlPlan(client) {
  const { rows } = await client.query({
    text: `explain (analyze, buffers) ${textOf('authority.sql')}`,
    rowMode: 'array',
  })
  return rows.map(([line]) => line).join('\n')
}

async function fill(client, table, rows) {
  await client.query(`insert into ${table} select * from json_populate_recordset(null::${table}, $1)`, [
    JSON.stringify(rows),
  ])
}

function withDates(row) {
  return { ...row, first: dateText(row.first), last: dateText(row.last) }
}

/** Far days are a day that no season reaches. */
function dateText(day) {
  return day === null ? null : new Date(Math.min(day, 100_000) * 86_400_000).toISOString().slice(0, 10)
}

function textOf(file) {
  return readFileSync(new URL(file, import.meta.url), 'utf8')
}
