import { accountOf } from '../../access/actors.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import type { Program } from '../../core/program/program.schema.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import { EVENT_KINDS, eventSentence, type EventKind } from '../../wording/events.ts'

/** Who stands behind an entry that no account wrote: the start, or somebody on the command line of that machine. */
const THE_MACHINE = 'Kerfbook, from its own machine'

/**
 * The program as a file states it: an entry that a file brought in its own words, one of a command with the name of
 * who gave it and the sentence of what it did.
 */
export function programToWrite(snapshot: Snapshot): Program {
  const remarks = new Map(snapshot.remarks.map((remark) => [remark.id, remark]))
  const entries = snapshot.program.entries.map((entry) => {
    const written = snapshot.commands.get(entry.n)
    const { why, paper } = remarks.get(`entry-${entry.n}`) ?? {}
    const said = { ...(why === undefined ? {} : { why }), ...(paper === undefined ? {} : { paper }) }
    if (written === undefined) return { ...entry, ...said }
    return {
      ...entry,
      ...said,
      actor: nameOf(snapshot, written.actor),
      event: isEvent(written.event) ? eventSentence(written.event) : written.event,
    }
  })
  return { ...snapshot.program, entries }
}

/** The name of the person behind an account, else what they sign in as. */
export function nameOf(snapshot: Snapshot, account: string | undefined): string {
  if (account === undefined) return THE_MACHINE
  const fact = accountOf(snapshot, account)
  const person = snapshot.program.people.find((one) => one.id === fact?.person && isKnownAt(one, snapshot.n))
  return person?.name ?? fact?.signInName ?? account
}

function isEvent(word: string): word is EventKind {
  return EVENT_KINDS.some((kind) => kind === word)
}
