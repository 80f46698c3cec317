import { fileURLToPath } from 'node:url'
import type { Role } from '../../lib/access/roles.ts'
import { isKnownAt } from '../../lib/core/kernel/versions.ts'
import { snapshotOf } from '../../lib/store/snapshot.ts'
import { underLock, type NewFact } from '../../lib/store/write.ts'
import { openRuntime } from '../../lib/usecases/door/open-runtime.ts'
import type { Kerfbook } from './kerfbook.ts'

const SEEDS = fileURLToPath(new URL('../../seeds', import.meta.url))

/** Gives an account of the demonstration another role in place of its one, while Kerfbook runs. */
export async function giveRole({ database }: Kerfbook, account: string, role: Role): Promise<void> {
  const { store, clock } = await openRuntime({ url: database.appUrl, seeds: SEEDS, begin: 'demo' })
  const { roles, n } = await snapshotOf(store)
  const current = roles.find((fact) => fact.account === account && isKnownAt(fact, n))
  if (current === undefined) throw new Error(`${account} has no role`)
  const { recordedIn, supersededIn: _supersededIn, ...fact } = current
  const corrected = {
    section: 'accountRoles',
    fact: { ...fact, role, supersedes: recordedIn },
  } satisfies NewFact
  await underLock(store, clock.now, ({ writeEntry }) =>
    writeEntry({ event: 'of a test', v: 1, about: [], outcome: null }, { record: [corrected], withdraw: [] }),
  )
  await store.close()
}
