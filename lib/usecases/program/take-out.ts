import { z } from 'zod'
import { success, refusal } from '../../core/kernel/result.ts'
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
    text: writeProgram(programToWrite(snapshot)),
  }),
  looked: ({ n }) => ({ question: 'program-file', count: n }),
})
