import type { OpenRows } from '../../lib/usecases/authority/ask-for-page.ts'

/** In the address: every row is open, but for the ids that follow it with a minus. */
const EVERY = 'all'

/** Which rows are open, as the address says it. Who asks about one person alone wants to see why. */
export function readOpenRows({ open, person }: { open: string; person: string }): OpenRows {
  const words = open
    .split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '')
  if (words.length === 0) return { every: person.trim() !== '', but: [] }
  if (words[0] !== EVERY) return { every: false, but: words }
  return { every: true, but: words.slice(1).map((word) => word.replace(/^-/, '')) }
}

/** The words for the address that open or shut one row more; nothing where no row is open then. */
export function withRow({ every, but }: OpenRows, person: string, isOpen: boolean): string | undefined {
  const others = but.filter((id) => id !== person)
  const named = isOpen === every ? others : [...others, person]
  if (every) return [EVERY, ...named.map((id) => `-${id}`)].join(',')
  return named.length === 0 ? undefined : named.join(',')
}

/** The words for the address that open every row, or none. */
export function everyRow(isOpen: boolean): string | undefined {
  return isOpen ? EVERY : undefined
}
