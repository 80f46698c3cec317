import { forbidden } from 'next/navigation'
import type { Permission } from '../../lib/access/table.ts'
import type { Visitor } from './visitor.ts'

/**
 * Shows the page that says "not for your roles" to those who could do nothing on this one. That nothing is done all the
 * same is the door's to see to, at each call.
 */
export function requirePermission({ programWide }: Visitor, permission: Permission): void {
  if (!programWide.includes(permission)) forbidden()
}
