import type { ReactNode } from 'react'

/** Something to know before going on; `kept` marks what says that somebody's words or acts are safe. */
export function Notice({ kind = 'said', children }: { kind?: 'said' | 'kept'; children: ReactNode }) {
  return <div className={kind === 'kept' ? 'notice kept' : 'notice'}>{children}</div>
}
