import type { Status } from '../../lib/drawings/status.ts'

/** The word of each status. */
export const STATUS_WORDS: Readonly<Record<Status, string>> = {
  current: 'Current',
  'lapses-soon': 'Lapses soon',
  lapsed: 'Lapsed',
  suspended: 'Suspended',
  'not-yet': 'Not yet',
  'not-on-record': 'Not on record',
}

/** A status: its word beside its shape. In a chain, where a sentence says it all, the shape stands alone. */
export function StatusMark({ of: status }: { of: Status }) {
  return (
    <span className="mark">
      <StatusShape of={status} />
      {STATUS_WORDS[status]}
    </span>
  )
}

/** The shape of a status, for where its word stands beside it already. */
export function StatusShape({ of: status }: { of: Status }) {
  return (
    <svg className="shape" viewBox="0 0 16 16" aria-hidden="true" focusable="false">
      <Shape of={status} />
    </svg>
  )
}

function Shape({ of: status }: { of: Status }) {
  switch (status) {
    case 'current':
      return <circle cx="8" cy="8" r="6.5" fill="currentColor" />
    case 'lapses-soon':
      return (
        <>
          <circle cx="8" cy="8" r="5.75" fill="none" stroke="currentColor" strokeWidth="1.5" />
          <path d="M8 2.2a5.8 5.8 0 0 0 0 11.6z" fill="currentColor" />
        </>
      )
    case 'lapsed':
      return (
        <>
          <circle cx="8" cy="8" r="5.25" fill="none" stroke="currentColor" strokeWidth="1.5" />
          <path d="M0 8H16" stroke="currentColor" strokeWidth="2" />
        </>
      )
    case 'suspended':
      return <path d="M2.5 2.5h11v11h-11z" fill="currentColor" />
    case 'not-yet':
      return (
        <circle
          cx="8"
          cy="8"
          r="5.75"
          fill="none"
          stroke="currentColor"
          strokeWidth="2"
          strokeDasharray="0.1 3.512"
          strokeLinecap="round"
        />
      )
    case 'not-on-record':
      return (
        <path
          d="M8 2.2 14.2 13.4H1.8z"
          fill="none"
          stroke="currentColor"
          strokeWidth="1.5"
          strokeLinejoin="round"
        />
      )
  }
}
