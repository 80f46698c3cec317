import type { CalendarDate } from '../calendar/dates.ts'
import type { Inches } from '../kernel/measures.ts'
import type { RuleRef } from '../rulebooks/rule-ref.ts'
import type { Standing } from '../rulebooks/standing.ts'
import type { Complexity, Gives } from '../rulebooks/words.ts'
import type { Ending, Suspension } from './cards.schema.ts'

/** What about a card, its restrictions or a suspension is not shown to be met. */
export type CardFigures =
  | { kind: 'book-does-not-recognise'; book: string; level: string }
  | { kind: 'level-too-low'; level: string; complexity: Complexity | 'not-rated' }
  /** By a level; or by an assignment, which names its trainers. */
  | { kind: 'training-only'; level?: string; supervisor?: string; trainers?: readonly string[] }
  | { kind: 'needs-supervisor'; supervisor?: string }
  | { kind: 'complexity-unrated' }
  | { kind: 'card-not-yet-valid'; firstDay: CalendarDate }
  | { kind: 'card-no-longer-valid'; lastDay: CalendarDate; ended?: Ending['kind'] }
  | { kind: 'over-diameter'; limit: Inches; diameter: Inches }
  | { kind: 'outside-places'; places: readonly string[] }
  | { kind: 'outside-species'; allowed: readonly string[] }
  | { kind: 'above-greatest-complexity'; limit: Complexity; complexity: Complexity }
  | { kind: 'double-bucking-only' }
  | { kind: 'no-felling' }
  | { kind: 'words-unresolved'; text: string }
  | {
      kind: 'suspended'
      form: Suspension['form']
      because: Suspension['kind']
      notice: 'before' | 'after' | 'not-recorded'
    }
  | { kind: 'not-on-record'; what: 'last-day' | 'work-kinds' | 'hands' | 'species' | 'place' }

/** A finding of this room: the rule, the records, and what it still allows. */
export type CardFinding = { rule: RuleRef; records: readonly string[]; allows: Standing } & CardFigures

/** What about a card is met, for the whole chain of reasons. */
export type CardMet = { rule: RuleRef; records: readonly string[] } & (
  | { kind: 'card-in-force'; firstDay: CalendarDate; lastDay: CalendarDate }
  | { kind: 'cell-gives'; level: string; complexity: Complexity; gives: Gives }
  | { kind: 'inside-restriction'; restriction: string }
)
