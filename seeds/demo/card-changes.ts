import { FEDERAL, INVENTED, type Draft } from './draft.ts'
import { entry } from './entries.ts'

const OFFICIAL = 'Petra Lindqvist-Amadi, certifying official'

/** Decisions that a card no longer counts from a day on. */
export const endings: Draft<'endings'>[] = [
  {
    id: 'e-k-0337-1',
    recordedIn: entry('decided-2026-04'),
    card: 'k-0337-1',
    kind: 'replaced',
    firstDay: '2026-04-12',
    decision: 'D-0341: the A card is replaced by a B card',
    by: OFFICIAL,
  },
  {
    id: 'e-k-0341-1',
    recordedIn: entry('decided-2026-05-12'),
    card: 'k-0341-1',
    kind: 'reduced',
    firstDay: '2026-05-12',
    decision: 'D-0358: reduced from B to A after a field evaluation, at the holder’s own wish',
    by: OFFICIAL,
  },
  {
    id: 'e-k-0433-1',
    recordedIn: entry('withdrawn-2026'),
    card: 'k-0433-1',
    kind: 'withdrawn',
    firstDay: '2026-09-21',
    decision: 'D-0384: withdrawn after the incident of 7 September at the north rim',
    by: OFFICIAL,
  },
]

/** What words on a card were found to mean. */
export const resolutions: Draft<'resolutions'>[] = [
  {
    id: 'w-k-0435-1',
    recordedIn: entry('words-2026'),
    card: 'k-0435-1',
    restriction: 'r-1',
    into: [{ id: 'r-1-a', kind: 'greatest-diameter', inches: 18 }],
    by: OFFICIAL,
    reason: 'Seen at work on 20 June 2026; logs to 18 in are what was meant and what she handles well',
  },
]

/** Orders of this program; the one of 2021 comes with the federal book. */
export const extensions: Draft<'extensions'>[] = [
  {
    id: 'late-snow-2027',
    recordedIn: entry('late-snow'),
    book: FEDERAL,
    runsTo: '2027-07-15',
    effectiveDay: '2027-04-26',
    order:
      'Every card that ends from 1 through 15 June 2027 runs through 15 July 2027: the classes are snowed in.',
    source: INVENTED,
    of: { kind: 'window', firstDay: '2027-06-01', lastDay: '2027-06-15' },
  },
  {
    id: 'x-k-0339-1',
    recordedIn: entry('extended-2027'),
    book: FEDERAL,
    runsTo: '2027-08-31',
    effectiveDay: '2027-04-27',
    order: 'Card K-0339, line 1, runs through 31 August 2027.',
    source: INVENTED,
    of: { kind: 'card', card: 'k-0339-1' },
  },
]

/** Suspensions and stand-downs: what was stopped, from which day, who was told when. */
export const suspensions: Draft<'suspensions'>[] = [
  {
    id: 's-2025-wind',
    recordedIn: entry('wind-2025'),
    form: 'stand-down',
    kind: 'administrative',
    subject: { kind: 'work-kind', workKind: 'felling' },
    firstDay: '2025-08-09',
    lastDay: '2025-08-12',
    by: 'Marit Osei-Thornbury, program manager',
    reason:
      'Tops and limbs are down everywhere after the windstorm; nobody fells until the units are looked at',
  },
  {
    // Entered three days late: as known on 11 July 2026 there was no stand-down.
    id: 's-2026-ilievski',
    recordedIn: entry('stand-down-2026'),
    form: 'stand-down',
    kind: 'unsafe-act',
    subject: { kind: 'person', person: 'p-bogdan-ilievski' },
    firstDay: '2026-07-09',
    notices: [{ person: 'p-bogdan-ilievski', at: '2026-07-10T13:30:00Z' }],
    by: 'Tobiah Renquist, lead of the crew',
    reason: 'Stood below a log while his partner finished the cut',
  },
  {
    id: 's-2026-roster',
    recordedIn: entry('roster-2026'),
    form: 'suspension',
    kind: 'administrative',
    subject: { kind: 'organisation', organisation: 'halden-youth-corps' },
    firstDay: '2026-07-20',
    lastDay: '2026-07-24',
    by: 'Marit Osei-Thornbury, program manager',
    reason: 'The roster of the corps is not in',
  },
  {
    id: 's-2026-radoslavov',
    recordedIn: entry('suspended-2026-08'),
    form: 'suspension',
    kind: 'unsafe-act',
    subject: { kind: 'person', person: 'p-ivo-radoslavov' },
    firstDay: '2026-08-18',
    notices: [{ person: 'p-ivo-radoslavov', at: '2026-08-18T20:15:00Z' }],
    by: OFFICIAL,
    reason: 'Cut alone at Cold Fork, out of sight and call of everybody',
  },
  {
    id: 's-2026-k-0433',
    recordedIn: entry('suspended-2026-09'),
    form: 'suspension',
    kind: 'incident',
    subject: { kind: 'card', number: 'K-0433' },
    firstDay: '2026-09-08',
    by: OFFICIAL,
    reason: 'A log rolled across the open trail at the north rim; until it is understood',
  },
  {
    id: 's-2027-wrzos',
    recordedIn: entry('incident-2027'),
    form: 'suspension',
    kind: 'incident',
    subject: { kind: 'person', person: 'p-lukasz-wrzos' },
    firstDay: '2027-01-18',
    notices: [{ person: 'p-lukasz-wrzos', at: '2027-01-18T22:40:00Z' }],
    by: OFFICIAL,
    reason: 'A saw slid off a sled on the winter crew; until it is understood',
  },
  {
    id: 's-2027-serac-oyelaran',
    recordedIn: entry('near-miss-2027'),
    form: 'suspension',
    kind: 'incident',
    subject: { kind: 'person', person: 'p-anouk-serac-oyelaran' },
    firstDay: '2027-04-19',
    notices: [{ person: 'p-anouk-serac-oyelaran', at: '2027-04-19T21:30:00Z' }],
    by: OFFICIAL,
    reason: 'A near miss at Rough Gate; until it is understood',
  },
  {
    id: 's-2027-tsvetanov',
    recordedIn: entry('papers-2027'),
    form: 'suspension',
    kind: 'administrative',
    subject: { kind: 'person', person: 'p-grigor-tsvetanov' },
    firstDay: '2027-04-20',
    lastDay: '2027-06-30',
    by: 'Marit Osei-Thornbury, program manager',
    reason: 'Papers of his hire are missing',
  },
  {
    id: 's-2027-windfall',
    recordedIn: entry('closed-basin'),
    form: 'stand-down',
    kind: 'administrative',
    subject: { kind: 'place', place: 'windfall-basin' },
    firstDay: '2027-04-28',
    lastDay: '2027-06-20',
    by: 'Marit Osei-Thornbury, program manager',
    reason: 'The slope above the trail moved in the thaw and is to be looked at first',
  },
]

/** Decisions that lift a suspension; the day before is its last. */
export const lifts: Draft<'lifts'>[] = [
  {
    id: 'l-2026-ilievski',
    recordedIn: entry('lifted-2026-08'),
    suspension: 's-2026-ilievski',
    day: '2026-09-01',
    decision: 'D-0379: seen again on 29 August, three cuts from the uphill side',
    by: OFFICIAL,
  },
  {
    id: 'l-2027-wrzos',
    recordedIn: entry('lifted-2027'),
    suspension: 's-2027-wrzos',
    day: '2027-02-01',
    decision: 'D-0402: a strap had broken; no unsafe act',
    by: OFFICIAL,
  },
]
