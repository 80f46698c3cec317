import { joinedByAnd } from './lists.ts'

/** Why the tables of a database could not be brought to this version. Data, never sentences. */
export type MigrationTrouble =
  | { kind: 'migration-changed'; name: string }
  | { kind: 'migration-failed'; name: string }
  | { kind: 'newer-schema'; names: readonly string[] }
  | { kind: 'migrations-out-of-order'; missing: string; applied: string }
  | { kind: 'tables-not-ours'; database: string }
  | { kind: 'not-migrated'; names: readonly string[] }
  | { kind: 'migration-broke'; name: string; message: string }
  | { kind: 'migrating-elsewhere'; seconds: number }
  | { kind: 'role-may-not-migrate'; role: string }

export type MigrationTroubleKind = MigrationTrouble['kind']

/** A trouble as one or two plain sentences: what is so, and what to do about it. */
export function migrationTroubleSentence(trouble: MigrationTrouble): string {
  // The key picks the function for its own kind; TypeScript cannot follow that across the union.
  const sentence = SENTENCES[trouble.kind] as (trouble: MigrationTrouble) => string
  return sentence(trouble)
}

const SENTENCES: {
  [Kind in MigrationTroubleKind]: (trouble: Extract<MigrationTrouble, { kind: Kind }>) => string
} = {
  'migration-changed': ({ name }) =>
    `The migration ${name} was applied to this database with another text than this copy of Kerfbook holds. Nothing was changed; put the file back as it was released.`,
  'migration-failed': ({ name }) =>
    `The migration ${name} was begun on this database by the Prisma command line and not finished. Nothing was changed; set it right with "npx prisma migrate resolve" first.`,
  'newer-schema': ({ names }) =>
    `This database was brought further by a newer Kerfbook: it holds ${migrations(names)}, which this copy does not know. Nothing was changed; start the newer version.`,
  'migrations-out-of-order': ({ missing, applied }) =>
    `This database holds the migration ${applied} without ${missing}, which comes before it. Nothing was changed.`,
  'tables-not-ours': ({ database }) =>
    `The database ${database} holds tables that Kerfbook did not make. Nothing was changed; name an empty database.`,
  'not-migrated': ({ names }) =>
    `This database still lacks ${migrations(names)}. Start Kerfbook with DATABASE_OWNER_URL set, so that it may bring the tables to this version.`,
  'migration-broke': ({ name, message }) =>
    `The migration ${name} broke off and was taken back whole: "${message}".`,
  'migrating-elsewhere': ({ seconds }) =>
    `Another program has been changing the tables of this database for ${seconds} seconds. Nothing was changed; start again when it is done.`,
  'role-may-not-migrate': ({ role }) =>
    `The role ${role} may not make tables in this database. Name the owner's role in DATABASE_OWNER_URL.`,
}

function migrations(names: readonly string[]): string {
  return `${names.length === 1 ? 'the migration' : 'the migrations'} ${joinedByAnd(names)}`
}
