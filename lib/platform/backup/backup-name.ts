import path from 'node:path'

/**
 * The file of a backup that nobody named: beside the database, so that a copy elsewhere is still wanted.
 * @param why what it was taken before, as it may stand in the name of a file
 */
export function backupFile(dataFolder: string, at: Date, why?: string): string {
  const moment = `${at.toISOString().slice(0, 19).replaceAll(':', '')}Z`
  const name = why === undefined ? moment : `${moment}-${why}`
  return path.join(dataFolder, 'backups', `kerfbook-${name}.backup.gz`)
}
