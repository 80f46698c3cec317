import { Notice } from '../_parts/notice.tsx'

/** Why the list is as good as empty in a program that has just begun, and the first act that there is. */
export function NobodyYet() {
  return (
    <Notice>
      <p>
        <strong>Nobody is on record yet but who began the program.</strong> People, their cards and
        certificates, places, logs and trees are entered by hand: first the{' '}
        <a href="/records/organisations/new">organisations</a> and the{' '}
        <a href="/records/places/new">places and units</a>, then the <a href="/people/new">people</a>.
      </p>
      <p>Or they come in all at once by a program file, on the machine on which Kerfbook runs:</p>
      <ul>
        <li>
          <span className="entry">npm run -s kerfbook -- take-out --into FILE</span> writes what is here, as
          the file to begin with;
        </li>
        <li>
          <span className="entry">npm run -s kerfbook -- bring-in FILE</span> brings in what you added to it.
        </li>
      </ul>
    </Notice>
  )
}
