import type { EntryBehind, VersionRead } from '../../../../lib/usecases/records/read-record.ts'
import { dayText, momentText } from '../../../../lib/wording/days.ts'
import { asSentence } from '../../../../lib/wording/lists.ts'
import { Said } from '../../../_parts/said.tsx'

/** The versions of a record: what counts no more stands struck, and is said to be so in words. */
export function Versions({
  versions,
  readsJournal,
}: {
  versions: readonly VersionRead[]
  readsJournal: boolean
}) {
  return (
    <ul className="histories">
      {versions.map(({ fact, says, recorded, closed }) => (
        <li key={fact.recordedIn} className={closed === undefined ? undefined : 'superseded'}>
          <p className="entry">
            {closed === undefined ? (
              <Said>{asSentence(says)}</Said>
            ) : (
              <>
                <span className="caption">Counts no more: </span>
                <s>
                  <Said>{asSentence(says)}</Said>
                </s>
              </>
            )}
          </p>
          <Behind
            entry={recorded}
            verb={fact.supersedes === undefined ? 'Recorded' : 'Corrected'}
            readsJournal={readsJournal}
          />
          {closed === undefined ? null : <Behind entry={closed} verb="Closed" readsJournal={readsJournal} />}
        </li>
      ))}
    </ul>
  )
}

/** The entry behind a version: who, when, why, and the paper it was typed from. */
function Behind({
  entry,
  verb,
  readsJournal,
}: {
  entry: EntryBehind | undefined
  verb: string
  readsJournal: boolean
}) {
  if (entry === undefined) return null
  const { n, at, by, why, paper } = entry
  return (
    <>
      <p className="caption">
        {verb} in {readsJournal ? <a href={`/journal/${n}`}>entry {n}</a> : `entry ${n}`} by <bdi>{by}</bdi>,{' '}
        {momentText(at)}.
        {why === undefined ? null : (
          <>
            {' '}
            Why: <Said>{why}</Said>
          </>
        )}
      </p>
      {paper === undefined ? null : (
        <p className="caption">
          From paper of {dayText(paper.day)}, signed by <bdi>{paper.signedBy}</bdi>, received{' '}
          {dayText(paper.received)}, typed by <bdi>{paper.typedBy}</bdi>; it lies here:{' '}
          <bdi>{paper.lies}</bdi>
        </p>
      )}
    </>
  )
}
