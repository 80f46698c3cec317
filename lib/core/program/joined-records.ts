import type { Records } from '../authority/records.ts'
import type { Suspension } from '../cards/cards.schema.ts'
import { JoinedPeople } from '../people/joined-people.ts'
import type { Assignment, Person } from '../people/people.schema.ts'

/**
 * The records with those of one person under one id. What was recorded about a record that was joined to another is
 * read as about that other; the facts themselves stay as they were recorded, so that parting them leaves no trace.
 */
export function joinedRecords(records: Records): Records {
  const joined = new JoinedPeople(records.joins)
  if (joined.areNone) return records
  const own = <Fact extends { person: string }>(facts: readonly Fact[]): Fact[] =>
    facts.map((fact) => ({ ...fact, person: joined.of(fact.person) }))
  return {
    ...records,
    people: joinedPersons(records, joined),
    memberships: own(records.memberships),
    permissions: own(records.permissions),
    certificates: own(records.certificates),
    designations: own(records.designations),
    cards: own(records.cards),
    assignments: own(records.assignments).map((one) => withTrainers(one, joined)),
    suspensions: records.suspensions.map((one) => withSubject(one, joined)),
    ratings: records.ratings.map((rating) => ({ ...rating, rater: joined.of(rating.rater) })),
    raises: records.raises.map((raise) => ({ ...raise, by: joined.of(raise.by) })),
    hitches: records.hitches.map((hitch) =>
      hitch.lead === undefined ? hitch : { ...hitch, lead: joined.of(hitch.lead) },
    ),
    placements: own(records.placements),
    disputes: own(records.disputes),
  }
}

/** Each person once. Where the record that remains says nothing of an age, the other's is theirs. */
function joinedPersons({ people, joins }: Records, joined: JoinedPeople): Person[] {
  const byId = new Map(people.map((person) => [person.id, person]))
  const ages = new Map<string, Person>()
  for (const { person, stays } of joins) {
    const other = byId.get(person)
    if (other !== undefined && saysAge(other) && !ages.has(stays)) ages.set(stays, other)
  }
  return people
    .filter(({ id }) => joined.of(id) === id)
    .map((person) => {
      const other = ages.get(person.id)
      if (other === undefined || saysAge(person)) return person
      const { birthDate, ofAgeFrom, attestedBy } = other
      return {
        ...person,
        ...(birthDate === undefined ? {} : { birthDate }),
        ...(ofAgeFrom === undefined ? {} : { ofAgeFrom }),
        ...(attestedBy === undefined ? {} : { attestedBy }),
      }
    })
}

function saysAge({ birthDate, ofAgeFrom }: Person): boolean {
  return birthDate !== undefined || ofAgeFrom !== undefined
}

function withTrainers(assignment: Assignment, joined: JoinedPeople): Assignment {
  return { ...assignment, trainers: [...new Set(assignment.trainers.map((trainer) => joined.of(trainer)))] }
}

function withSubject(suspension: Suspension, joined: JoinedPeople): Suspension {
  const { subject, notices } = suspension
  return {
    ...suspension,
    ...(subject.kind === 'person' ? { subject: { ...subject, person: joined.of(subject.person) } } : {}),
    ...(notices === undefined
      ? {}
      : { notices: notices.map((notice) => ({ ...notice, person: joined.of(notice.person) })) }),
  }
}
