import { randomUUID } from 'node:crypto'
import { z } from 'zod'
import { ask } from '../../core/authority/ask.ts'
import { ENGINE_VERSION } from '../../core/authority/engine-version.ts'
import { workRuns } from '../../core/authority/work-runs.ts'
import { canonicalJson, type JsonValue } from '../../core/kernel/canonical-json.ts'
import { success } from '../../core/kernel/result.ts'
import { digestOfAnswer, writeAnswer, type KeptAnswer } from '../../store/answers.ts'
import { command } from '../door/use-case.ts'
import { loadAsked } from './asked.ts'
import { questionSchema } from './question.schema.ts'

/** For what an answer is relied on. */
const RELIED_ON = ['printed', 'exported'] as const

/**
 * Keeps an answer that somebody relies on, as it is given: with the journal number, the editions and the engine's
 * version, so that it can be asked again and compared. An entry says its id and digest, so that a head of the journal
 * vouches for it.
 */
export const keepAnswer = command({
  name: 'authority/keep-answer',
  permission: 'read-standing',
  input: z.strictObject({ question: questionSchema, because: z.enum(RELIED_ON) }),
  prepare: () => Promise.resolve(success(randomUUID())),
  load: (world, id, { question }, actor) => {
    const asked = loadAsked(world, question, actor)
    return asked.ok ? success({ ...asked.value, id }) : asked
  },
  about: ({ named }) => ({ kind: 'people', people: named }),
  decide: ({ id, authority, question, n }, { question: asked, because }, { now, today }, actor) => {
    const editions = workRuns(authority, question).map(({ first, last, edition }) => ({
      first,
      last,
      ...(edition === undefined ? {} : { edition: edition.edition.id }),
    }))
    return success<KeptAnswer>({
      id,
      at: now,
      ...(actor === undefined ? {} : { account: actor.account }),
      question: { ...asked, because },
      n,
      today,
      editions,
      engine: ENGINE_VERSION,
      body: canonicalJson(plain(ask(authority, question))),
    })
  },
  save: () => [{ changes: { record: [], withdraw: [] } }],
  journal: (kept) => ({
    event: 'answer-kept',
    said: { answer: { id: kept.id, digest: digestOfAnswer(kept) } },
  }),
  desk: (kept, tx) => writeAnswer(tx, kept),
  value: ({ id, n }) => ({ id, n }),
})

function plain(value: object): JsonValue {
  return JSON.parse(JSON.stringify(value)) as JsonValue
}
