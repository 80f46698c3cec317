import type { UseCaseFace } from '../door/use-case.ts'
import { answerDispute, disputeRecord } from './disputes.ts'
import { consequencesOf } from './consequences.ts'
import { correctRecord, withdrawRecord } from './correct.ts'
import { enterRecord } from './enter.ts'
import { enterPerson } from './enter-person.ts'
import { LIST_RECORDS } from './list-records.ts'
import { readHitch } from './read-hitch.ts'
import { READ_RECORD } from './read-record.ts'
import { recordCounts } from './record-counts.ts'
import { recordChoices } from './record-choices.ts'
import { confirmStandDown, noticeReached, standDown } from './stand-down.ts'
import { whoMayCounts } from './who-may-counts.ts'
import { whomToStop } from './whom-to-stop.ts'
import { worksheetOfItem } from './worksheet-of-item.ts'
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

/** What correcting, withdrawing or (where it stops work, or joins two people) entering a record would change, before it is done. */
export const BEFORE = {
  entering: { suspensions: consequencesOf(ENTER.suspensions), joins: consequencesOf(ENTER.joins) },
  standingDown: consequencesOf(standDown),
  correcting: ofEach((section) => consequencesOf(correctRecord(section))),
  withdrawing: ofEach((section) => consequencesOf(withdrawRecord(section))),
} as const

/** All of them as a list. */
export const RECORD_USE_CASES: readonly UseCaseFace[] = [
  LIST_RECORDS.people,
  LIST_RECORDS.program,
  READ_RECORD.people,
  READ_RECORD.program,
  recordChoices,
  recordCounts,
  readHitch,
  whomToStop,
  worksheetOfItem,
  whoMayCounts,
  BEFORE.entering.suspensions,
  BEFORE.entering.joins,
  BEFORE.standingDown,
  standDown,
  noticeReached,
  confirmStandDown,
  disputeRecord,
  answerDispute,
  ...RECORD_SECTIONS.flatMap((section) => [BEFORE.correcting[section], BEFORE.withdrawing[section]]),
  enterPerson,
  ...RECORD_SECTIONS.flatMap((section) =>
    section === 'people'
      ? [CORRECT.people, WITHDRAW.people]
      : [ENTER[section], CORRECT[section], WITHDRAW[section]],
  ),
]
