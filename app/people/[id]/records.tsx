import type { PersonPage } from '../../../lib/usecases/people/person.ts'
import type {
  PersonSection,
  ShownHistory,
  ShownVersion,
} from '../../../lib/usecases/people/record-history.ts'
import type { ShownEntry } from '../../../lib/usecases/people/shown-entries.ts'
import type { RecordSection } from '../../../lib/usecases/records/record-kinds.ts'
import { momentText } from '../../../lib/wording/days.ts'
import { asSentence, capitalised, joinedByAnd } from '../../../lib/wording/lists.ts'
import { Said } from '../../_parts/said.tsx'
import { Section } from '../../_parts/section.tsx'
import { enterPath } from '../../records/enter-path.ts'
import { recordPath, SECTION_WORDS } from '../../records/section-words.ts'

/** The records of a person as the page groups them. */
const GROUPS: readonly {
  id: string
  title: string
  of: readonly PersonSection[]
  /** What may be entered here by hand. */
  enters?: Exclude<RecordSection, 'people'>
}[] = [
  {
    id: 'cards',
    title: 'Cards',
    of: ['cards', 'endings', 'resolutions', 'extensions'],
    enters: 'cards',
  },
  { id: 'certificates', title: 'Certificates', of: ['certificates'], enters: 'certificates' },
  {
    id: 'suspensions',
    title: 'Suspensions and stand-downs',
    of: ['suspensions', 'lifts'],
    enters: 'suspensions',
  },
  { id: 'memberships', title: 'Memberships', of: ['memberships'], enters: 'memberships' },
  {
    id: 'permissions',
    title: 'Guardian’s permission',
    of: ['permissions'],
    enters: 'permissions',
  },
  {
    id: 'designations',
    title: 'Designations',
    of: ['designations'],
    enters: 'designations',
  },
  {
    id: 'assignments',
    title: 'Training assignments',
    of: ['assignments'],
    enters: 'assignments',
  },
  { id: 'person', title: 'The person', of: ['people'] },
  { id: 'joins', title: 'Joined records', of: ['joins'], enters: 'joins' },
]

/** Every record about a person with its history. Nothing is written over: what was corrected stands struck under it. */
export function Records({
  person,
  readsJournal,
  writes,
}: {
  person: PersonPage
  readsJournal: boolean
  /** Of which kinds the visitor enters records. */
  writes: (section: RecordSection) => boolean
}) {
  const groups = GROUPS.map((group) => ({
    ...group,
    histories: person.histories.filter(({ section }) => group.of.includes(section)),
  }))
  const none = groups.filter(({ histories }) => histories.length === 0)
  const entered = groups.flatMap(({ enters }) => (enters !== undefined && writes(enters) ? [enters] : []))
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
      {entered.length === 0 ? null : (
        <Section id="enter" title="Enter a record" caption="About this person, by hand or from paper.">
          <p className="row">
            {entered.map((section) => (
              <a key={section} className="button" href={enterPath(section, person.id)}>
                {capitalised(SECTION_WORDS[section].one)}
              </a>
            ))}
          </p>
        </Section>
      )}
      {none.length === 0 ? null : (
        <Section id="none" title="Nothing else">
          <p>Not on record: {joinedByAnd(none.map(({ title }) => title.toLowerCase()))}.</p>
        </Section>
      )}
    </>
  )
}

function History({
  history: { section, id, versions },
  readsJournal,
}: {
  history: ShownHistory
  readsJournal: boolean
}) {
  return versions.map((version, at) =>
    version.closed === undefined ? (
      <div key={version.recorded.n}>
        <p className="entry">
          <Said>{asSentence(version.says)}</Said>
        </p>
        <Entry
          entry={version.recorded}
          verb={version.corrects === undefined ? 'Recorded' : 'Corrected'}
          {...{ readsJournal }}
        />
        {at === 0 && isRecordSection(section) ? (
          <p className="small">
            <a href={recordPath(section, id)} aria-label={`This record: ${version.says}`}>
              This record
            </a>
          </p>
        ) : null}
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

/** Endings and lifts come from decisions, and have no page of their own. */
function isRecordSection(section: PersonSection): section is PersonSection & RecordSection {
  return Object.hasOwn(SECTION_WORDS, section)
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
          <Said>{asSentence(version.says)}</Said>
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
