/** An address on a Unix socket, as `pg` and Prisma's adapter read it: the folder stands in `host`. */
export function socketUrl(place: {
  role: string
  password: string
  database: string
  folder: string
}): string {
  const { role, password, database, folder } = place
  const name = encodeURIComponent
  return `postgresql://${name(role)}:${name(password)}@/${name(database)}?host=${name(folder)}`
}

/** Where an address leads, for people: `kerfbook on db.example:5432 as kerfbook_app`, without the password. */
export function urlInWords(url: string): { server: string; database: string; role: string } {
  // An address without a host is none to the platform; any host will do to read the rest.
  const parsed = new URL(url.replace('@/', '@socket/'))
  const folder = parsed.searchParams.get('host')
  const port = parsed.port === '' ? '5432' : parsed.port
  return {
    server: folder ?? `${parsed.hostname}:${port}`,
    database: decodeURIComponent(parsed.pathname.slice(1)),
    role: decodeURIComponent(parsed.username),
  }
}
