import { randomUUID } from 'node:crypto'
import type { IncomingMessage, ServerResponse } from 'node:http'

/** A form that was sent by somebody who is no longer signed in, as it came, to be sent again. */
export type KeptForm = {
  /** The address it was sent to, which is where it is sent again. */
  to: string
  /** Names and texts in the order in which they came; passwords are not among them. */
  fields: readonly (readonly [name: string, text: string])[]
}

/** The page that shows a kept form; it takes the key of one in its address. */
export const KEPT_FORM_PATH = '/kept-form'

/** Fields whose content never goes back to a page. */
const NEVER_BACK = /password/i
/** What a form of ours carries beside what somebody typed. */
const NOT_TYPED = /^(\$.*|command)$/
/** Forms that are there for whoever is not signed in. */
const FOR_ANYBODY = /^\/(sign-in|set-password|begin|api)(\/|\?|$)/

const HELD = Symbol.for('kerfbook.kept-forms')

/** The forms that are being shown at this moment. The pages find them here: the bundler compiles them apart. */
function held(): Map<string, KeptForm> {
  const all = globalThis as { [HELD]?: Map<string, KeptForm> }
  const forms = all[HELD] ?? new Map<string, KeptForm>()
  all[HELD] = forms
  return forms
}

/** The form that is kept under a key, for as long as its page is being drawn. */
export function keptForm(key: string): KeptForm | undefined {
  return held().get(key)
}

/**
 * A browser with scripts keeps what was typed by itself; one without would be led to the sign-in page, and all of it
 * would be gone. So where such a form comes from somebody whose session has ended, the page that keeps it is drawn in
 * place of the page that it was sent to.
 * @param body the form in parts, as it came
 * @param isSignedIn looked up only where something was typed
 */
export async function keepTypedForm(
  request: IncomingMessage,
  response: ServerResponse,
  body: Buffer,
  isSignedIn: (cookies: string | undefined) => Promise<boolean>,
): Promise<void> {
  const to = request.url ?? '/'
  if (request.headers['next-action'] !== undefined || FOR_ANYBODY.test(to)) return
  const type = request.headers['content-type'] ?? ''
  const form = await new Response(new Uint8Array(body), { headers: { 'content-type': type } }).formData()
  const fields = [...form].flatMap(([name, value]) =>
    typeof value === 'string' && !NEVER_BACK.test(name) ? [[name, value] as const] : [],
  )
  if (!fields.some(([name, text]) => !NOT_TYPED.test(name) && text !== '')) return
  if (await isSignedIn(request.headers.cookie)) return
  const key = randomUUID()
  held().set(key, { to, fields })
  response.once('close', () => held().delete(key))
  request.method = 'GET'
  request.url = `${KEPT_FORM_PATH}?kept=${key}`
  delete request.headers['content-type']
  delete request.headers['content-length']
}
