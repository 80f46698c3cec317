import { Notice } from '../_parts/notice.tsx'

/** Why the list is as good as empty in a program that has just begun, and the first act that there is. */
export function NobodyYet() {
  return (
    <Notice>
      <p>
        <strong>Nobody is on record yet but who began the program.</strong> People, their cards and
        certificates, places, logs and trees come in by a program file, on the machine on which Kerfbook runs:
      </p>
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
