/** A hitch of the season: the id of its work list, its name, where it works, and its first and last day. */
export type Hitch = { list: HitchList; name: string; place: string; firstDay: string; lastDay: string }

const rows = [
  ['h-01', 'Rough Gate shakedown', 'rough-gate', '2027-06-07', '2027-06-11'],
  ['h-02', 'Lower Quill log-out', 'lower-quill', '2027-06-10', '2027-06-16'],
  ['h-03', 'Ashlar Pass log-out', 'ashlar-pass', '2027-06-14', '2027-06-21'],
  ['h-04', 'Tarn Bridge stringers', 'tarn-bridge', '2027-06-14', '2027-06-19'],
  ['h-05', 'Quill Bend log-out', 'quill-bend', '2027-06-19', '2027-06-24'],
  ['h-06', 'Sable camp hazard trees', 'sable-camp', '2027-06-21', '2027-06-26'],
  ['h-07', 'Cold Fork log-out', 'cold-fork', '2027-06-28', '2027-07-06'],
  ['h-08', 'Sable outlet log-out', 'sable-outlet', '2027-07-01', '2027-07-06'],
  ['h-09', 'Quill headwater', 'quill-headwater', '2027-07-05', '2027-07-12'],
  ['h-10', 'Heron Flat log-out', 'heron-flat', '2027-07-07', '2027-07-11'],
  ['h-11', 'Windfall Basin clear-out', 'windfall-basin', '2027-07-08', '2027-07-15'],
  ['h-12', 'Sable Lake hazard trees', 'sable-camp', '2027-07-10', '2027-07-16'],
  ['h-13', 'Larch Bench log-out, in two parties', 'larch-bench', '2027-07-14', '2027-07-21'],
  ['h-14', 'North rim log-out', 'north-rim', '2027-07-19', '2027-07-25'],
  ['h-15', 'Upper Quill log-out', 'upper-quill', '2027-07-22', '2027-07-28'],
  ['h-16', 'Granite Step log-out', 'granite-step', '2027-08-02', '2027-08-07'],
  ['h-17', 'Sable north shore and Lantern Creek', 'sable-north-shore', '2027-08-09', '2027-08-17'],
  ['h-18', 'Youth corps log-out', 'lower-quill', '2027-08-16', '2027-08-21'],
  ['h-19', 'Ridge bridge stringers', 'ridge-bridge', '2027-08-30', '2027-09-04'],
  ['h-20', 'Late windfall, Cold Fork', 'cold-fork', '2027-09-06', '2027-09-15'],
  ['h-21', 'Quill Bend second pass', 'quill-bend', '2027-09-13', '2027-09-17'],
  ['h-22', 'Camp closing trees', 'sable-camp', '2027-09-20', '2027-09-25'],
  ['h-23', 'Ashlar Pass second pass', 'ashlar-pass', '2027-09-30', '2027-10-07'],
  ['h-24', 'Rack and road', 'rough-gate', '2027-10-15', '2027-10-19'],
] as const

/** The key of a hitch's work list. */
export type HitchList = (typeof rows)[number][0]

/** The 24 hitches of the season of 2027: 20 weeks from 7 June. */
export const hitches: readonly Hitch[] = rows.map(([list, name, place, firstDay, lastDay]) => ({
  list,
  name,
  place,
  firstDay,
  lastDay,
}))

/** One hitch by its work list. */
export function hitch(list: HitchList): Hitch {
  const found = hitches.find((candidate) => candidate.list === list)
  if (found === undefined) throw new Error(`no hitch ${list}`)
  return found
}
