import type { LineStatus } from '../../lib/usecases/people/standing-line.ts'
import { StatusMark } from '../_parts/status-mark.tsx'

/** The mark of a line; what has no shape of its own is said in words alone. */
export function LineMark({ of: status }: { of: LineStatus }) {
  if (status === 'no-card') return <span className="mark">No card</span>
  if (status === 'no') return <span className="mark">No</span>
  return <StatusMark of={status} />
}
