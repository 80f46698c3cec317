import { cache } from 'react'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import { whomToStop } from '../../lib/usecases/records/whom-to-stop.ts'
import { caller } from '../_door/visitor.ts'

/** Whom the visitor may stand down, once for each request. */
export const lookAtWhom = cache(async () => callQuery(runtime(), whomToStop, { input: {} }, await caller()))
