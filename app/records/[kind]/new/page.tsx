import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { freshForm } from '../../../_door/form-outcome.ts'
import { visitorOf } from '../../../_door/visitor.ts'
import { addressWith, addressWord, type AddressWords } from '../../../_parts/address.ts'
import { DeskPage } from '../../../_parts/desk-page.tsx'
import { SubmitButton } from '../../../_parts/fields.client.tsx'
import { Form } from '../../../_parts/form.client.tsx'
import { PageHeading } from '../../../_parts/page-heading.tsx'
import { enterAction } from '../../form/change-actions.ts'
import { namesOffered } from '../../form/form-page.ts'
import { FORMS } from '../../form/forms.ts'
import { withOptions } from '../../form/parts.ts'
import { RecordFields } from '../../form/record-fields.client.tsx'
import { PaperFields, ToldActs } from '../../form/record-form.client.tsx'
import { FIELDS } from '../../form/typed-record.ts'
import { choicesFor, requireWriting, sectionAt } from '../../record-at.ts'
import { recordPath, SECTION_WORDS } from '../../section-words.ts'

type Address = { params: Promise<{ kind: string }>; searchParams: Promise<AddressWords> }

/** The page's title: what is entered. */
export async function generateMetadata({ params }: Address): Promise<Metadata> {
  return { title: `Enter ${SECTION_WORDS[sectionAt((await params).kind)].one}` }
}

/** The page to enter a record by hand. */
export default async function NewRecordPage({ params, searchParams }: Address) {
  const section = sectionAt((await params).kind)
  const words = await searchParams
  if (section === 'people') notFound()
  const path = addressWith(recordPath(section, 'new'), words, {})
  const visitor = await visitorOf(path)
  requireWriting(visitor, section)
  const choices = await choicesFor(path)
  const parts = withOptions(FORMS[section], choices)
  const { title, one, lead } = SECTION_WORDS[section]
  return (
    <DeskPage visitor={visitor}>
      <PageHeading within={{ href: recordPath(section), words: title }} title={`Enter ${one}`} lead={lead} />
      <Form action={enterAction.bind(null, { section })} first={freshForm()}>
        <RecordFields
          parts={parts}
          prefix={FIELDS}
          names={namesOffered(parts, choices)}
          suggested={suggestedBy(words, choices)}
        />
        <PaperFields />
        {section === 'suspensions' || section === 'joins' ? (
          <ToldActs
            tell={section === 'joins' ? 'See what this changes' : 'See whom this stops'}
            act="Record it"
          />
        ) : (
          <SubmitButton>Record it</SubmitButton>
        )}
      </Form>
      <p className="back">
        <a href={recordPath(section)}>Back without entering one</a>
      </p>
    </DeskPage>
  )
}

/** What the address says of the record to come: whom it is about, or which words on a card it is about. */
function suggestedBy(
  words: AddressWords,
  choices: Awaited<ReturnType<typeof choicesFor>>,
): Readonly<Record<string, string>> {
  const person = choices.people.find(({ id }) => id === addressWord(words, 'person'))
  const hitch = choices.hitches.find(({ id }) => id === addressWord(words, 'hitch'))
  const item = choices.items.find(({ id }) => id === addressWord(words, 'item'))
  const said = choices.words.find(({ id }) => id === addressWord(words, 'words'))
  return {
    ...(person === undefined
      ? {}
      : { [`${FIELDS}.person`]: person.name, [`${FIELDS}.subject.person.person`]: person.name }),
    ...(hitch === undefined ? {} : { [`${FIELDS}.hitch`]: hitch.id, [`${FIELDS}.list`]: hitch.id }),
    ...(item === undefined ? {} : { [`${FIELDS}.item`]: item.id }),
    ...(said === undefined ? {} : { [`${FIELDS}.words`]: said.id }),
  }
}
