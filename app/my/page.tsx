import type { Metadata } from 'next'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import { myRecord, type MyRecord } from '../../lib/usecases/people/my-record.ts'
import { dayText, spanText } from '../../lib/wording/days.ts'
import { heldText } from '../../lib/wording/held.ts'
import { capitalised } from '../../lib/wording/lists.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../../lib/wording/notice.ts'
import { ownSayings, renewalHeading, renewalSentences } from '../../lib/wording/own-record.ts'
import { asOfSentence } from '../../lib/wording/openings.ts'
import { valueForPage } from '../_door/value-for-page.ts'
import { caller, visitorOf } from '../_door/visitor.ts'
import { DeskPage } from '../_parts/desk-page.tsx'
import { Said } from '../_parts/said.tsx'
import { Section } from '../_parts/section.tsx'
import { Authority } from '../people/[id]/authority.tsx'
import { OUTCOME_WORDS } from '../records/[kind]/[id]/said-wrong.tsx'
import { recordPath } from '../records/section-words.ts'
import type { RecordSection } from '../../lib/usecases/records/record-kinds.ts'

export const metadata: Metadata = { title: 'My record' }

const PATH = '/my'

/** One's own record, on a phone first: when bucking and felling lapse, what must be done by when, then all behind it. */
export default async function MyPage() {
  const visitor = await visitorOf(PATH)
  const mine = valueForPage(await callQuery(runtime(), myRecord, { input: {} }, await caller()), PATH)
  const own = `/people/${encodeURIComponent(mine.id)}`
  return (
    <DeskPage visitor={visitor}>
      <header className="heading own">
        <h1>My record</h1>
      </header>
      <div className="stack own-first">
        <Lapses mine={mine} />
        <Renewals mine={mine} />
        <p>
          <strong>{AUTHORITY_IS_NOT_SAFETY}</strong>
        </p>
      </div>
      <Section id="cards" title="Cards and certificates">
        <Held mine={mine} />
        <p>
          <a href={`${own}#cards`}>The records behind this, and how each came to be</a>
        </p>
      </Section>
      <Section id="hitches" title="Hitches">
        {mine.hitches.length === 0 ? (
          <p>You are in no crew from today on.</p>
        ) : (
          <ul className="marked">
            {mine.hitches.map(({ id, number, name, place, firstDay, lastDay }) => (
              <li key={`${id} ${firstDay}`}>
                <a href={recordPath('hitches', id)}>
                  {number}, <bdi>{name}</bdi>
                </a>
                , {spanText({ first: firstDay, last: lastDay })}, at <bdi>{mine.names.place(place)}</bdi>
              </li>
            ))}
          </ul>
        )}
      </Section>
      <Section id="wrong" title="What I said is wrong">
        <Disputes mine={mine} />
        <p>
          <a href={own}>Something else is wrong: choose the record, and say so on its page</a>
        </p>
      </Section>
      <Section id="about" title="This record is about you">
        <ul className="marked">
          <li>
            <a href={own}>Everything held about me, as a page</a>
          </li>
          <li>
            <a href="/my/everything.json">Everything held about me, as a file</a>
          </li>
          <li>
            <a href="/my/looked">Who has looked</a>
          </li>
        </ul>
        <p className="caption">{asOfSentence(mine.n, mine.statedAt, mine.today)}</p>
      </Section>
      <Authority person={mine} known={undefined} />
    </DeskPage>
  )
}

function Lapses({ mine }: { mine: MyRecord }) {
  return (
    <>
      {ownSayings(mine.strata, mine.today, mine.names).map(({ workKind, says, why }) => (
        <div key={workKind} className="own-saying">
          <p className="lead">
            <Said>{says}</Said>
          </p>
          {why.map((sentence) => (
            <p key={sentence} className="caption">
              <Said>{sentence}</Said>
            </p>
          ))}
        </div>
      ))}
    </>
  )
}

function Renewals({ mine }: { mine: MyRecord }) {
  if (mine.renewals.length === 0)
    return <p>Nothing that you hold and that lapses takes anything away: there is nothing to renew now.</p>
  return (
    <section aria-labelledby="renew" className="own-renew">
      <h2 id="renew">What you must do</h2>
      <ol>
        {mine.renewals.map((renewal) => (
          <li key={JSON.stringify(renewal.what)}>
            <strong>
              <Said>{renewalHeading(renewal, mine.today, mine.names)}</Said>.
            </strong>{' '}
            {renewalSentences(renewal.then).join(' ')}
          </li>
        ))}
      </ol>
    </section>
  )
}

function Held({ mine }: { mine: MyRecord }) {
  const held = mine.holdings.filter(({ last, what }) => last !== undefined && what.kind !== 'suspension')
  if (held.length === 0) return <p>No card or certificate of yours is good today.</p>
  return (
    <ul className="marked">
      {held.map(({ what, last }) => (
        <li key={JSON.stringify(what)}>
          <Said>{capitalised(heldText(what, mine.names))}</Said>
          {last === undefined ? '' : `, through ${dayText(last)}`}
        </li>
      ))}
    </ul>
  )
}

function Disputes({ mine }: { mine: MyRecord }) {
  if (mine.disputes.length === 0) return <p>Nothing so far.</p>
  return (
    <ul className="marked">
      {mine.disputes.map(({ id, section, record, says, day, answerBy, answered }) => (
        <li key={id}>
          <a href={recordPath(section as RecordSection, record)}>
            <Said>{says}</Said>
          </a>
          , said on {dayText(day)}.{' '}
          {answered === undefined
            ? `It is received, and is to be answered by ${dayText(answerBy)} by somebody who did not record it.`
            : `${OUTCOME_WORDS[answered.outcome]} ${answered.by}, ${dayText(answered.day)}: ${answered.says}`}
        </li>
      ))}
    </ul>
  )
}
