import type { PersonPage } from '../../../lib/usecases/people/person.ts'
import type {
  PersonSection,
  ShownHistory,
  ShownVersion,
} from '../../../lib/usecases/people/record-history.ts'
import type { ShownEntry } from '../../../lib/usecases/people/shown-entries.ts'
import { momentText } from '../../../lib/wording/days.ts'
import { capitalised, joinedByAnd } from '../../../lib/wording/lists.ts'
import { Said } from '../../_parts/said.tsx'
import { Section } from '../../_parts/section.tsx'

/** The records of a person as the page groups them. */
const GROUPS: readonly { id: string; title: string; of: readonly PersonSection[] }[] = [
  {
    id: 'cards',
    title: 'Cards',
    of: ['cards', 'endings', 'resolutions', 'extensions'],
  },
  { id: 'certificates', title: 'Certificates', of: ['certificates'] },
  {
    id: 'suspensions',
    title: 'Suspensions and stand-downs',
    of: ['suspensions', 'lifts'],
  },
  { id: 'memberships', title: 'Memberships', of: ['memberships'] },
  {
    id: 'permissions',
    title: 'Guardian’s permission',
    of: ['permissions'],
  },
  {
    id: 'designations',
    title: 'Designations',
    of: ['designations'],
  },
  {
    id: 'assignments',
    title: 'Training assignments',
    of: ['assignments'],
  },
  { id: 'person', title: 'The person', of: ['people'] },
]

/** Every record about a person with its history. Nothing is written over: what was corrected stands struck under it. */
export function Records({ person, readsJournal }: { person: PersonPage; readsJournal: boolean }) {
  const groups = GROUPS.map((group) => ({
    ...group,
    histories: person.histories.filter(({ section }) => group.of.includes(section)),
  }))
  const none = groups.filter(({ histories }) => histories.length === 0)
  return (
    <>
      {groups
        .filter(({ histories }) => histories.length > 0)
        .map(({ id, title, histories }) => (
          <Section key={id} id={id} title={title}>
            <ul className="histories">
              {histories.map((history) => (
                <li key={`${history.section} ${history.id}`}>
                  <History history={history} readsJournal={readsJournal} />
                </li>
              ))}
            </ul>
          </Section>
        ))}
      {none.length === 0 ? null : (
        <Section id="none" title="Nothing else">
          <p>Not on record: {joinedByAnd(none.map(({ title }) => title.toLowerCase()))}.</p>
        </Section>
      )}
    </>
  )
}

function History({ history: { versions }, readsJournal }: { history: ShownHistory; readsJournal: boolean }) {
  return versions.map((version) =>
    version.closed === undefined ? (
      <div key={version.recorded.n}>
        <p className="entry">
          <Said>{`${capitalised(version.says)}.`}</Said>
        </p>
        <Entry
          entry={version.recorded}
          verb={version.corrects === undefined ? 'Recorded' : 'Corrected'}
          {...{ readsJournal }}
        />
      </div>
    ) : (
      <Superseded
        key={version.recorded.n}
        version={version}
        closed={version.closed}
        readsJournal={readsJournal}
      />
    ),
  )
}

/** A version that counts no more: struck, said to be so in words, with who closed it, when and why. */
function Superseded({
  version,
  closed,
  readsJournal,
}: {
  version: ShownVersion
  closed: ShownEntry
  readsJournal: boolean
}) {
  return (
    <div className="superseded">
      <p className="entry">
        <span className="caption">Counts no more: </span>
        <s>
          <Said>{`${capitalised(version.says)}.`}</Said>
        </s>
      </p>
      <Entry entry={version.recorded} verb="Recorded" readsJournal={readsJournal} />
      <Entry entry={closed} verb="Closed" readsJournal={readsJournal} />
    </div>
  )
}

/** The entry of the journal behind a version: who, when and, where the reader may know it, what was done. */
function Entry({ entry, verb, readsJournal }: { entry: ShownEntry; verb: string; readsJournal: boolean }) {
  const { n, at, by, said } = entry
  return (
    <p className="caption">
      {verb} in {readsJournal ? <a href={`/journal/${n}`}>entry {n}</a> : `entry ${n}`} by <bdi>{by}</bdi>,{' '}
      {momentText(at)}
      <Said>{said === undefined ? '.' : `: ${said}.`}</Said>
    </p>
  )
}
