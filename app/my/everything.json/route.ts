import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../lib/usecases/door/runtime.ts'
import { myRecord, whoLooked } from '../../../lib/usecases/people/my-record.ts'
import { fileAnswer, refusedFile } from '../../_door/file-answer.ts'
import { caller, signedIn } from '../../_door/visitor.ts'

/** Everything that is held about whoever asks, as a file that any program reads. */
export async function GET(): Promise<Response> {
  const who = await caller()
  const mine = await callQuery(runtime(), myRecord, { input: {} }, who)
  if (mine.kind !== 'done') return refusedFile(mine)
  const looked = await callQuery(runtime(), whoLooked, { input: {} }, who)
  if (looked.kind !== 'done') return refusedFile(looked)
  const { id, name, age, n, today, holdings, histories, renewals, disputes, hitches } = mine.value
  const account = await signedIn()
  const held = {
    about:
      'Everything that Kerfbook holds about one person: each record with all of its versions, who recorded it and when, and who has looked. Authority is not safety.',
    asOf: { journalEntry: n, day: today },
    person: { id, name, age },
    account: { signInName: account?.signInName, roles: account?.roles },
    holds: holdings,
    toRenew: renewals,
    records: histories,
    saidToBeWrong: disputes,
    hitches,
    whoLooked: looked.value,
  }
  return fileAnswer(
    `${JSON.stringify(held, null, 2)}\n`,
    'application/json; charset=utf-8',
    'everything-about-me.json',
  )
}
