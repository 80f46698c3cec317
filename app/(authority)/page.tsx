import type { Metadata } from 'next'
import { headers } from 'next/headers'
import { redirect } from 'next/navigation'
import { askForPage, type AnswerForPage } from '../../lib/usecases/authority/ask-for-page.ts'
import { peopleToAsk, type PeopleToAsk } from '../../lib/usecases/authority/people-to-ask.ts'
import { whatToAsk } from '../../lib/usecases/authority/what-to-ask.ts'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import { valueForPage } from '../_door/value-for-page.ts'
import { caller, visitorOf, type Visitor } from '../_door/visitor.ts'
import { addressWith, type AddressWords } from '../_parts/address.ts'
import { DeskPage } from '../_parts/desk-page.tsx'
import { openRooms } from '../_parts/rooms.tsx'
import { AnswerView } from './answer-view.tsx'
import { FirstQuestions } from './first-questions.tsx'
import { QuestionForm, suggestedWords } from './question-form.tsx'
import { questionProblems, type QuestionProblems } from './question-problems.ts'
import { readTypedQuestion, type TypedQuestion } from './typed-question.ts'

export const metadata: Metadata = { title: { absolute: 'Who may · Kerfbook' } }

/** What became of the question: not asked yet, answered, or what is to be put right. */
type Standing = QuestionProblems & { answer?: AnswerForPage }

/** The first page: who may do a piece of work, on which days, and why. The question stands in the address. */
export default async function QuestionPage({ searchParams }: { searchParams: Promise<AddressWords> }) {
  const words = await searchParams
  const path = addressWith('/', words, {})
  const visitor = await visitorOf(path)
  if (path === '/') goOnWhereNothingIsAsked(visitor)
  const here = await caller()
  const may = valueForPage(await callQuery(runtime(), whatToAsk, { input: {} }, here), path)
  const people = valueForPage(await callQuery(runtime(), peopleToAsk, { input: {} }, here), path)
  const typed = readTypedQuestion(words)
  const { answer, problems, refusal } = await standingOf(typed, people)
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
        people={people}
      />
      {answer === undefined ? null : (
        <AnswerView
          answer={answer}
          typed={typed.typed}
          readsJournal={visitor.permissions.includes('read-journal')}
          onPhone={await isPhone()}
        />
      )}
      {typed.kind === 'none' ? <FirstQuestions items={may.items} today={may.today} /> : null}
      {visitor.permissions.includes('stand-down') ? (
        <p className="back">
          <a href="/stand-down">Stand somebody down at once</a>
        </p>
      ) : null}
    </DeskPage>
  )
}

/** Whether this browser says of itself that it is a phone's. */
async function isPhone(): Promise<boolean> {
  const held = await headers()
  return held.get('sec-ch-ua-mobile') === '?1' || /\bMobi/.test(held.get('user-agent') ?? '')
}

async function standingOf(typed: TypedQuestion, people: PeopleToAsk): Promise<Standing> {
  if (typed.kind === 'none') return { problems: [] }
  if (typed.kind === 'faulty') return { problems: typed.problems }
  const outcome = await callQuery(runtime(), askForPage, { input: typed.input }, await caller())
  if (outcome.kind === 'done') return { answer: outcome.value, problems: [] }
  return questionProblems(outcome, typed.typed, people)
}

/** Signing in leads here. Who may read nobody's standing goes on to the first room that is theirs. */
function goOnWhereNothingIsAsked(visitor: Visitor): void {
  const [room] = openRooms(visitor)
  if (visitor.permissions.includes('read-standing') || room === undefined) return
  redirect(room.path)
}
