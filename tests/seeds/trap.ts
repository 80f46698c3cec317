import type { Work } from '../../lib/core/authority/answer.ts'
import { work } from './demo.ts'

/** One trap of the demo: what it is, whom it is about, what is asked, and what each run of days is told. */
export type Trap = readonly [
  trap: string,
  person: string,
  work: Work,
  days: readonly [string, string],
  told: readonly (readonly [lastDay: string, standing: string, ...findings: string[]])[],
]

/** Days in the middle of the season. */
export const JULY = ['2027-07-08', '2027-07-15'] as const

/** Least complex bucking of a small log on two hands. */
export const LEAST = work('bucking', 'least', 14)
/** Moderately complex bucking. */
export const MODERATE = work('bucking', 'moderate', 20)
/** Highly complex bucking. */
export const HIGH = work('bucking', 'high', 20)
/** Moderately complex felling. */
export const FELL = work('felling', 'moderate', 22)
/** Least complex felling. */
export const FELL_LEAST = work('felling', 'least', 18)
