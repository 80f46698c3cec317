/** The last entry of a journal at some time, as held outside of it. `hash` in small hexadecimal digits. */
export type Head = { n: number; hash: string }

const HEAD = /^([1-9][0-9]{0,9}):([0-9a-f]{64})$/
const LOG_LINE = /^([1-9][0-9]{0,9}) ([0-9a-f]{64}) \S+$/

/** A head as it is printed: `17:` and 64 hexadecimal digits. */
export function headText({ n, hash }: Head): string {
  return `${n}:${hash}`
}

/** Reads a head as it was printed; capitals do not matter. Nothing where it is none. */
export function readHead(text: string): Head | undefined {
  return headOf(HEAD.exec(text.trim().toLowerCase()))
}

/** A line of the log of heads: the number, the hash and the moment of the machine at which it was kept. */
export function headLogLine({ n, hash }: Head, moment: string): string {
  return `${n} ${hash} ${moment}\n`
}

/** The heads of a log, and the numbers (from 1) of lines that hold none. */
export type HeadLog = { heads: readonly Head[]; unreadable: readonly number[] }

/** Reads a log of heads. A last line without its end is a write that was cut off, and says nothing. */
export function readHeadLog(text: string): HeadLog {
  const heads: Head[] = []
  const unreadable: number[] = []
  const lines = text.split('\n').slice(0, -1)
  for (const [index, line] of lines.entries()) {
    const head = headOf(LOG_LINE.exec(line))
    if (head === undefined) unreadable.push(index + 1)
    else heads.push(head)
  }
  return { heads, unreadable }
}

function headOf(match: RegExpExecArray | null): Head | undefined {
  const [, n, hash] = match ?? []
  return n === undefined || hash === undefined ? undefined : { n: Number(n), hash }
}
