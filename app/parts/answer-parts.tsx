import type { Finding, Met } from '../../lib/core/authority/answer.ts'
import type { ExplainedDays } from '../../lib/core/authority/explain.ts'
import { dateOf } from '../../lib/core/calendar/dates.ts'
import { readInstant } from '../../lib/core/calendar/instants.ts'
import type { RuleRef } from '../../lib/core/rulebooks/rule-ref.ts'
import type { Names } from '../../lib/wording/names.ts'
import type { ShownRecord } from '../../lib/wording/record-index.ts'
import { Caution } from '../_parts/caution.tsx'
import { Notice } from '../_parts/notice.tsx'
import { Reasons } from '../_parts/reasons.tsx'
import { Section } from '../_parts/section.tsx'

const rule = (id: string, source: string, mark: RuleRef['mark']): RuleRef => ({
  rule: id,
  source,
  mark,
  edition: 'an-edition',
})

const MET: readonly Met[] = [
  {
    kind: 'card-in-force',
    firstDay: dateOf('2025-04-14'),
    lastDay: dateOf('2028-04-13'),
    rule: rule('term', 'a published section', 'published'),
    records: ['a-card'],
  },
]

const NOT_MET: readonly Finding[] = [
  {
    kind: 'certificate-lapsed',
    subject: 'cpr',
    lastDay: dateOf('2027-07-11'),
    allows: 'none',
    rule: rule('certificates', 'a published section', 'published'),
    records: ['a-certificate'],
  },
  {
    kind: 'certificate-not-on-record',
    subject: 'first-aid',
    allows: 'unknown',
    rule: rule('certificates', 'no source', 'from-memory'),
    records: [],
  },
]

const CHAIN: readonly ExplainedDays[] = [
  {
    first: dateOf('2027-07-08'),
    last: dateOf('2027-07-11'),
    standing: 'independent',
    spokenBy: { by: 'card', card: 'a-card', level: 'B' },
    met: MET,
    findings: [],
    others: [],
  },
  {
    first: dateOf('2027-07-12'),
    last: dateOf('2027-07-15'),
    standing: 'none',
    spokenBy: { by: 'card', card: 'a-card', level: 'B' },
    met: MET,
    findings: NOT_MET,
    others: [{ spokenBy: { by: 'assignment' }, standing: 'none', findings: NOT_MET.slice(0, 1) }],
  },
]

const statedAt = readInstant('2027-04-14T16:40:00Z')
const record = (section: ShownRecord['section'], id: string, says: string): ShownRecord => ({
  section,
  id,
  entry: 60,
  actor: 'Inês Caldwell-Moraes',
  ...(statedAt === undefined ? {} : { statedAt }),
  says,
})

const RECORDS = new Map([
  ['a-card', [record('cards', 'a-card', 'card K-0431, level B, from 14 April 2025 to 13 April 2028')]],
  ['a-certificate', [record('certificates', 'a-certificate', 'CPR, in person, through 11 July 2027, seen')]],
])

const asItIs = (id: string) => id
const NAMES: Names = {
  person: asItIs,
  place: asItIs,
  organisation: asItIs,
  book: asItIs,
  edition: asItIs,
  item: asItIs,
  hitch: asItIs,
  card: () => 'card K-0431',
  subject: (id) => (id === 'cpr' ? 'CPR' : 'first aid'),
  levelsFrom: (_edition, level) => [level],
}

/** Chains of reasons, cautions and notices. */
export function AnswerParts() {
  return (
    <>
      <Section
        id="chain"
        title="Chain of reasons"
        caption="By runs of days: what is not met, what is, each with its rule, source, mark and records"
      >
        <Reasons chain={CHAIN} words={{ names: NAMES, supervisors: ['B', 'C'], records: RECORDS }} />
        <h3>Where the reader may not read the record</h3>
        <Reasons chain={CHAIN.slice(1)} words={{ names: NAMES, supervisors: ['B', 'C'] }} />
      </Section>
      <Section id="cautions" title="Caution" caption="Stands beside the work it belongs to, with its source">
        <Caution
          caution={{
            id: 'sample',
            name: 'Spring poles',
            text: 'Leave it if you can. If it must go, one trained sawyer only, and nobody else within two tree lengths while the stress is let out.',
            source: 'A published source, by section',
            version: 2,
          }}
        />
      </Section>
      <Section id="notices" title="Notice" caption="Something to know; or that somebody’s words are kept">
        <Notice>
          <p>You see that evaluations exist, and their outcome.</p>
        </Notice>
        <Notice kind="kept">
          <p>Your words are kept.</p>
        </Notice>
      </Section>
    </>
  )
}
