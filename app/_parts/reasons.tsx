import type { Finding, Met } from '../../lib/core/authority/answer.ts'
import type { ExplainedDays } from '../../lib/core/authority/explain.ts'
import type { RuleRef } from '../../lib/core/rulebooks/rule-ref.ts'
import type { Status } from '../../lib/drawings/status.ts'
import { statusOfFinding } from '../../lib/drawings/status.ts'
import { besideText, recordedText, spokenByText } from '../../lib/wording/chains.ts'
import { findingSentence } from '../../lib/wording/findings.ts'
import { capitalised } from '../../lib/wording/lists.ts'
import { metSentence } from '../../lib/wording/met.ts'
import type { Names } from '../../lib/wording/names.ts'
import { runSentence } from '../../lib/wording/one-answer.ts'
import type { ShownRecord } from '../../lib/wording/record-index.ts'
import { standingText } from '../../lib/wording/standings.ts'
import { markWords } from '../../lib/wording/work-words.ts'
import { ruleAddress } from './rule-address.ts'
import { Said } from './said.tsx'
import { StatusShape } from './status-mark.tsx'

/** What a chain of reasons needs besides itself. */
export type ReasonWords = {
  names: Names
  /** The levels that may supervise this work by the governing book. */
  supervisors: readonly string[]
  /** The records that the chain names, by id; nothing where the reader may not read them. */
  records?: ReadonlyMap<string, readonly ShownRecord[]>
  /** Whether rules lead to their edition, and entries to the journal for those who may read it. */
  leads?: { toJournal: boolean }
}

/** The whole chain behind one answer, run by run: every requirement with its rule and its records. */
export function Reasons({ chain, words }: { chain: readonly ExplainedDays[]; words: ReasonWords }) {
  const { names, supervisors } = words
  return (
    <div className="reasons">
      {chain.map((days) => (
        <section key={days.first} className="run">
          <h3>{runSentence(days, words)}</h3>
          <p className="small">{capitalised(spokenByText(days.spokenBy, names))}</p>
          {days.findings.length === 0 ? <p className="small">Every requirement is met.</p> : null}
          <ol className="chain">
            {days.findings.map((finding, at) => (
              <Step
                key={`not met ${at}`}
                status={statusOfFinding(finding)}
                heard="Not met: "
                sentence={findingSentence(finding, names)}
                step={finding}
                words={words}
              />
            ))}
            {days.met.map((met, at) => (
              <Step
                key={`met ${at}`}
                status="current"
                heard="Met: "
                sentence={metSentence(met, names)}
                step={met}
                words={words}
              />
            ))}
          </ol>
          {days.others.length === 0 ? null : (
            <>
              <h4>What else is on record, and gives no more</h4>
              {days.others.map((other, at) => (
                <div key={at}>
                  <p className="small">
                    {capitalised(besideText(other.spokenBy, names))} By it:{' '}
                    {standingText(other.standing, supervisors)}.
                  </p>
                  <ol className="chain">
                    {other.findings.map((finding, place) => (
                      <Step
                        key={place}
                        status={statusOfFinding(finding)}
                        heard="Not met: "
                        sentence={findingSentence(finding, names)}
                        step={finding}
                        words={words}
                      />
                    ))}
                  </ol>
                </div>
              ))}
            </>
          )}
        </section>
      ))}
      {words.records === undefined ? (
        <p className="caption">
          What the records say is for those who may read this person’s record. Here they stand by their ids
          alone.
        </p>
      ) : null}
    </div>
  )
}

function Step({
  status,
  heard,
  sentence,
  step,
  words,
}: {
  status: Status
  /** What the shape says to those who do not see it. */
  heard: string
  sentence: string
  step: Finding | Met
  words: ReasonWords
}) {
  return (
    <li>
      <StatusShape of={status} />
      <p>
        <span className="hidden-by-sight">{heard}</span>
        <Said>{sentence}</Said>
      </p>
      {step.rule === undefined ? null : <Rule rule={step.rule} leads={words.leads !== undefined} />}
      {step.records.map((id) => (
        <RecordLines key={id} id={id} words={words} />
      ))}
    </li>
  )
}

function Rule({ rule: { rule, source, mark, edition }, leads }: { rule: RuleRef; leads: boolean }) {
  return (
    <p className="cites">
      Rule {leads ? <a href={ruleAddress({ edition, rule })}>{rule}</a> : rule}: {source} ({markWords[mark]})
    </p>
  )
}

function RecordLines({ id, words: { records, leads } }: { id: string; words: ReasonWords }) {
  if (records === undefined) return <p className="cites">Record {id}</p>
  return (records.get(id) ?? []).map((record) => {
    const recorded = <Said>{recordedText(record)}</Said>
    return (
      <p key={record.section} className="cites">
        Record {record.section}/{record.id}:{' '}
        <span className="entry">
          <Said>{record.says}</Said>
        </span>{' '}
        ({leads?.toJournal === true ? <a href={`/journal/${record.entry}`}>{recorded}</a> : recorded})
      </p>
    )
  })
}
