/** Letters that nobody mistakes for one another when read out or copied by hand: no I, L, O or U. */
const LETTERS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'
const LENGTH = 8

const FNV_OFFSET = 0xcbf29ce484222325n
const FNV_PRIME = 0x100000001b3n
const SIXTY_FOUR_BITS = (1n << 64n) - 1n

/**
 * The number of an error, as it stands on the page and in the log: eight letters and figures, the same for the same
 * digest. It is for finding a line, and secret from nobody.
 * @param digest what names the error on both sides: the framework's digest, or the id of the request
 */
export function errorNumber(digest: string): string {
  let hash = FNV_OFFSET
  for (let at = 0; at < digest.length; at += 1) {
    hash = ((hash ^ BigInt(digest.charCodeAt(at))) * FNV_PRIME) & SIXTY_FOUR_BITS
  }
  return Array.from(
    { length: LENGTH },
    (_, place) => LETTERS[Number((hash >> BigInt(5 * place)) & 31n)],
  ).join('')
}
