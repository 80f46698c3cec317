/** What stands on every page of a demonstration. */
export function InventedNotice() {
  return (
    <aside className="invented" aria-label="Demonstration">
      An invented demonstration: the program, its places and its people do not exist.
    </aside>
  )
}
