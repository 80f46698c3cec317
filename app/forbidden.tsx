import type { Metadata } from 'next'
import { signedIn } from './_door/visitor.ts'
import { PageHeading } from './_parts/page-heading.tsx'
import { SidePage } from './_parts/side-page.tsx'

export const metadata: Metadata = { title: 'Not for your roles' }

/** The page where none of somebody's roles opens what they asked for, or they have none at all. */
export default async function ForbiddenPage() {
  return <SidePage>{(await signedIn()) === undefined ? <WithoutRole /> : <NotForYourRoles />}</SidePage>
}

function NotForYourRoles() {
  return (
    <>
      <PageHeading
        title="Not for your roles"
        lead="None of your roles opens this page. Whoever manages the program can give you one that does."
      />
      <p className="row">
        <a className="button main" href="/accounts/me">
          See what you may do here
        </a>
        <a className="button" href="/">
          To the first page
        </a>
      </p>
    </>
  )
}

function WithoutRole() {
  return (
    <>
      <PageHeading
        title="No role today"
        lead="You are signed in, and your account has no role today, so no page opens to it. Whoever manages the program can give you one."
      />
      <p className="row">
        <a className="button main" href="/sign-in">
          Sign in with another account
        </a>
      </p>
    </>
  )
}
