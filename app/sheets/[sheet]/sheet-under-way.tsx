import { runtime } from '../../../lib/usecases/door/runtime.ts'
import type { Visitor } from '../../_door/visitor.ts'
import { DeskPage } from '../../_parts/desk-page.tsx'
import { PageHeading } from '../../_parts/page-heading.tsx'

const PHASES = {
  waiting: 'It waits for its turn.',
  rows: 'Its rows are read.',
  together: 'All of it is looked at together with what is on record.',
  writing: 'Its records are being written.',
} as const

/** How far the bringing in of a sheet has come. It goes on whether this page is open or not. */
export function SheetUnderWay({ visitor, sheet }: { visitor: Visitor; sheet: string }) {
  const progress = runtime().sheetsUnderWay.get(sheet)
  const isKnown = progress !== undefined && progress.phase !== 'not-done'
  return (
    <DeskPage visitor={visitor}>
      {/* Without scripts too, the page looks again by itself. */}
      <meta httpEquiv="refresh" content="2" />
      <PageHeading
        within={{ href: '/sheets', words: 'Bring in a sheet' }}
        title="It is being brought in"
        lead="You may close this page: it goes on, and the sheet says afterwards how it ended."
      />
      <p role="status">
        {isKnown ? PHASES[progress.phase] : 'It has ended.'}
        {isKnown && progress.of > 0
          ? ` ${progress.done.toLocaleString('en')} of ${progress.of.toLocaleString('en')}.`
          : ''}
      </p>
      {isKnown && progress.of > 0 ? (
        <progress value={progress.done} max={progress.of} aria-label="How far it has come" />
      ) : null}
      <p>
        <a href={`/sheets/${sheet}`}>Look again</a>
      </p>
    </DeskPage>
  )
}
