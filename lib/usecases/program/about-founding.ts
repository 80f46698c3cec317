import { z } from 'zod'
import { success } from '../../core/kernel/result.ts'
import { query } from '../door/use-case.ts'
import { hasManager } from './managers.ts'

/** What the page to begin with has to know: whether a program is here already, and which books ship. */
export const aboutFounding = query({
  name: 'program/about-founding',
  permission: 'anybody',
  input: z.strictObject({}),
  load: (world) => success(world),
  about: () => ({ kind: 'nothing' }),
  answer: (world) => ({
    begun: hasManager(world),
    program: world.snapshot.founded ? world.snapshot.program.program.name : undefined,
    /** Which one the page proposes, where the machine was told one. */
    timeZone: world.runtime.proposedTimeZone,
    books: world.runtime.shippedBooks.map(({ book }) => ({ id: book.id, name: book.name, says: book.says })),
  }),
})
