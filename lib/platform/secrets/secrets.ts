import { randomBytes } from 'node:crypto'
import { sha256 } from './sha256.ts'

/** 256 bits: nobody guesses it, and it fits a cookie and a link. */
const TOKEN_BYTES = 32

/** A new secret for a session or a link, safe in an address. */
export function newToken(): string {
  return randomBytes(TOKEN_BYTES).toString('base64url')
}

/** What is kept of a token: who reads the database can open nothing with it. */
export function tokenDigest(token: string): string {
  return sha256(token)
}
