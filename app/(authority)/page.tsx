import type { Metadata } from 'next'
import { askForPage, type AnswerForPage } from '../../lib/usecases/authority/ask-for-page.ts'
import { whatToAsk } from '../../lib/usecases/authority/what-to-ask.ts'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import type { Outcome } from '../../lib/usecases/door/outcome.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import { formAfter, freshForm, problemsOf } from '../_door/form-outcome.ts'
import { valueForPage } from '../_door/value-for-page.ts'
import { caller, visitorOf } from '../_door/visitor.ts'
import { addressWith, type AddressWords } from '../_parts/address.ts'
import { DeskPage } from '../_parts/desk-page.tsx'
import type { FormProblem } from '../_parts/form-state.ts'
import { AnswerView } from './answer-view.tsx'
import { FirstQuestions } from './first-questions.tsx'
import { QuestionForm, suggestedWords } from './question-form.tsx'
import { blankOfPath, BLANKS, readTypedQuestion, type TypedQuestion } from './typed-question.ts'

export const metadata: Metadata = { title: { absolute: 'Who may · Kerfbook' } }

/** What became of the question: not asked yet, answered, or what is to be put right. */
type Standing = {
  answer?: AnswerForPage
  problems: readonly FormProblem[]
  refusal?: string
}

/** The first page: who may do a piece of work, on which days, and why. The question stands in the address. */
export default async function QuestionPage({ searchParams }: { searchParams: Promise<AddressWords> }) {
  const words = await searchParams
  const path = addressWith('/', words, {})
  const visitor = await visitorOf(path)
  const here = await caller()
  const may = valueForPage(await callQuery(runtime(), whatToAsk, { input: {} }, here), path)
  const typed = readTypedQuestion(words)
  const { answer, problems, refusal } = await standingOf(typed)
  return (
    <DeskPage visitor={visitor}>
      <header className="ask-heading">
        <h1>Who may do this work?</h1>
        <p>Fill the blanks and ask: who may, on which days, and why.</p>
      </header>
      <QuestionForm
        typed={typed.kind === 'none' ? suggestedWords(typed.typed, may.today) : typed.typed}
        problems={problems}
        {...(refusal === undefined ? {} : { refusal })}
        places={may.places}
        items={may.items}
      />
      {answer === undefined ? null : (
        <AnswerView
          answer={answer}
          typed={typed.typed}
          readsJournal={visitor.permissions.includes('read-journal')}
        />
      )}
      {typed.kind === 'none' ? <FirstQuestions items={may.items} today={may.today} /> : null}
    </DeskPage>
  )
}

async function standingOf(typed: TypedQuestion): Promise<Standing> {
  if (typed.kind === 'none') return { problems: [] }
  if (typed.kind === 'faulty') return { problems: typed.problems }
  const outcome = await callQuery(runtime(), askForPage, { input: typed.input }, await caller())
  return outcome.kind === 'done' ? { answer: outcome.value, problems: [] } : whyNot(outcome)
}

function whyNot(outcome: Exclude<Outcome<unknown>, { kind: 'done' }>): Standing {
  if (outcome.kind === 'invalid') {
    const fields = outcome.fields.map(({ path, message }) => ({ path: blankOfPath(path), message }))
    return { problems: problemsOf(fields, BLANKS) }
  }
  if (outcome.kind === 'not-found') {
    const message = 'nobody of this id is on record, or nobody whose standing you may read'
    return { problems: problemsOf([{ path: 'person', message }], BLANKS) }
  }
  const { refusal } = formAfter(freshForm(), new FormData(), outcome)
  if (outcome.kind === 'refused' && refusal !== undefined) {
    const path = { 'not-yet-known': 'known', 'no-common-day': 'first' }[outcome.because.kind as string]
    if (path !== undefined) return { problems: problemsOf([{ path, message: refusal }], BLANKS) }
  }
  return { problems: [], ...(refusal === undefined ? {} : { refusal }) }
}
