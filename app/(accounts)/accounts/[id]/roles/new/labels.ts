import { roleLabels } from '../../../typed-role.ts'

/** What the fields of the role are called below. */
export const ROLE_PREFIX = 'given.'

/** The labels of the fields of the role. */
export const ROLE_LABELS = roleLabels(ROLE_PREFIX)
