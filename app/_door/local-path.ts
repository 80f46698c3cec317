/**
 * Where to go after signing in: a page of ours, whatever the address says. Another site, or what a browser could take
 * for one, becomes the first page.
 */
export function localPath(asked: unknown): string {
  if (typeof asked !== 'string' || !/^\/(?![/\\])[^\\\p{Cc}]*$/u.test(asked)) return '/'
  const here = 'http://here.invalid'
  return URL.canParse(asked, here) && new URL(asked, here).origin === here ? asked : '/'
}
