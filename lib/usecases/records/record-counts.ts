import { z } from 'zod'
import type { DoubtKind } from '../../core/program/problems.ts'
import { success } from '../../core/kernel/result.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { query } from '../door/use-case.ts'
import { doubtsByRecord } from './doubts.ts'
import { readable } from './readable.ts'
import { RECORD_SECTIONS, type RecordFact, type RecordSection } from './record-kinds.ts'

/** How many records there are of each kind that the caller may read, and how many of them somebody should look at, by why. */
export const recordCounts = query({
  name: 'records/counts',
  permission: 'read-record',
  input: z.strictObject({}),
  load: (world, _input, actor) => {
    const { mayRead } = readable(world, actor)
    const doubts = doubtsByRecord(world)
    const found = new Map<string, { section: RecordSection; kind: DoubtKind; count: number }>()
    const sections = RECORD_SECTIONS.map((section) => {
      const all: readonly RecordFact[] = world.snapshot.program[section]
      const facts = all.filter((fact) => isKnownAt(fact, world.snapshot.n) && mayRead(section, fact))
      for (const { id } of facts) {
        const kinds = new Set((doubts.get(`${section} ${id}`) ?? []).map(({ kind }) => kind))
        for (const kind of kinds) {
          const key = `${section} ${kind}`
          found.set(key, { section, kind, count: (found.get(key)?.count ?? 0) + 1 })
        }
      }
      return { section, count: facts.length }
    })
    return success({ sections, doubts: [...found.values()] })
  },
  about: () => ({ kind: 'nothing' }),
  answer: (counts) => counts,
})
