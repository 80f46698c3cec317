import { withoutHidden } from './hidden-characters.ts'
import { asSeen } from './look-alikes.ts'

/**
 * A name as two readers compare it: without capitals, hidden characters, blanks at its ends and runs of blanks, and in
 * one form where Unicode has several for one letter. Names that fold alike look alike; accents still tell them apart.
 */
export function foldedName(name: string): string {
  return folded(name).replace(/\s+/gu, ' ').trim()
}

/**
 * The same for the number of a card, in which blanks say nothing, one dash is like another, and a letter of another
 * script is like the capital that looks the same.
 */
export function foldedNumber(number: string): string {
  return asSeen(folded(number).replace(/\s+/gu, '').toUpperCase())
}

function folded(text: string): string {
  // Large letters first: some small ones, like the two Greek sigmas and ß, are one only there.
  return withoutHidden(text.normalize('NFKC')).toUpperCase().toLowerCase().normalize('NFKC')
}
