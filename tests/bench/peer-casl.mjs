import { AbilityBuilder, createMongoAbility, subject } from '@casl/ability'
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
 * The same rules as abilities: `can('independent', work)` asks whether somebody is at least independent. A card gives
 * abilities under conditions, what stops a person takes them away on runs of days. Of the reasons only the first rule
 * that stops is known, by its text; dates and notes are not.
 */

/** From rank 1 up; rank 0 is that none of them is allowed. */
const AT_LEAST = ['unknown', 'training', 'own-level', 'independent']
const WORK_KINDS = /** @type {const} */ (['bucking', 'felling'])

/** The work of each item and day, as subjects. */
export function caslWorks(facts) {
  return facts.itemDays.map((work) =>
    subject('Work', { ...work, place: work.places[0], planned: work.planned ?? -1 }),
  )
}

/** The ability of each of some people; its conditions are compiled when they are first asked. */
export function caslAbilities(facts, people) {
  const grants = grantsByKey(facts.grants)
  const books = [...new Set(facts.itemDays.map(({ book }) => book))]
  const chains = [...new Map(facts.itemDays.map(({ places }) => [places[0], places])).values()]
  const days = facts.itemDays.map(({ day }) => day)
  const season = { first: Math.min(...days), last: Math.max(...days) }
  return people.map((person) => abilityOf(facts, { grants, books, chains, season }, person))
}

/** The rank of each person for each item: the worst of its days, each asked from the best standing down. */
export function caslDecide(abilities, works, itemCount) {
  const ranks = new Uint8Array(abilities.length * itemCount).fill(4)
  abilities.forEach((ability, row) => {
    for (const work of works) {
      const at = row * itemCount + work.item
      let rank = ranks[at]
      while (rank > 0 && !ability.can(AT_LEAST[rank - 1], work)) rank -= 1
      ranks[at] = rank
    }
  })
  return ranks
}

function abilityOf(facts, { grants, books, chains, season }, person) {
  const { can, cannot, build } = new AbilityBuilder(createMongoAbility)
  for (const card of person.cards)
    for (const workKind of card.workKinds)
      for (const days of runs(season, (day) => countsOn(card, workKind, day)))
        for (const book of books) {
          const gives = grants.get(grantKey(book, card, workKind))
          if (gives !== undefined && days.value) addCard(can, card, chains, workKind, book, days, gives)
        }
  for (const workKind of WORK_KINDS) {
    const stops = (reason, conditions, rankOn) => {
      for (const { first, last, value } of runs(season, rankOn))
        if (value < 4)
          cannot(AT_LEAST.slice(value), 'Work', {
            workKind,
            ...conditions,
            day: { $gte: first, $lte: last },
          }).because(reason)
    }
    stops('age and capacity', {}, (day) => capacityRank(person, workKind, day))
    stops('outside this book', { book: 'federal-crosscut' }, (day) =>
      membershipsOn(person.memberships, day).some(({ capacity }) => capacity === 'contractor') ? 0 : 4,
    )
    for (const subjectName of ['first-aid', 'cpr'])
      stops(`certificate ${subjectName}`, {}, (day) => CERTIFICATE[certificateOn(person, subjectName, day)])
    stops('suspended', {}, (day) => (isSuspended(facts, person, workKind, day) ? 0 : 4))
    for (const suspension of facts.placeSuspensions)
      stops('suspended place', { places: suspension.about }, (day) =>
        stopsOn(suspension, workKind, day) ? 0 : 4,
      )
  }
  return build()
}

const CERTIFICATE = { counts: 4, 'not-seen': 1, delivery: 0, lapsed: 0, 'not-on-record': 1 }

function countsOn(card, workKind, day) {
  if (day < card.first || day > card.last) return false
  return !card.suspensions.some((suspension) => stopsOn(suspension, workKind, day))
}

function addCard(can, card, chains, workKind, book, { first, last }, gives) {
  const binding = card.restrictions.filter(({ workKinds }) => workKinds?.includes(workKind) ?? true)
  const kinds = new Set(binding.map(({ kind }) => kind))
  if (kinds.has('no-felling') && workKind === 'felling') return
  const isUnknown = kinds.has('words') || (!card.areKindsStated && workKind === 'felling')
  const most = isUnknown ? 1 : kinds.has('supervisor-only') ? 3 : 4
  const allowedIn = (name) => binding.filter(({ kind }) => kind === name).map(({ allowed }) => allowed)
  const least = (name, most, of) =>
    Math.min(most, ...binding.filter(({ kind }) => kind === name).map((restriction) => restriction[of]))
  const inches = least('greatest-diameter', Infinity, 'inches')
  const greatest = least('greatest-complexity', 2, 'complexity')
  const places = allowedIn('places')
  const inside = chains.filter((chain) =>
    places.every((allowed) => chain.some((one) => allowed.includes(one))),
  )
  const species = allowedIn('species')
  const common = {
    workKind,
    book,
    day: { $gte: first, $lte: last },
    ...(inches < Infinity ? { diameter: { $lte: inches } } : {}),
    ...(places.length > 0 ? { place: { $in: inside.map(([place]) => place) } } : {}),
    ...(kinds.has('double-bucking-only') && workKind === 'bucking' ? { hands: 'two' } : {}),
  }
  const add = (actions, planned) => {
    if (species.length === 0) return can(actions, 'Work', { ...common, planned })
    const named = species.reduce((all, allowed) => all.filter((name) => allowed.includes(name)))
    can(actions, 'Work', { ...common, planned, species: { $in: named } })
    can('unknown', 'Work', { ...common, planned, species: null })
  }
  gives.forEach((rank, complexity) => {
    const held = Math.min(rank, most)
    if (held > 0 && complexity <= greatest) add(AT_LEAST.slice(0, held), complexity)
  })
  if (gives.some((rank) => rank > 0)) add('unknown', -1)
}

function capacityRank(person, workKind, day) {
  const age = ageOn(person, day)
  if (age === 'child') return 0
  const memberships = membershipsOn(person.memberships, day)
  const ranks = memberships.map((membership) => {
    const agreement = { covers: 4, undated: 1, 'not-covered': 0 }[agreementOn(membership, day)]
    return Math.min(agreement, age === 'minor' ? minorRank(person, membership.capacity, workKind) : 4)
  })
  if (memberships.length === 0 && age === 'minor') ranks.push(minorRank(person, 'not-stated', workKind))
  return Math.min(age === 'unknown' ? 1 : 4, ...ranks)
}

function minorRank({ guardian }, capacity, workKind) {
  if (workKind === 'felling') return 0
  if (capacity === 'not-stated') return 1
  if (capacity !== 'volunteer') return 0
  return guardian === 'given' ? 3 : guardian === 'refused' ? 0 : 1
}

/** The runs of days of a season with one value. */
function runs({ first, last }, valueOn) {
  const found = []
  for (let day = first; day <= last; day += 1) {
    const value = valueOn(day)
    const open = found.at(-1)
    if (open !== undefined && open.value === value) open.last = day
    else found.push({ first: day, last: day, value })
  }
  return found
}
