import type { Metadata } from 'next'
import { keptForm } from '../../lib/platform/server/kept-forms.ts'
import { front } from '../_door/front.ts'
import { Frame } from '../_parts/frame.tsx'
import { PageHeading } from '../_parts/page-heading.tsx'

export const metadata: Metadata = { title: 'You are no longer signed in' }

/** What stands in place of a page whose form was sent, without scripts, after the session had ended. */
export default async function KeptFormPage({
  searchParams,
}: {
  searchParams: Promise<{ kept?: string | string[] }>
}) {
  const { kept } = await searchParams
  const form = typeof kept === 'string' ? keptForm(kept) : undefined
  const { program } = await front()
  if (form === undefined) {
    return (
      <Frame program={program}>
        <PageHeading
          title="Nothing is kept here"
          lead="This page keeps a form that was sent after its session had ended. None was sent with this address."
        />
        <p className="row">
          <a className="button main" href="/">
            To the first page
          </a>
        </p>
      </Frame>
    )
  }
  return (
    <Frame program={program}>
      <PageHeading
        title="You are no longer signed in"
        lead="What you typed is kept in this page, and nothing of it is recorded yet. Leave this page open."
      />
      <div className="stack-wide">
        <p>
          <a className="button" href="/sign-in" target="_blank" rel="noopener">
            Sign in in another tab
          </a>
        </p>
        <p>Then come back to this page and send the form again.</p>
        <form action={form.to} method="post" encType="multipart/form-data">
          {form.fields.map(([name, text], at) => (
            <input key={at} type="hidden" name={name} value={text} />
          ))}
          <button type="submit" className="button main">
            Send it again
          </button>
        </form>
      </div>
    </Frame>
  )
}
