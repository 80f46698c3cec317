import type { Metadata } from 'next'
import type { RecordSection } from '../../../../lib/usecases/records/record-kinds.ts'
import type { VersionRead } from '../../../../lib/usecases/records/read-record.ts'
import { capitalised } from '../../../../lib/wording/lists.ts'
import { addressWord, type AddressWords } from '../../../_parts/address.ts'
import { DeskPage } from '../../../_parts/desk-page.tsx'
import { Notice } from '../../../_parts/notice.tsx'
import { PageHeading } from '../../../_parts/page-heading.tsx'
import { Said } from '../../../_parts/said.tsx'
import { Section } from '../../../_parts/section.tsx'
import { FORMS } from '../../form/forms.ts'
import { shownFields } from '../../form/shown.ts'
import { mayWrite, recordForPage } from '../../record-at.ts'
import { recordPath, SECTION_WORDS } from '../../section-words.ts'
import { SaidWrong } from './said-wrong.tsx'
import { Stopping } from './stopping.tsx'
import { WhatWasSeen } from './what-was-seen.tsx'
import { WorkAndCrew } from './work-and-crew.tsx'
import { Versions } from './versions.tsx'

type Address = { params: Promise<{ kind: string; id: string }>; searchParams: Promise<AddressWords> }

export const metadata: Metadata = { title: 'A record' }

/** What was done on the page before this one. */
const KEPT: Readonly<Record<string, string>> = {
  entered: 'It is on record. It counts from the next question that is asked.',
  corrected: 'It is corrected. What it said before stays in its history, with why.',
  'stood-down': 'It stands from now on, and stops all that it stops. It waits for a certifying official.',
  noticed: 'It is on record whom the notice reached, and when.',
  confirmed: 'It is confirmed, and is a suspension from now on.',
  disputed: 'It is on record what you say is wrong, and by when you are answered.',
  answered: 'Your answer is on record with it.',
  rated: 'The rating is on record, with what was seen.',
  withdrawn: 'It is withdrawn. It counts no more, and stays in its history, with why.',
}

/** One record: what it says, what to do about it, and how it came to be. */
export default async function RecordPage({ params, searchParams }: Address) {
  const { kind, id } = await params
  const { section, own, visitor, record, choices } = await recordForPage(kind, id)
  const kept = KEPT[addressWord(await searchParams, 'did') ?? '']
  const [latest] = record.versions
  const { title } = SECTION_WORDS[section]
  const isOnRecord = record.version !== undefined
  return (
    <DeskPage visitor={visitor}>
      <PageHeading
        within={{ href: recordPath(section), words: title }}
        title={<Said>{titleOf(section, latest, id, record.person?.name)}</Said>}
        lead="What this record says, and how it came to say it. Nothing is written over: a correction stands beside what it corrects."
      />
      {kept === undefined ? null : (
        <Notice kind="kept">
          <p>{kept}</p>
        </Notice>
      )}
      {isOnRecord ? null : (
        <Notice>
          <p>
            <strong>This record was withdrawn.</strong> It counts no more; its history says who withdrew it,
            and why.
          </p>
        </Notice>
      )}
      <Section id="says" title="What it says">
        {latest === undefined ? null : (
          <dl className="facts">
            {record.person === undefined ? null : (
              <>
                <dt>About</dt>
                <dd>
                  <a href={`/people/${record.person.id}`}>
                    <bdi>{record.person.name}</bdi>
                  </a>
                </dd>
              </>
            )}
            {shownFields(FORMS[section].filter(isNotWhom), latest.fact, choices).map(({ label, text }) => (
              <div key={label} className="fact">
                <dt>{label}</dt>
                <dd>
                  <bdi>{text}</bdi>
                </dd>
              </div>
            ))}
            <div className="fact">
              <dt>Id</dt>
              <dd>{id}</dd>
            </div>
          </dl>
        )}
        {record.hidesBirthDate ? (
          <p className="caption">
            Of an age your roles are told the day they are of age from, where it decides.
          </p>
        ) : null}
        {record.doubts.map((sentence) => (
          <p key={sentence}>
            <strong>To look at:</strong> <Said>{sentence}</Said>
          </p>
        ))}
        {isOnRecord && (section === 'items' || section === 'expectedWork') ? (
          <p className="row">
            <a className="button" href={`${own}/worksheet`}>
              Complexity worksheet
            </a>
            <a className="button" href={`/?item=${encodeURIComponent(id)}&saw=crosscut`}>
              Who may do it
            </a>
          </p>
        ) : null}
        {isOnRecord && mayWrite(visitor, section) ? (
          <p className="row">
            <a className="button" href={`${own}/correct`}>
              Correct it
            </a>
            <a className="button" href={`${own}/withdraw`}>
              {section === 'joins' ? 'Part them again' : 'Withdraw it'}
            </a>
          </p>
        ) : null}
      </Section>
      {latest === undefined || section !== 'suspensions' || !isOnRecord ? null : (
        <Stopping fact={latest.fact} own={own} visitor={visitor} choices={choices} />
      )}
      {latest !== undefined && 'observations' in latest.fact ? (
        <WhatWasSeen rating={latest.fact} own={own} />
      ) : null}
      {section === 'hitches' && isOnRecord ? <WorkAndCrew id={id} own={own} visitor={visitor} /> : null}
      <SaidWrong disputes={record.disputes} isOwn={record.isOwn && isOnRecord} own={own} visitor={visitor} />
      <Section
        id="history"
        title="History"
        caption="Every version, the last one first: since when it was known, by whom, and why."
      >
        <Versions versions={record.versions} readsJournal={visitor.permissions.includes('read-journal')} />
      </Section>
    </DeskPage>
  )
}

/** Longer than this a phrase is no title: the kind of record and whom it is about are. */
const LONGEST_TITLE = 60

function titleOf(
  section: RecordSection,
  latest: VersionRead | undefined,
  id: string,
  person: string | undefined,
): string {
  if (section === 'hitches' && latest !== undefined && 'number' in latest.fact && 'name' in latest.fact)
    return `Hitch ${latest.fact.number}, ${latest.fact.name}`
  const says = latest?.says ?? id
  if (says.length <= LONGEST_TITLE || section === 'people') return capitalised(says)
  const { one } = SECTION_WORDS[section]
  return capitalised(person === undefined ? one : `${one} of ${person}`)
}

/** Whom a record is about stands first, with the way to them. */
function isNotWhom({ path }: { path: string }): boolean {
  return path !== 'person'
}
