import { z } from 'zod'
import { ask } from '../../core/authority/ask.ts'
import { ENGINE_VERSION } from '../../core/authority/engine-version.ts'
import { workRuns } from '../../core/authority/work-runs.ts'
import { canonicalJson, type JsonValue } from '../../core/journal/canonical-json.ts'
import { writeAnswer } from '../../store/answers.ts'
import { actorOf } from '../door/caller.ts'
import { admitAbout } from '../door/admit.ts'
import { done } from '../door/outcome.ts'
import { deskCommand, nothingToPrepare } from '../door/use-case.ts'
import { askQuestion } from './ask.ts'
import { questionSchema } from './question.schema.ts'

/** For what an answer is relied on. */
const RELIED_ON = ['printed', 'exported'] as const

/**
 * Keeps an answer that somebody relies on, as it is given: with the journal number, the editions and the engine's
 * version, so that it can be asked again and compared.
 */
export const keepAnswer = deskCommand({
  name: 'authority/keep-answer',
  permission: 'read-standing',
  input: z.strictObject({ question: questionSchema, because: z.enum(RELIED_ON) }),
  prepare: nothingToPrepare,
  logged: 'answer-kept',
  about: () => ({ kind: 'nothing' }),
  act: async (world, _prepared, { question: asked, because }, caller) => {
    const actor = actorOf(caller)
    const loaded = askQuestion.load(world, asked, actor)
    if (!loaded.ok) return loaded.problem
    const outOfReach = admitAbout(caller, 'read-standing', askQuestion.about(loaded.value, asked), world)
    if (outOfReach !== undefined) return outOfReach
    const { authority, question, n } = loaded.value
    const body = canonicalJson(plain(ask(authority, question)))
    const editions = workRuns(authority, question).map(({ first, last, edition }) => ({
      first,
      last,
      ...(edition === undefined ? {} : { edition: edition.edition.id }),
    }))
    const id = await writeAnswer(world.runtime.store, {
      at: world.now,
      ...(actor === undefined ? {} : { account: actor.account }),
      question: { ...asked, because },
      n,
      today: world.today,
      editions,
      engine: ENGINE_VERSION,
      body,
    })
    return done({ id, n })
  },
})

function plain(value: object): JsonValue {
  return JSON.parse(JSON.stringify(value)) as JsonValue
}
