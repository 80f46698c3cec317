import { forbidden, notFound, redirect } from 'next/navigation'
import type { Outcome } from '../../lib/usecases/door/outcome.ts'

/**
 * What a page was to show, or the page that stands in its place: sign in, no permission, no such page. An address that
 * was typed wrongly leads nowhere; a page whose form can be typed wrongly looks at `invalid` and `refused` itself first.
 * @param path the page's own address, to come back to after signing in
 */
export function valueForPage<Value>(outcome: Outcome<Value>, path: string): Value {
  switch (outcome.kind) {
    case 'done':
      return outcome.value
    case 'sign-in-wanted':
      return redirect(`/sign-in?to=${encodeURIComponent(path)}`)
    case 'forbidden':
      return forbidden()
    case 'not-found':
    case 'invalid':
    case 'refused':
      return notFound()
    case 'stale':
    case 'password-wanted':
      throw new Error(`A page cannot show a read that ended as ${outcome.kind}.`)
  }
}
