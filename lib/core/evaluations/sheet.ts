import type { WorkKind } from '../rulebooks/words.ts'

/** An item of a sheet; a critical one wants `least` on its last attempt. */
export type SheetItem = { id: string; workKinds: readonly WorkKind[]; critical: boolean }

/** Why an attempt or an evaluation stops, and which of the two it ends; `unsafe` asks whether to stand somebody down. */
export type SheetStop = { id: string; ends: 'attempt' | 'evaluation'; unsafe: boolean }

/** What a sheet asks, as a book states it: the scale, how many attempts there are at most, its items, and its stops. */
export type Sheet = {
  edition: string
  scale: readonly { score: number; missing: boolean }[]
  attempts: number
  items: readonly SheetItem[]
  /** What a critical item wants on its last attempt, and up to which score an item must be answered in words. */
  critical: { least: number; answered: number }
  stops: readonly SheetStop[]
}
