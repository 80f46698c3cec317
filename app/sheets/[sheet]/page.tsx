import type { Metadata } from 'next'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../lib/usecases/door/runtime.ts'
import { listSheets, trySheet, type Tried } from '../../../lib/usecases/sheets/desk-of-sheets.ts'
import { isUnderWay } from '../../../lib/usecases/sheets/start-bringing-in.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../../../lib/wording/notice.ts'
import { sheetKindWords } from '../../../lib/wording/sheets.ts'
import { freshForm } from '../../_door/form-outcome.ts'
import { valueForPage } from '../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../_door/visitor.ts'
import { addressWord, type AddressWords } from '../../_parts/address.ts'
import { DeskPage } from '../../_parts/desk-page.tsx'
import { SubmitButton } from '../../_parts/fields.client.tsx'
import { Form } from '../../_parts/form.client.tsx'
import { Notice } from '../../_parts/notice.tsx'
import { PageHeading } from '../../_parts/page-heading.tsx'
import { Section } from '../../_parts/section.tsx'
import { bringInAction, settleAction, throwAwayAction } from '../sheet-actions.ts'
import { SettleForm } from '../settle-form.client.tsx'
import {
  askedFields,
  askedMatches,
  attestsOf,
  MOST_MATCHES,
  settledValues,
  waysToMatch,
} from '../sheet-words.ts'
import { PlannedRows } from './planned-rows.tsx'
import { SheetUnderWay } from './sheet-under-way.tsx'

export const metadata: Metadata = { title: 'A sheet' }

/** A sheet of the desk: what it would do, what is asked about it, and the way to bring it in. */
export default async function SheetPage({
  params,
  searchParams,
}: {
  params: Promise<{ sheet: string }>
  searchParams: Promise<AddressWords>
}) {
  const { sheet } = await params
  const path = `/sheets/${encodeURIComponent(sheet)}`
  const visitor = await visitorOf(path)
  if (isUnderWay(runtime(), sheet) && (await isOwn(sheet, path)))
    return <SheetUnderWay visitor={visitor} sheet={sheet} />
  const tried = valueForPage(await callQuery(runtime(), trySheet, { input: { sheet } }, await caller()), path)
  const words = await searchParams
  const { kept, plan } = tried
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: '/sheets', words: 'Bring in a sheet' }}
        title={kept.name}
        lead={`A sheet of ${sheetKindWords[kept.kind]}: ${kept.sheet.rows.length} ${kept.sheet.rows.length === 1 ? 'row' : 'rows'}. ${AUTHORITY_IS_NOT_SAFETY}`}
      />
      <Ended sheet={sheet} tried={tried} did={addressWord(words, 'did')} />
      <div className="stack-wide">
        {kept.entry === undefined ? <Asked tried={tried} /> : null}
        <Section
          id="rows"
          title={kept.entry === undefined ? 'What it would do' : 'How its rows stand now'}
          caption="An empty cell changes nothing."
        >
          {plan.problems.map((problem) => (
            <Notice key={problem}>
              <p>{problem}</p>
            </Notice>
          ))}
          {kept.entry === undefined ? (
            <p>
              <a href="#in">Go on to bring it in</a>
            </p>
          ) : null}
          <PlannedRows path={path} words={words} tried={tried} />
        </Section>
        {kept.entry === undefined ? (
          <Section id="in" title="Bring it in">
            <BringIn tried={tried} />
          </Section>
        ) : null}
        <Section id="away" title="Throw it away">
          <Form action={throwAwayAction.bind(null, { sheet: kept.id })} first={freshForm()}>
            <p>
              The sheet goes from your desk. {kept.entry === undefined ? '' : 'What it brought in stays.'}
            </p>
            <SubmitButton>Throw the sheet away</SubmitButton>
          </Form>
        </Section>
      </div>
    </DeskPage>
  )
}

/** Whether it lies on the visitor's own desk: how far another's has come is nobody's business. */
async function isOwn(sheet: string, path: string): Promise<boolean> {
  const { sheets } = valueForPage(await callQuery(runtime(), listSheets, { input: {} }, await caller()), path)
  return sheets.some(({ id }) => id === sheet)
}

function Ended({ sheet, tried: { kept }, did }: { sheet: string; tried: Tried; did: string | undefined }) {
  const progress = runtime().sheetsUnderWay.get(sheet)
  if (kept.entry !== undefined)
    return (
      <Notice kind="kept">
        <p>
          {did === 'brought-in' ? 'It is on record. ' : ''}This sheet was brought in by entry {kept.entry}.{' '}
          <a href={`/sheets/undo/${kept.entry}`}>Undo it</a>
        </p>
      </Notice>
    )
  if (progress?.phase === 'not-done')
    return (
      <Notice>
        <p>
          <strong>It was not brought in.</strong> {progress.because}
        </p>
      </Notice>
    )
  return null
}

function Asked({ tried }: { tried: Tried }) {
  const { kept, plan } = tried
  const waiting = plan.matches.length - MOST_MATCHES
  return (
    <Section id="asked" title="How it is read">
      {plan.missing.length === 0 ? null : (
        <p>Not found in it: {plan.missing.map(({ label }) => label).join(', ')}. New records need it.</p>
      )}
      {waiting > 0 ? (
        <p>
          {MOST_MATCHES} of {plan.matches.length} names are asked here; the others come when these are
          answered.
        </p>
      ) : null}
      <SettleForm
        key={JSON.stringify(kept.settings)}
        action={settleAction.bind(null, { sheet: kept.id })}
        first={{ ...freshForm(), values: settledValues(tried) }}
        fields={askedFields(tried)}
        headings={kept.sheet.head}
        days={plan.days.example ?? (kept.settings.days === undefined ? undefined : '2/3/27')}
        matches={askedMatches(tried)}
        mayBeNew={kept.kind === 'people'}
        matchBy={waysToMatch(tried)}
        attests={attestsOf(tried)}
      />
    </Section>
  )
}

function BringIn({ tried: { kept, plan, digest } }: { tried: Tried }) {
  const { add, change, asked, cannot } = plan.counts
  const left = asked + cannot
  if (add + change === 0)
    return (
      <p>
        {left === 0
          ? 'All of it is on record as it stands: there is nothing to bring in.'
          : 'None of its rows can be brought in as they are.'}
      </p>
    )
  return (
    <Form action={bringInAction.bind(null, { sheet: kept.id })} first={freshForm()}>
      <input type="hidden" name="plan" value={digest} />
      <p>
        {add} to add, {change} to change, as one entry or not at all.{' '}
        {left === 0
          ? ''
          : `${left} ${left === 1 ? 'row is' : 'rows are'} left behind; download those that cannot be, put them right and bring them in afterwards.`}
      </p>
      <SubmitButton>
        {add + change === 1 ? 'Bring in this row' : `Bring in these ${add + change} rows`}
      </SubmitButton>
    </Form>
  )
}
