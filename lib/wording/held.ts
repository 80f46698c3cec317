import type { Names } from './names.ts'

/** Something that a person holds, or that stops them; a card and a suspension by the id of their record. */
export type Held =
  | { kind: 'card'; card: string }
  | { kind: 'certificate'; subject: string }
  | { kind: 'agreement'; organisation: string }
  | { kind: 'designation'; role: 'instructor' | 'evaluator' }
  | { kind: 'permission' }
  | { kind: 'suspension'; suspension: string }

/** What a person holds, as a short name: `CPR`, `card K-0431`, `agreement with Lantern Creek Trail Volunteers`. */
export function heldText(held: Held, names: Names): string {
  switch (held.kind) {
    case 'card':
      return names.card(held.card)
    case 'certificate':
      return names.subject(held.subject)
    case 'agreement':
      return `agreement with ${names.organisation(held.organisation)}`
    case 'designation':
      return `designation as ${held.role}`
    case 'permission':
      return 'guardian’s permission'
    case 'suspension':
      return 'suspension or stand-down'
  }
}
