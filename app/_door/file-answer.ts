import type { Outcome } from '../../lib/usecases/door/outcome.ts'
import { formAfter, freshForm } from './form-outcome.ts'

/** The status of a refusal to a program that reads it. */
const STATUS = {
  invalid: 400,
  refused: 409,
  stale: 409,
  'not-found': 404,
  'sign-in-wanted': 401,
  'password-wanted': 401,
  forbidden: 403,
} as const satisfies Record<Exclude<Outcome<unknown>['kind'], 'done'>, number>

/** A file to keep, never kept on the way. */
export function fileAnswer(body: string | Uint8Array<ArrayBuffer>, type: string, name: string): Response {
  return new Response(body, {
    headers: {
      'content-type': type,
      'content-disposition': `attachment; filename="${name}"`,
      'cache-control': 'no-store',
    },
  })
}

/** Why there is no file, in words. */
export function refusedFile(outcome: Exclude<Outcome<unknown>, { kind: 'done' }>): Response {
  const { refusal, problems } = formAfter(freshForm(), new FormData(), outcome)
  return plainAnswer(refusal ?? problems.map(({ message }) => message).join(' '), STATUS[outcome.kind])
}

/** A sentence in place of a file. */
export function plainAnswer(text: string, status: number): Response {
  return new Response(`${text}\n`, {
    status,
    headers: { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' },
  })
}
