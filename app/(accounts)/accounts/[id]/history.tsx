import type {
  AccountPage,
  AccountVersion,
  GrantEntry,
  RoleVersion,
} from '../../../../lib/usecases/accounts/read-account.ts'
import { momentText } from '../../../../lib/wording/days.ts'
import { grantDays, grantText } from '../account-words.ts'

/** The history of an account: itself, then every role that it ever had, the newest first. */
export function History({ account: { versions, grants, today, timeZone } }: { account: AccountPage }) {
  return (
    <ul className="histories">
      <li>
        {versions.map((version, at) => (
          <Change
            key={version.recorded.n}
            entry={version.recorded}
            timeZone={timeZone}
            because={version.because}
          >
            {accountVerb(version, at)}
          </Change>
        ))}
      </li>
      {grants.map((grant) => (
        <li key={grant[0]?.id}>
          <Grant versions={grant} today={today} timeZone={timeZone} />
        </li>
      ))}
    </ul>
  )
}

function accountVerb({ closed }: AccountVersion, at: number): string {
  if (closed) return 'Account ended'
  return at === 0 ? 'Account given' : 'Account opened again'
}

/** A role in its latest version, struck where it counts no more, with what was done about it in turn. */
function Grant({
  versions,
  today,
  timeZone,
}: {
  versions: readonly RoleVersion[]
  today: string
  timeZone: string
}) {
  const [latest] = versions
  if (latest === undefined) return null
  const isOver = latest.endedBecause !== undefined || (latest.lastDay !== undefined && latest.lastDay < today)
  const text = (
    <>
      <bdi>{grantText(latest)}</bdi>, {grantDays(latest)}
    </>
  )
  const inTurn = [...versions].reverse()
  return (
    <div className={isOver ? 'superseded' : undefined}>
      <p className="entry">
        {isOver ? (
          <>
            <span className="caption">Counts no more: </span>
            <s>{text}</s>
          </>
        ) : (
          text
        )}
      </p>
      {inTurn.map((version, at) => (
        <Change
          key={version.recorded.n}
          entry={version.recorded}
          timeZone={timeZone}
          because={version.endedBecause ?? version.because}
        >
          {roleVerb(version, at)}
        </Change>
      ))}
    </div>
  )
}

function roleVerb(version: RoleVersion, at: number): string {
  if (version.endedBecause !== undefined) return 'Ended at once'
  return at === 0 ? 'Given' : `Last day set, ${grantDays(version)}`
}

/** Who did it, when and why, with the entry of the journal. */
function Change({
  entry: { n, at, by },
  timeZone,
  because,
  children,
}: {
  entry: GrantEntry
  timeZone: string
  because: string | undefined
  children: string
}) {
  return (
    <p className="small">
      {children} in <a href={`/journal/${n}`}>entry {n}</a> by <bdi>{by}</bdi>, {momentText(at, timeZone)}
      {because === undefined ? (
        '.'
      ) : (
        <>
          : <bdi>{because}</bdi>
        </>
      )}
    </p>
  )
}
