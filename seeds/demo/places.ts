import { COOPERATOR, GANNET_FOLD, HALDEN, LANTERN_CREEK, STAFF, type Draft } from './draft.ts'
import { entry } from './entries.ts'

/** The agency, the two partners, and a contractor's firm. */
export const organisations: Draft<'organisations'>[] = [
  { id: STAFF, recordedIn: entry('partners'), name: 'Ashlar Range, agency staff' },
  { id: LANTERN_CREEK, recordedIn: entry('partners'), name: 'Lantern Creek Trail Volunteers' },
  { id: HALDEN, recordedIn: entry('partners'), name: 'Halden Youth Corps' },
  { id: GANNET_FOLD, recordedIn: entry('partners'), name: 'Gannet Fold Trailworks, a contractor' },
]

function place(id: string, name: string, parent: string): Draft<'places'> {
  return { id, recordedIn: entry('places'), name, kind: 'place', parent }
}

function unit(id: string, name: string): Draft<'places'> {
  return { id, recordedIn: entry('places'), name, kind: 'unit', parent: 'ashlar-range' }
}

/** The invented range: three wilderness units and what lies in them. */
export const places: Draft<'places'>[] = [
  { id: 'ashlar-range', recordedIn: entry('places'), name: 'Ashlar Range', kind: 'program' },
  unit('quill-river', 'Quill River'),
  unit('sable-lake', 'Sable Lake'),
  unit('north-ashlar', 'North Ashlar'),

  place('rough-gate', 'Rough Gate work centre', 'quill-river'),
  place('lower-quill', 'Lower Quill', 'quill-river'),
  place('quill-bend', 'Quill Bend', 'quill-river'),
  place('quill-headwater', 'Quill headwater', 'quill-river'),
  place('upper-quill', 'Upper Quill', 'quill-river'),
  place('ridge-bridge', 'Ridge bridge', 'quill-river'),
  place('heron-flat', 'Heron Flat', 'quill-river'),

  place('tarn-bridge', 'Tarn Bridge', 'sable-lake'),
  place('sable-camp', 'Sable camp', 'sable-lake'),
  place('sable-outlet', 'Sable outlet', 'sable-lake'),
  place('sable-north-shore', 'Sable north shore', 'sable-lake'),
  place('granite-step', 'Granite Step', 'sable-lake'),
  {
    // The volunteers' own book is in force here in high summer; on other days the program's.
    ...place('lantern-creek', 'Lantern Creek', 'sable-lake'),
    books: [
      { book: COOPERATOR, firstDay: '2025-06-14', lastDay: '2025-08-15' },
      { book: COOPERATOR, firstDay: '2026-06-13', lastDay: '2026-08-14' },
      { book: COOPERATOR, firstDay: '2027-06-12', lastDay: '2027-08-13' },
    ],
  },

  place('ashlar-pass', 'Ashlar Pass', 'north-ashlar'),
  place('cold-fork', 'Cold Fork', 'north-ashlar'),
  place('windfall-basin', 'Windfall Basin', 'north-ashlar'),
  place('north-rim', 'North rim', 'north-ashlar'),
  place('larch-bench', 'Larch Bench', 'north-ashlar'),
  place('larch-bench-upper', 'Larch Bench, the upper trail', 'larch-bench'),
  place('larch-bench-lower', 'Larch Bench, the lower trail', 'larch-bench'),
]
