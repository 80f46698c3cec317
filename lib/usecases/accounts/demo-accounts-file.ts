import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import { ROLES } from '../../access/roles.ts'
import { signInNameField } from '../../access/sign-in-name.schema.ts'
import { idField, textField } from '../../core/kernel/fields.schema.ts'

/** Somebody whom a demonstration lets anybody be. */
const demoAccount = z.strictObject({
  signInName: signInNameField,
  person: z.exactOptional(idField),
  roles: z
    .array(
      z.strictObject({
        role: z.enum(ROLES),
        unit: z.exactOptional(idField),
        organisation: z.exactOptional(idField),
      }),
    )
    .min(1),
  /** What a stranger should know before they choose it. */
  says: textField,
})

/** The accounts of a demonstration; all have one password, which the sign-in page shows. */
export const demoAccountsSchema = z.strictObject({
  says: textField,
  password: z.string().length(15, 'the password of a demo account has 15 characters'),
  accounts: z.array(demoAccount).min(1).max(40),
})
export type DemoAccounts = z.infer<typeof demoAccountsSchema>

/** The accounts of the demonstration, as they ship. */
export function readDemoAccounts(seeds: string): DemoAccounts {
  return demoAccountsSchema.parse(JSON.parse(readFileSync(join(seeds, 'demo-accounts.json'), 'utf8')))
}
