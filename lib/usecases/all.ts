import type { z } from 'zod'
import { openDemoAccounts } from './accounts/demo-accounts.ts'
import { resetManager } from './accounts/reset-manager.ts'
import { signIn } from './accounts/sign-in.ts'
import { signOut, signOutEverywhere } from './accounts/sign-out.ts'
import { stepUp } from './accounts/step-up.ts'
import { whoAmI } from './accounts/who-am-i.ts'
import { askQuestion } from './authority/ask.ts'
import { keepAnswer } from './authority/keep-answer.ts'
import type { Admission } from './door/use-case.ts'
import { aboutFounding } from './program/about-founding.ts'
import { bringInProgram } from './program/bring-in.ts'
import { foundProgram } from './program/found.ts'
import { makeFoundingLink } from './program/founding-link.ts'
import { takeOutProgram } from './program/take-out.ts'

/** What every use case declares, whatever it reads and writes. */
export type UseCaseFace = {
  kind: 'command' | 'desk' | 'query'
  name: string
  permission: Admission
  stepUp?: true
  input: z.ZodType
}

/** Every use case there is; what is not here nobody can call. A test walks them all. */
export const ALL_USE_CASES: readonly UseCaseFace[] = [
  signIn,
  signOut,
  signOutEverywhere,
  stepUp,
  whoAmI,
  openDemoAccounts,
  resetManager,
  askQuestion,
  keepAnswer,
  aboutFounding,
  makeFoundingLink,
  foundProgram,
  bringInProgram,
  takeOutProgram,
]
