/** A level: its letter in a box, never a colour. */
export function Level({ of: level }: { of: string }) {
  return (
    <span className="level">
      <span className="hidden-by-sight">level </span>
      {level}
    </span>
  )
}
