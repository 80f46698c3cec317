/** A path of ours as an address that can be sent to somebody. */
export function publicAddress(path: string): string {
  // The server sets it before it serves the first page: what people type to come here.
  return new URL(path, process.env['NEXTAUTH_URL']).href
}
