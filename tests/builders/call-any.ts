import { randomUUID } from 'node:crypto'
import type { Role } from '../../lib/access/roles.ts'
import type { JsonValue } from '../../lib/core/kernel/canonical-json.ts'
import { callCommand } from '../../lib/usecases/door/call-command.ts'
import { callDeskCommand } from '../../lib/usecases/door/call-desk.ts'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import type { Caller } from '../../lib/usecases/door/caller.ts'
import type { Outcome } from '../../lib/usecases/door/outcome.ts'
import type { Runtime } from '../../lib/usecases/door/runtime.ts'
import type { Command, DeskCommand, Query } from '../../lib/usecases/door/use-case.ts'
import type { UseCaseFace } from '../../lib/usecases/door/use-case.ts'

/** Calls a use case of whatever kind, as a client would: by its face alone. */
export function callAny(
  runtime: Runtime,
  face: UseCaseFace,
  input: unknown,
  caller: Caller,
): Promise<Outcome<unknown>> {
  // The kind says which declaration stands behind the face; TypeScript cannot follow that across the list.
  switch (face.kind) {
    case 'command': {
      const useCase = face as unknown as Command<unknown, unknown, unknown, unknown, JsonValue>
      return callCommand(runtime, useCase, { input, command: randomUUID() }, caller)
    }
    case 'desk':
      return callDeskCommand(
        runtime,
        face as unknown as DeskCommand<unknown, unknown, unknown, unknown>,
        { input },
        caller,
      )
    case 'query':
      return callQuery(runtime, face as unknown as Query<unknown, unknown, unknown>, { input }, caller)
  }
}

/** Somebody signed in under an account of the demonstration, with other roles than it has. */
export function callerAs(
  account: string,
  roles: readonly { role: Role; unit?: string; organisation?: string }[],
  person?: string,
): Caller {
  return {
    kind: 'account',
    actor: { account, roles, ...(person === undefined ? {} : { person }) },
    session: 'a session of a test',
    steppedUp: true,
  }
}
