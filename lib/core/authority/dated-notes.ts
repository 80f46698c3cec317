import type { Span } from '../calendar/spans.ts'
import { byText } from '../kernel/order.ts'
import type { Note } from './answer.ts'
import { noteKey } from './finding-order.ts'
import type { DayNote } from './notes.ts'

/**
 * The notes of everybody's answers about the same days on which nothing changes. Those that are about nobody are dated
 * once and shared.
 */
export class DatedNotes {
  private readonly days: readonly Span[]
  private readonly shared = new Map<string, readonly Note[]>()

  /** `beside` is the note of the work itself, if there is one. */
  constructor(
    days: Span,
    private readonly beside: DayNote | undefined,
  ) {
    this.days = [days]
  }

  /** Notes in the order of their keys, with the note of the work and the days. */
  of(notes: readonly DayNote[]): readonly Note[] {
    const edition = editionAlone(notes)
    if (edition === undefined) return this.dated(notes)
    let shared = this.shared.get(edition)
    if (shared === undefined) {
      shared = this.dated(notes)
      this.shared.set(edition, shared)
    }
    return shared
  }

  private dated(notes: readonly DayNote[]): readonly Note[] {
    const { beside, days } = this
    const dated = notes.map((note): Note => ({ ...note, days }))
    if (beside === undefined) return dated
    const key = noteKey(beside)
    const at = notes.findIndex((note) => byText(key, noteKey(note)) < 0)
    dated.splice(at < 0 ? notes.length : at, 0, { ...beside, days })
    return dated
  }
}

/** The edition that notes are about where they are about nothing else; empty where there are none. */
function editionAlone(notes: readonly DayNote[]): string | undefined {
  const [only] = notes
  if (only === undefined) return ''
  return notes.length === 1 && only.kind === 'successor-not-held' ? only.records[0] : undefined
}
