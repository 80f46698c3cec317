import type { Caution as CautionFact } from '../../lib/core/cautions/cautions.schema.ts'

/** A caution that belongs to the work, with its source; it gates nobody and nothing. */
export function Caution({
  caution: { id, name, text, source, version },
}: {
  caution: Pick<CautionFact, 'id' | 'name' | 'text' | 'source' | 'version'>
}) {
  return (
    <section className="caution" aria-labelledby={`caution-${id}`}>
      <h3 id={`caution-${id}`}>{name}</h3>
      <p>{text}</p>
      <p className="caption">
        {source} (version {version})
      </p>
    </section>
  )
}
