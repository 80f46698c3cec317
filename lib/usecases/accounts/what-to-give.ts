import { z } from 'zod'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { success } from '../../core/kernel/result.ts'
import { query } from '../door/use-case.ts'

/** What an account may be given: the units and organisations for which a role may be, by name. */
export const whatToGive = query({
  name: 'accounts/what-to-give',
  permission: 'manage-accounts',
  input: z.strictObject({}),
  load: (world) => success(world),
  about: () => ({ kind: 'program' }),
  answer: ({ snapshot: { program, n }, today }) => {
    const units = program.places.filter(({ kind }) => kind === 'unit')
    const choices = (facts: typeof units | typeof program.organisations) =>
      facts
        .filter((fact) => isKnownAt(fact, n))
        .map(({ id, name }) => ({ id, name }))
        .sort((left, right) => left.name.localeCompare(right.name, 'en'))
    return { units: choices(units), organisations: choices(program.organisations), today }
  },
})
