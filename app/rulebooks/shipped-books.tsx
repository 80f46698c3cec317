import type { ListedShipped } from '../../lib/usecases/rulebooks/shipped.ts'
import { Section } from '../_parts/section.tsx'

/** The books that ship and are not adopted here, each to be read first; and adopted editions that ship otherwise. */
export function ShippedBooks({ notAdopted, otherwise }: ListedShipped) {
  return (
    <Section
      id="shipped"
      title="Books that ship"
      caption="They come with this version. Nothing here rests on one until it is adopted."
    >
      {notAdopted.length === 0 ? <p>Every book that ships is adopted here.</p> : null}
      <ul className="rules">
        {notAdopted.map(({ id, name, says }) => (
          <li key={id} className="rule-item">
            <h3>
              <a href={`/rulebooks/shipped/${id}`}>{name}</a>
            </h3>
            <div className="rule-body">
              <p>
                <strong>Not adopted here.</strong> {says}
              </p>
            </div>
          </li>
        ))}
        {otherwise.map(({ book, edition, name, adopted }) => (
          <li key={edition} className="rule-item">
            <h3>{name}</h3>
            <div className="rule-body">
              {adopted ? (
                <p>
                  It ships with this version otherwise than it was adopted here. What was adopted counts.{' '}
                  <a href={`/rulebooks/shipped/${book}/against/${edition}`}>
                    What differs<span className="hidden-by-sight"> in {name}</span>
                  </a>
                </p>
              ) : (
                <p>
                  This edition ships with this version and was not adopted here.{' '}
                  <a href={`/rulebooks/shipped/${book}`}>
                    Read it<span className="hidden-by-sight">: {name}</span>
                  </a>
                </p>
              )}
            </div>
          </li>
        ))}
      </ul>
    </Section>
  )
}
