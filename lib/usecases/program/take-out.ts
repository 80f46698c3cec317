import { z } from 'zod'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { success, refusal } from '../../core/kernel/result.ts'
import { SECTION_NAMES } from '../../core/program/sections.ts'
import { writeProgram } from '../../core/program/write-program.ts'
import { refusedBecause } from '../door/outcome.ts'
import { query } from '../door/use-case.ts'
import { programToWrite } from './program-to-write.ts'

/** The whole program as a program file, with every entry's number; of accounts the entries without their facts. */
export const takeOutProgram = query({
  name: 'program/take-out',
  permission: 'take-out-program',
  stepUp: true,
  input: z.strictObject({}),
  load: ({ snapshot }) =>
    snapshot.founded ? success(snapshot) : refusal(refusedBecause({ kind: 'not-founded' })),
  about: () => ({ kind: 'program' }),
  answer: (snapshot) => ({
    n: snapshot.n,
    head: snapshot.head,
    facts: SECTION_NAMES.reduce((sum, name) => sum + snapshot.program[name].length, 0),
    people: snapshot.program.people.filter((fact) => isKnownAt(fact, snapshot.n)).length,
    text: writeProgram(programToWrite(snapshot)),
  }),
  looked: ({ n, people }) => ({ question: { file: 'program', n }, count: people }),
})
