import { cache } from 'react'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import { aboutFounding } from '../../lib/usecases/program/about-founding.ts'

/** What anybody may know who stands before the door. */
export const front = cache(async () => {
  const outcome = await callQuery(runtime(), aboutFounding, { input: {} }, { kind: 'nobody' })
  if (outcome.kind !== 'done') throw new Error(`The use case that anybody may call ended as ${outcome.kind}.`)
  return outcome.value
})
