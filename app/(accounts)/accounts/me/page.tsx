import type { Metadata } from 'next'
import { callQuery } from '../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { sessionHandle } from '../../../../lib/usecases/accounts/sessions.ts'
import { whatIMayDo } from '../../../../lib/usecases/accounts/what-i-may-do.ts'
import { valueForPage } from '../../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../../_door/visitor.ts'
import { addressWord, type AddressWords } from '../../../_parts/address.ts'
import { DeskPage } from '../../../_parts/desk-page.tsx'
import { Notice } from '../../../_parts/notice.tsx'
import { PageHeading } from '../../../_parts/page-heading.tsx'
import { Section } from '../../../_parts/section.tsx'
import { RoleItem } from './role-item.tsx'
import { Sessions } from './sessions.tsx'

export const metadata: Metadata = { title: 'What I may do here' }

const PATH = '/accounts/me'

/** What was done on the page before this one. */
function Kept({ words }: { words: AddressWords }) {
  const says =
    addressWord(words, 'ended') !== undefined
      ? 'That session is ended. Whoever held it has to sign in again.'
      : addressWord(words, 'changed') !== undefined
        ? 'Your password is changed. Wherever else you were signed in, you have to sign in again.'
        : undefined
  return says === undefined ? null : (
    <Notice kind="kept">
      <p>{says}</p>
    </Notice>
  )
}

/** What the visitor may do here: their roles with what each allows, and where they are signed in. */
export default async function OwnAccountPage({ searchParams }: { searchParams: Promise<AddressWords> }) {
  const visitor = await visitorOf(PATH)
  const who = await caller()
  const { roles, sessions } = valueForPage(await callQuery(runtime(), whatIMayDo, { input: {} }, who), PATH)
  const here = who.kind === 'account' ? sessionHandle(who.session) : undefined
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        title="What I may do here"
        lead="Your roles and what each of them allows, and where you are signed in. This is about the record; who may saw is asked on the first page."
      />
      <Kept words={await searchParams} />
      <Section id="you" title="You">
        <dl className="facts">
          {visitor.name === undefined ? null : (
            <>
              <dt>Name</dt>
              <dd>
                <bdi>{visitor.name}</bdi>
              </dd>
            </>
          )}
          <dt>Sign-in name</dt>
          <dd>{visitor.signInName}</dd>
          <dt>Password</dt>
          <dd>
            <a href={`${PATH}/password`}>Change your password</a>
          </dd>
          {visitor.program === undefined ? null : (
            <>
              <dt>Program</dt>
              <dd>
                <bdi>{visitor.program}</bdi>
              </dd>
            </>
          )}
        </dl>
      </Section>
      <Section
        id="roles"
        title="Your roles"
        caption="A record that none of them reaches is answered as if it were not there."
      >
        {roles.length === 0 ? (
          <p>You have no role today. Whoever manages the program can give you one.</p>
        ) : (
          <ul className="rules">
            {roles.map((held) => (
              <RoleItem key={`${held.role} ${held.unit ?? ''} ${held.organisation ?? ''}`} held={held} />
            ))}
          </ul>
        )}
      </Section>
      <Section
        id="sessions"
        title="Where you are signed in"
        caption="A session ends by itself after four hours without use, and after twelve in any case."
      >
        <Sessions sessions={sessions} here={here} />
      </Section>
    </DeskPage>
  )
}
