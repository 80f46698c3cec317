import { createHash, randomBytes } from 'node:crypto'

/** 256 bits: nobody guesses it, and it fits a cookie and a link. */
const TOKEN_BYTES = 32

/** A new secret for a session or a link, safe in an address. */
export function newToken(): string {
  return randomBytes(TOKEN_BYTES).toString('base64url')
}

/** What is kept of a token: who reads the database can open nothing with it. */
export function tokenDigest(token: string): string {
  return createHash('sha256').update(token).digest('hex')
}

/** SHA-256 of a text. */
export function sha256(text: string | Uint8Array): Buffer {
  return createHash('sha256').update(text).digest()
}
