import { aboutLink } from './accounts/about-link.ts'
import { changePassword } from './accounts/change-password.ts'
import { openDemoAccounts } from './accounts/demo-accounts.ts'
import { endAccount } from './accounts/end-account.ts'
import { endRole } from './accounts/end-role.ts'
import { endOwnSession } from './accounts/end-session.ts'
import { giveAccount } from './accounts/give-account.ts'
import { giveRole } from './accounts/give-role.ts'
import { listAccounts } from './accounts/list.ts'
import { newLink } from './accounts/new-link.ts'
import { openAgain } from './accounts/open-again.ts'
import { readAccount } from './accounts/read-account.ts'
import { resetManager } from './accounts/reset-manager.ts'
import { setPasswordByLink } from './accounts/set-password.ts'
import { signIn } from './accounts/sign-in.ts'
import { signOut, signOutEverywhere } from './accounts/sign-out.ts'
import { stepUp } from './accounts/step-up.ts'
import { whatIMayDo } from './accounts/what-i-may-do.ts'
import { whatToGive } from './accounts/what-to-give.ts'
import { whoAmI } from './accounts/who-am-i.ts'
import { askForPage } from './authority/ask-for-page.ts'
import { askQuestion } from './authority/ask.ts'
import { keepAnswer } from './authority/keep-answer.ts'
import { peopleToAsk } from './authority/people-to-ask.ts'
import { whatToAsk } from './authority/what-to-ask.ts'
import type { UseCaseFace } from './door/use-case.ts'
import { readEntry } from './journal/read-entry.ts'
import { readJournal } from './journal/read-journal.ts'
import { aboutErasing, erasePerson } from './people/erase.ts'
import { lapsesAhead } from './people/lapses-ahead.ts'
import { listPeople } from './people/list.ts'
import { myRecord, whoLooked } from './people/my-record.ts'
import { readPerson } from './people/person.ts'
import { aboutFounding } from './program/about-founding.ts'
import { bringInProgram } from './program/bring-in.ts'
import { aboutProgram, setFirstDayOfDeciding } from './program/first-day.ts'
import { foundProgram } from './program/found.ts'
import { makeFoundingLink } from './program/founding-link.ts'
import { takeOutProgram } from './program/take-out.ts'
import { RECORD_USE_CASES } from './records/all-records.ts'
import { adoptShippedBook } from './rulebooks/adopt.ts'
import { confirmRule } from './rulebooks/confirm.ts'
import { readDifference } from './rulebooks/difference.ts'
import { bringInSheet } from './sheets/bring-in-sheet.ts'
import { listSheets, settleSheetOf, throwAwaySheetOf, trySheet } from './sheets/desk-of-sheets.ts'
import { putInSheetOf } from './sheets/put-in.ts'
import { recordsAsSheet } from './sheets/records-as-sheet.ts'
import { aboutUndoing, undoSheet } from './sheets/undo-sheet.ts'
import { listRuleBooks } from './rulebooks/list.ts'
import { readEdition } from './rulebooks/read-edition.ts'
import { listShippedBooks, readShippedBook } from './rulebooks/shipped.ts'

/** Every use case there is; what is not here nobody can call. A test walks them all. */
export const ALL_USE_CASES: readonly UseCaseFace[] = [
  signIn,
  signOut,
  signOutEverywhere,
  stepUp,
  whoAmI,
  whatIMayDo,
  endOwnSession,
  changePassword,
  listAccounts,
  readAccount,
  whatToGive,
  giveAccount,
  newLink,
  giveRole,
  endRole,
  endAccount,
  openAgain,
  aboutLink,
  setPasswordByLink,
  openDemoAccounts,
  resetManager,
  askQuestion,
  askForPage,
  peopleToAsk,
  aboutErasing,
  erasePerson,
  whatToAsk,
  keepAnswer,
  listPeople,
  lapsesAhead,
  readPerson,
  myRecord,
  whoLooked,
  aboutFounding,
  aboutProgram,
  setFirstDayOfDeciding,
  makeFoundingLink,
  foundProgram,
  bringInProgram,
  takeOutProgram,
  putInSheetOf,
  settleSheetOf,
  throwAwaySheetOf,
  listSheets,
  trySheet,
  recordsAsSheet,
  bringInSheet,
  aboutUndoing,
  undoSheet,
  listRuleBooks,
  readEdition,
  listShippedBooks,
  readShippedBook,
  readDifference,
  confirmRule,
  adoptShippedBook,
  readJournal,
  readEntry,
  ...RECORD_USE_CASES,
]
