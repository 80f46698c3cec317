import type { AnswerForPage } from '../../lib/usecases/authority/ask-for-page.ts'
import { companySentences, memberSentences } from '../../lib/wording/companies.ts'

/** Who would supervise whom in the crew, by runs of days, and what is short. */
export function CrewView({
  crew: { members, days },
  answer: { question, names },
}: {
  crew: NonNullable<AnswerForPage['crew']>
  answer: AnswerForPage
}) {
  return (
    <section className="crew-answer" aria-labelledby="crew">
      <h2 id="crew">The crew: who supervises whom</h2>
      <ul>
        {memberSentences(members, question, names).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <ol>
        {days.map((run) => (
          <li key={run.first} className={run.feasible ? undefined : 'short'}>
            {companySentences(run, names, members).map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
          </li>
        ))}
      </ol>
    </section>
  )
}
