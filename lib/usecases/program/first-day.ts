import { z } from 'zod'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import { dateField } from '../../core/calendar/dates.schema.ts'
import { textField } from '../../core/kernel/fields.schema.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { entryNumber } from '../../core/kernel/versions.schema.ts'
import { readProgram } from '../../core/program/read-program.ts'
import { problemSentence } from '../../wording/problems.ts'
import type { NewFact } from '../../store/write.ts'
import { refusedBecause, type NotDone } from '../door/outcome.ts'
import { command, nothingToPrepare, query } from '../door/use-case.ts'
import { handOf, remarkOf } from '../records/hand-of.ts'
import { mergedProgram } from './merged-program.ts'

/** What a program is: its name, its zone, its book, and from when its own cards come from decisions only. */
export const aboutProgram = query({
  name: 'program/about',
  permission: 'read-books',
  input: z.strictObject({}),
  load: ({ snapshot }) => {
    const { program, programVersion } = snapshot
    const book = program.books.find(({ id }) => id === program.program.book)
    return success({
      ...program.program,
      bookName: book?.name ?? program.program.book,
      ...(programVersion === undefined ? {} : { version: programVersion }),
    })
  },
  about: () => ({ kind: 'nothing' }),
  answer: (about) => about,
})

/**
 * Sets the first day of deciding here: the program's own cards effective from that day on come from decisions only.
 * Refused where a card on record would then be neither decided nor carried in.
 */
export const setFirstDayOfDeciding = command({
  name: 'program/set-first-day-of-deciding',
  permission: 'keep-program',
  input: z.strictObject({ version: entryNumber, day: dateField, why: textField }),
  prepare: nothingToPrepare,
  load: ({ snapshot }) => success({ recordedIn: snapshot.programVersion }),
  about: () => ({ kind: 'program' }),
  seen: ({ recordedIn }, { version }) => ({
    version,
    current: recordedIn === undefined ? undefined : { id: 'program', recordedIn },
  }),
  decide: (_loaded, { version, day, why }, { snapshot, now }, actor): Result<Setting, NotDone> => {
    const { program, n, invented } = snapshot
    if (program.program.firstDayOfDeciding === day)
      return refusal(refusedBecause({ kind: 'nothing-to-correct' }))
    const head = { ...program.program, firstDayOfDeciding: day }
    const read = readProgram(mergedProgram({ ...program, program: head }, n, [], [], now))
    if (!read.ok) {
      const [first] = read.problem
      const message = first === undefined ? '' : problemSentence(first)
      return refusal({
        kind: 'invalid',
        fields: [{ path: 'day', message: `${read.problem.length} cards stand against it. ${message}` }],
      })
    }
    const fact: NewFact = { section: 'program', fact: { ...head, invented, supersedes: version } }
    return success({ day, record: [fact, ...remarkOf(n + 1, { why }, handOf(snapshot, actor))] })
  },
  save: ({ record }) => [{ changes: { record, withdraw: [] } }],
  journal: ({ day }) => ({ event: 'first-day-of-deciding-set', said: { day } }),
  value: ({ day }) => ({ day }),
})

type Setting = { day: CalendarDate; record: readonly NewFact[] }
