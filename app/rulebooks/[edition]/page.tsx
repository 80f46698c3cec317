import type { Metadata } from 'next'
import { runtime } from '../../../lib/usecases/door/runtime.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import type { RuleToRead } from '../../../lib/usecases/rulebooks/edition-to-read.ts'
import { readEdition } from '../../../lib/usecases/rulebooks/read-edition.ts'
import {
  EDITION_STANDINGS,
  inForceSentence,
  successorSentence,
  unconfirmedSentence,
} from '../../../lib/wording/book-pages.ts'
import { capitalised } from '../../../lib/wording/lists.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../../../lib/wording/notice.ts'
import { valueForPage } from '../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../_door/visitor.ts'
import { addressWord, type AddressWords } from '../../_parts/address.ts'
import { DeskPage } from '../../_parts/desk-page.tsx'
import { Notice } from '../../_parts/notice.tsx'
import { PageHeading } from '../../_parts/page-heading.tsx'
import { EditionRules } from '../edition-rules.tsx'
import { ruleAnchor } from '../../_parts/rule-address.ts'

export const metadata: Metadata = { title: 'A rule book' }

/** One edition of a rule book to read: what its levels give, then every rule with its source and mark. */
export default async function EditionPage({
  params,
  searchParams,
}: {
  params: Promise<{ edition: string }>
  searchParams: Promise<AddressWords>
}) {
  const { edition: id } = await params
  const path = `/rulebooks/${id}`
  const visitor = await visitorOf(path)
  const read = valueForPage(
    await callQuery(runtime(), readEdition, { input: { edition: id } }, await caller()),
    path,
  )
  const { edition, book, standing, unconfirmed, sections, others } = read
  const mayConfirm = visitor.programWide.includes('confirm-rules')
  const justConfirmed = confirmedJustNow(sections, addressWord(await searchParams, 'confirmed'))
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: '/rulebooks', words: 'Rule books' }}
        title={edition.name}
        lead={
          <>
            The {book.name}, as this program adopted it: what each level gives, and every rule with its source
            and how well it is supported.{' '}
            <strong>{unconfirmedSentence({ fromMemory: read.marks['from-memory'], unconfirmed })}</strong>
          </>
        }
      />
      <div className="stack">
        {justConfirmed === undefined ? null : (
          <Notice kind="kept">
            <p>
              Confirmed: <a href={`#${ruleAnchor(justConfirmed.id)}`}>{justConfirmed.id}</a>. It stands in the
              journal, and answers that rest on it say no longer that nobody has confirmed it.
            </p>
          </Notice>
        )}
        <p>
          {standing === 'in-force' ? null : `${capitalised(EDITION_STANDINGS[standing])}. `}
          {inForceSentence(edition)}{' '}
          {edition.successor === undefined ? null : successorSentence(edition.successor)}
        </p>
        <p className="entry">{edition.says}</p>
        {others.length === 0 ? null : (
          <details>
            <summary>What differs from another edition</summary>
            <ul>
              {others.map(({ id: other, name }) => (
                <li key={other}>
                  <a href={`${path}/against/${other}`}>From {name}</a>
                </li>
              ))}
            </ul>
          </details>
        )}
        <p>
          <strong>{AUTHORITY_IS_NOT_SAFETY}</strong>
        </p>
      </div>
      <EditionRules read={read} {...(mayConfirm ? { confirmAt: `${path}/confirm` } : {})} />
    </DeskPage>
  )
}

/** The rule that the address says was confirmed a moment ago, where that is so. */
function confirmedJustNow(
  sections: readonly { rules: readonly RuleToRead[] }[],
  rule: string | undefined,
): RuleToRead | undefined {
  return sections
    .flatMap(({ rules }) => rules)
    .find(({ id, confirmed }) => id === rule && confirmed !== undefined)
}
