import { ROLES } from '../../lib/access/roles.ts'

/** Whose names and ids somebody may come to read. */
type Reach = 'everybody' | 'volunteers' | 'own' | 'nobody'
/** An account of the demonstration or of the test. */
export type Who = {
  name: string
  role: string
  reach: Reach
  /** Their own record; its name stands at the head of each page. */
  person?: string
}

/** Somebody of the one unit that a coordinator reaches, and somebody of the one organisation that another does. */
export const UNIT_OF_INES = 'p-dana-whitlow'
export const VOLUNTEER = 'p-hallvard-eikeset'
// From memory, and in the demonstration confirmed by nobody.
export const CONFIRM = '/rulebooks/federal-crosscut-2016/confirm/suspension'
export const ADOPT = '/rulebooks/shipped/interagency-faller/adopt'

const isIn = (who: Who, roles: readonly string[]) => roles.includes(who.role)
const WORKERS = ROLES.filter((role) => role !== 'auditor')
const WHOLE_PROGRAM = ['program-manager', 'certifying-official']

/** What each address answers to each account: written out here, not read from the access table. */
export function expectedAt(address: string, who: Who): number {
  const path = address.replace(/^POST /, '').replace(/\?.*/, '')
  const isSignedIn = who.role !== 'none'
  if (path.startsWith('/begin/') || path.startsWith('/set-password/') || path === '/api/auth/session')
    return 200
  if (path === '/kept-form') return 200
  if (path === '/sign-in') return isSignedIn ? 307 : 200
  if (who.name === 'nobody')
    return path.startsWith('/answer.') || /\.(csv|json|xlsx)$|\/table\//.test(path) ? 401 : 307
  // An account without a role is told that it has none.
  if (!isSignedIn) return 403
  if (path === '/accounts/me/password') return 200
  if (path.startsWith('/accounts') && path !== '/accounts/me') {
    if (!isIn(who, ['program-manager'])) return 403
    return path.includes('not-there') ? 404 : 200
  }
  if (path.startsWith('/answer.')) return isIn(who, WORKERS) ? 200 : 403
  if (path === '/accounts/me' || path === '/parts') return 200
  if (path === CONFIRM) return isIn(who, ['program-manager']) ? 200 : 403
  // The demonstration has adopted every book that ships.
  if (path === ADOPT) return isIn(who, ['program-manager']) ? 307 : 403
  if (path.startsWith('/program/file')) return isIn(who, ['program-manager']) ? 200 : 403
  if (path === '/program/first-day') return isIn(who, ['program-manager']) ? 200 : 403
  if (path.startsWith('/rulebooks') || path === '/program') return 200
  if (/^\/records\/(places|ratings|raises|hitches$)/.test(path)) return 200
  if (path.endsWith('/erase')) return isIn(who, ['program-manager']) ? 200 : 403
  if (path.startsWith('/people/table') || path.startsWith('/records/cards/table'))
    return isIn(who, WORKERS) ? 200 : 403
  if (path.startsWith('/my')) {
    if (!isIn(who, WORKERS)) return 403
    // Only a person on record has a record of their own; why there is none is said to a program, too.
    if (who.person !== undefined) return 200
    return path.endsWith('.json') ? 409 : 404
  }
  // Hitches are written by those two, and brought in by no other.
  if (path.startsWith('/sheets/records/hitches'))
    return isIn(who, ['crew-coordinator', 'program-manager']) ? 200 : 403
  if (path.startsWith('/sheets')) {
    if (!isIn(who, ['crew-coordinator', ...WHOLE_PROGRAM])) return 403
    return path.includes('00000000') ? 404 : 200
  }
  if (path === '/people/new' || path === '/records/certificates/new')
    return isIn(who, ['crew-coordinator', 'program-manager']) ? 200 : 403
  // Whoever may stand down at all opens the form; about somebody beyond their reach it leads nowhere.
  if (path === '/stand-down') {
    if (!isIn(who, ['crew-lead', 'crew-coordinator', ...WHOLE_PROGRAM])) return 403
    const named = new URL(address, 'http://x').searchParams.get('person')
    if (named === null || isIn(who, WHOLE_PROGRAM)) return 200
    return who.name === 'ines' && named === UNIT_OF_INES ? 200 : 404
  }
  if (path === '/records/suspensions/new') return isIn(who, WHOLE_PROGRAM) ? 200 : 403
  if (path.startsWith('/journal')) return isIn(who, WHOLE_PROGRAM) ? 200 : 403
  // Sign-in leads to the first page, and from there on to one that an auditor may read.
  if (address === '/' && who.role === 'auditor') return 307
  if (!isIn(who, WORKERS)) return 403
  if (path.startsWith('/records/hitches') || path.endsWith('/worksheet')) return 200
  if (path.includes('/not-there/')) return 404
  if (/^\/records\/people\/.*\/(correct|withdraw)$/.test(path) && who.name !== 'marit' && who.name !== 'ines')
    return isIn(who, ['certifying-official']) ? 403 : 404
  if (!/^\/(people|records\/people)\//.test(path) || path.startsWith('/people/ahead')) return 200
  const mayOpen =
    isIn(who, WHOLE_PROGRAM) ||
    (who.name === 'ines' && path.includes(UNIT_OF_INES)) ||
    (who.name === 'solvei' && path.endsWith(VOLUNTEER))
  return mayOpen ? 200 : 404
}
