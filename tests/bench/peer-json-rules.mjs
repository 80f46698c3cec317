import { Engine } from 'json-rules-engine'
import {
  ageOn,
  agreementOn,
  certificateOn,
  grantKey,
  grantsByKey,
  isSuspended,
  membershipsOn,
  stopsOn,
} from './peer-standing.ts'

/**
 * The same rules as JSON rules: a rule that holds is a requirement not met, its event says what is left. Facts are
 * worked out beforehand into plain values, because a fact that the engine has to fetch costs it more than a rule. One
 * engine knows the rules of the person and one those of a card; the person's is run once for each day, work kind, book
 * and place that is asked of them, the card's once for each card and item on a day. Gives standing and the kinds of the
 * findings; no dates, records or notes.
 */
export function jsonRules(facts) {
  return {
    facts,
    grants: grantsByKey(facts.grants),
    person: new Engine(personRules()),
    card: new Engine(cardRules()),
  }
}

/** The rank of each of some people for each item: the worst of its days. */
export async function jsonRulesDecide({ facts, grants, person, card }, people, itemCount) {
  const ranks = new Uint8Array(people.length * itemCount).fill(4)
  const worst = async (engine, run) => {
    const { events } = await engine.run(run)
    return events.reduce((rank, { params }) => Math.min(rank, params.gives), 4)
  }
  for (const [row, who] of people.entries()) {
    const own = new Map()
    for (const work of facts.itemDays) {
      const key = `${work.day} ${work.workKind} ${work.book} ${work.places[0]}`
      let rank = own.get(key)
      if (rank === undefined) {
        rank = await worst(person, personFacts(facts, who, work))
        own.set(key, rank)
      }
      let best = 0
      for (const held of who.cards)
        if (held.workKinds.includes(work.workKind))
          best = Math.max(best, await worst(card, cardFacts(grants, held, work)))
      const at = row * itemCount + work.item
      ranks[at] = Math.min(ranks[at], rank, best)
    }
  }
  return ranks
}

const when = (fact, value) => ({ fact, operator: 'equal', value })
const has = (fact, value) => ({ fact, operator: 'contains', value })
const rule = (kind, gives, ...all) => ({ conditions: { all }, event: { type: kind, params: { gives } } })

const SUBJECTS = ['first-aid', 'cpr']
const RESTRICTIONS = [
  'greatest-diameter',
  'places',
  'species',
  'greatest-complexity',
  'double-bucking-only',
  'no-felling',
  'supervisor-only',
  'words',
]

function personFacts(facts, who, { day, workKind, book, places }) {
  const memberships = membershipsOn(who.memberships, day)
  const isPlaceSuspended = facts.placeSuspensions.some(
    (one) => places.includes(one.about) && stopsOn(one, workKind, day),
  )
  return {
    age: ageOn(who, day),
    guardian: who.guardian,
    'work-kind': workKind,
    book,
    capacities: who.memberships.length === 0 ? ['not-stated'] : memberships.map(({ capacity }) => capacity),
    agreements: memberships.map((membership) => agreementOn(membership, day)),
    ...Object.fromEntries(SUBJECTS.map((subject) => [subject, certificateOn(who, subject, day)])),
    'is-suspended': isPlaceSuspended || isSuspended(facts, who, workKind, day),
  }
}

function personRules() {
  const minor = when('age', 'minor')
  const bucking = when('work-kind', 'bucking')
  const felling = when('work-kind', 'felling')
  const volunteer = has('capacities', 'volunteer')
  return [
    rule('under-age', 0, when('age', 'child')),
    rule('age-not-on-record', 1, when('age', 'unknown')),
    ...['employee', 'paid-corps-member', 'contractor', 'student'].map((capacity) =>
      rule('under-age', 0, minor, has('capacities', capacity)),
    ),
    rule('under-age', 3, minor, bucking, volunteer),
    rule('guardian', 1, minor, bucking, volunteer, when('guardian', null)),
    rule('guardian', 0, minor, bucking, volunteer, when('guardian', 'refused')),
    rule('under-age', 0, minor, felling, volunteer),
    rule('under-age', 1, minor, bucking, has('capacities', 'not-stated')),
    rule('under-age', 0, minor, felling, has('capacities', 'not-stated')),
    rule('outside-book', 0, when('book', 'federal-crosscut'), has('capacities', 'contractor')),
    rule('no-agreement', 0, has('agreements', 'not-covered')),
    rule('no-agreement', 1, has('agreements', 'undated')),
    ...SUBJECTS.flatMap((subject) => [
      rule('certificate-not-seen', 1, when(subject, 'not-seen')),
      rule('certificate-delivery', 0, when(subject, 'delivery')),
      rule('certificate-lapsed', 0, when(subject, 'lapsed')),
      rule('certificate-not-on-record', 1, when(subject, 'not-on-record')),
    ]),
    rule('suspended', 0, when('is-suspended', true)),
  ]
}

function cardFacts(grants, held, work) {
  const { day, workKind } = work
  const restricted = Object.fromEntries(RESTRICTIONS.map((kind) => [kind, []]))
  for (const one of held.restrictions)
    if (one.workKinds?.includes(workKind) ?? true) restricted[one.kind].push(insideOf(one, work))
  return {
    days: day < held.first ? 'not-begun' : day > held.last ? 'ended' : 'in-force',
    cell: cellOf(grants.get(grantKey(work.book, held, workKind)), work.planned),
    'kinds-unsaid': !held.areKindsStated && workKind === 'felling',
    'is-suspended': held.suspensions.some((one) => stopsOn(one, workKind, day)),
    ...restricted,
  }
}

function cellOf(gives, planned) {
  if (gives === undefined) return 'not-recognised'
  if (planned === null) return gives.some((rank) => rank > 0) ? 'unrated' : 0
  return gives[planned]
}

function cardRules() {
  return [
    rule('card-not-yet-valid', 0, when('days', 'not-begun')),
    rule('card-no-longer-valid', 0, when('days', 'ended')),
    rule('book-does-not-recognise', 0, when('cell', 'not-recognised')),
    rule('complexity-unrated', 1, when('cell', 'unrated')),
    rule('level-too-low', 0, when('cell', 0)),
    rule('training-only', 2, when('cell', 2)),
    rule('needs-supervisor', 3, when('cell', 3)),
    rule('work-kinds-not-on-record', 1, when('kinds-unsaid', true)),
    rule('suspended', 0, when('is-suspended', true)),
    ...RESTRICTIONS.map((kind) => rule(kind, 0, has(kind, 'outside'))),
    rule('species', 1, has('species', 'unsaid')),
    rule('supervisor-only', 3, has('supervisor-only', 'supervised')),
    rule('words', 1, has('words', 'unresolved')),
  ]
}

function insideOf({ kind, inches, complexity, allowed }, work) {
  const says = (isInside) => (isInside ? 'inside' : 'outside')
  switch (kind) {
    case 'greatest-diameter':
      return says(work.diameter <= inches)
    case 'places':
      return says(work.places.some((place) => allowed.includes(place)))
    case 'species':
      return work.species === null ? 'unsaid' : says(allowed.includes(work.species))
    case 'greatest-complexity':
      return says(work.planned === null || work.planned <= complexity)
    case 'double-bucking-only':
      return says(work.workKind !== 'bucking' || work.hands === 'two')
    case 'no-felling':
      return says(work.workKind !== 'felling')
    case 'supervisor-only':
      return 'supervised'
    default:
      return 'unresolved'
  }
}
