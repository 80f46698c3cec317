import type { Rating } from '../../../../lib/core/work/work.schema.ts'
import { callQuery } from '../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { worksheetOfItem } from '../../../../lib/usecases/records/worksheet-of-item.ts'
import {
  factorSentence,
  worksheetProblemSentence,
  worksheetSentences,
} from '../../../../lib/wording/worksheets.ts'
import { valueForPage } from '../../../_door/value-for-page.ts'
import { caller } from '../../../_door/visitor.ts'
import { capitalised } from '../../../../lib/wording/lists.ts'
import { dayText } from '../../../../lib/wording/days.ts'
import { Section } from '../../../_parts/section.tsx'
import { SheetOnPaper } from './sheet-on-paper.tsx'

/** What was seen at a log or tree, by the worksheet of the edition of that day, and what it makes the work at least. */
export async function WhatWasSeen({ rating, own }: { rating: Rating; own: string }) {
  const { id, item, day, observations } = rating
  if (observations === undefined) return null
  const sheet = valueForPage(
    await callQuery(runtime(), worksheetOfItem, { input: { item, day, observations } }, await caller()),
    own,
  )
  const { read, edition, rated } = sheet
  if (read === undefined) return null
  const lines = read.ok
    ? [...worksheetSentences(read.value), ...read.value.factors.map(factorSentence)]
    : read.problem.map(worksheetProblemSentence)
  return (
    <Section id="seen" title="What was seen" caption={`By the worksheet of ${edition.name}.`}>
      <ul className="histories">
        {[...new Set(lines)].map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <SheetOnPaper
        sheet={sheet}
        seen={observations}
        signed={capitalised(`${rated.find((one) => one.id === id)?.says ?? `rated on ${dayText(day)}`}.`)}
      />
    </Section>
  )
}
