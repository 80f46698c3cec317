import { randomUUID } from 'node:crypto'
import { keepForPrintAction } from './keep-action.ts'
import { KeepForm } from './keep-form.client.tsx'
import { everyRow, readOpenRows } from './open-rows.ts'
import { questionAddress, type TypedWords } from './typed-question.ts'

/** What can be done with an answer: print it, or take it away. Each keeps it as it stands, by the entry it was given at. */
export function AnswerActs({ typed, n }: { typed: TypedWords; n: number }) {
  // What was read here is what is kept, whatever is recorded meanwhile.
  const known = { known: String(n) }
  const exportId = randomUUID()
  const { every, but } = readOpenRows(typed)
  const isEveryOpen = every && but.length === 0
  return (
    <div className="acts">
      <KeepForm
        action={keepForPrintAction}
        first={{ id: randomUUID() }}
        question={questionAddress('/', typed, known)}
      />
      {(['csv', 'xlsx', 'json'] as const).map((kind) => (
        <form key={kind} method="post" action={questionAddress(`/answer.${kind}`, typed, known)}>
          <input type="hidden" name="id" value={exportId} />
          <button type="submit" className="button quiet">
            {kind.toUpperCase()}
          </button>
        </form>
      ))}
      <a className="button quiet" href={questionAddress('/', typed, {})}>
        Link to this question
      </a>
      <a className="button quiet" href={questionAddress('/', typed, known)}>
        Link as known now
      </a>
      {typed.person.trim() === '' ? (
        <a className="button quiet" href={questionAddress('/', typed, { open: everyRow(!isEveryOpen) })}>
          {isEveryOpen ? 'Shut every chain' : 'Open every chain, to print'}
        </a>
      ) : null}
    </div>
  )
}
