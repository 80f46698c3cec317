/** The environment of PostgreSQL's programs: none of ours, where `PGDATA` or `PGPORT` would change what they do. */
export function serverEnvironment(): NodeJS.ProcessEnv {
  const { PATH = '/usr/bin:/bin', NODE_ENV } = process.env
  return { PATH, NODE_ENV, LC_ALL: 'C', TZ: 'UTC' }
}
