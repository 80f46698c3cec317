import type { UseCaseFace } from '../door/use-case.ts'
import { correctRecord, withdrawRecord } from './correct.ts'
import { enterRecord } from './enter.ts'
import { enterPerson } from './enter-person.ts'
import { RECORD_SECTIONS, type RecordSection } from './record-kinds.ts'

type Sectioned<Make extends (section: RecordSection) => unknown> = Readonly<
  Record<RecordSection, ReturnType<Make>>
>

const ofEach = <Made>(make: (section: RecordSection) => Made) =>
  Object.fromEntries(RECORD_SECTIONS.map((section) => [section, make(section)])) as Record<
    RecordSection,
    Made
  >

/** Entering a record of a section by hand; somebody new comes with their first membership, by a use case of its own. */
export const ENTER: Readonly<Record<Exclude<RecordSection, 'people'>, ReturnType<typeof enterRecord>>> =
  ofEach((section) => enterRecord(section))

/** Correcting a record of a section. */
export const CORRECT: Sectioned<typeof correctRecord> = ofEach((section) => correctRecord(section))

/** Withdrawing a record of a section. */
export const WITHDRAW: Sectioned<typeof withdrawRecord> = ofEach((section) => withdrawRecord(section))

/** The same as a list. */
export const RECORD_USE_CASES: readonly UseCaseFace[] = [
  enterPerson,
  ...RECORD_SECTIONS.flatMap((section) =>
    section === 'people'
      ? [CORRECT.people, WITHDRAW.people]
      : [ENTER[section], CORRECT[section], WITHDRAW[section]],
  ),
]
