import { z } from 'zod'
import { askBriefly, askCompany } from '../../core/authority/ask.ts'
import type { Authority } from '../../core/authority/authority-index.ts'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import type { Instant } from '../../core/calendar/instants.ts'
import { newestAnswers } from '../../store/answers.ts'
import { questionOf } from '../authority/asked.ts'
import { questionSchema } from '../authority/question.schema.ts'
import type { World } from '../door/use-case.ts'

/** How many of the answers kept last are asked again. */
export const MOST_KEPT_ASKED = 200

/** An answer that somebody relied on, made ready to be asked again. */
export type KeptToAsk = {
  id: string
  at: Instant
  today: CalendarDate
  question: z.infer<typeof questionSchema>
  /** Whom it answered about. */
  persons: readonly string[]
}

/** The answers kept last, and how many there are; what was asked as known at an entry is settled for good and left out. */
export async function keptToAsk({ runtime }: World): Promise<{ kept: readonly KeptToAsk[]; all: number }> {
  const { rows, all } = await newestAnswers(runtime.store.prisma, MOST_KEPT_ASKED)
  return {
    all,
    kept: rows.flatMap(({ question: { because: _because, ...asked }, body, ...row }) => {
      const question = questionSchema.safeParse(asked)
      const answers = bodySchema.safeParse(JSON.parse(body))
      if (!question.success || !answers.success || question.data.knownAt !== undefined) return []
      const persons = answers.data.answers.map(({ person }) => person)
      return [{ ...row, question: question.data, persons }]
    }),
  }
}

const bodySchema = z.object({ answers: z.array(z.object({ person: z.string() })) })

/** Those of them that would say something else after than before. */
export function changedAnswers(
  kept: readonly KeptToAsk[],
  before: Authority,
  after: Authority,
): readonly KeptToAsk[] {
  return kept.filter((one) => askedAgain(one, before) !== askedAgain(one, after))
}

/** What an answer says when it is asked again; why it cannot be asked is an answer too. */
function askedAgain({ question, today, persons }: KeptToAsk, authority: Authority): string {
  const ready = questionOf(authority, question, today)
  if (!ready.ok) return JSON.stringify(ready.problem)
  const known = persons.filter((person) => authority.person(person) !== undefined)
  const { company } = question
  const asked = {
    ...ready.value,
    persons: known,
    ...(company === undefined ? {} : { company: company.map((person) => ({ person })) }),
  }
  const judged = company === undefined ? undefined : askCompany(authority, asked)
  return JSON.stringify([known, askBriefly(authority, asked), judged])
}
