import type { UseCaseFace } from '../door/use-case.ts'
import { correctRecord, withdrawRecord } from './correct.ts'
import { enterRecord } from './enter.ts'
import { enterPerson } from './enter-person.ts'
import { RECORD_SECTIONS, type RecordSection } from './record-kinds.ts'

/** What a hand may do with the records of each section. People are entered with their first membership. */
export const RECORD_COMMANDS = Object.fromEntries(
  RECORD_SECTIONS.map((section) => [
    section,
    { enter: enterRecord(section), correct: correctRecord(section), withdraw: withdrawRecord(section) },
  ]),
) as {
  readonly [Name in RecordSection]: {
    enter: ReturnType<typeof enterRecord<Name>>
    correct: ReturnType<typeof correctRecord<Name>>
    withdraw: ReturnType<typeof withdrawRecord<Name>>
  }
}

/** The same as a list. */
export const RECORD_USE_CASES: readonly UseCaseFace[] = [
  enterPerson,
  ...RECORD_SECTIONS.flatMap((section) => {
    const { enter, correct, withdraw } = RECORD_COMMANDS[section]
    return section === 'people' ? [correct, withdraw] : [enter, correct, withdraw]
  }),
]
