import type { z } from 'zod'
import type { entrySchema } from '../../lib/core/program/program.schema.ts'

const MANAGER = 'Marit Osei-Thornbury, program manager'
const OFFICIAL = 'Petra Lindqvist-Amadi, certifying official'
const COORDINATOR = 'Inês Caldwell-Moraes, crew coordinator'
const LANTERN = 'Solvei Haugstad-Iyer, Lantern Creek Trail Volunteers'
const CORPS = 'Brendan Achterberg, Halden Youth Corps'
const FORESTER = 'Corwin Achebe-Stroud, unit forester'

/** What was done, in order: a key for the facts to name, when (UTC), by whom, in words. */
const told = [
  // The winter before the first season: the record is opened.
  [
    'open',
    '2025-03-17T16:02:00Z',
    MANAGER,
    'opened the record and adopted the federal, cooperator and interagency books',
  ],
  ['places', '2025-03-17T17:40:00Z', MANAGER, 'entered the three units and their places'],
  ['partners', '2025-03-18T15:15:00Z', MANAGER, 'entered the organisations'],
  ['staff', '2025-03-19T16:30:00Z', COORDINATOR, 'entered the staff of the three units'],
  ['volunteers', '2025-03-24T22:05:00Z', LANTERN, 'entered the volunteers and their agreements for 2025'],
  ['carried-in', '2025-03-27T17:20:00Z', OFFICIAL, 'carried in the cards of the paper register'],
  [
    'carried-in-elsewhere',
    '2025-03-27T20:10:00Z',
    OFFICIAL,
    'carried in cards of other issuers, papers seen',
  ],
  ['carried-in-old', '2025-03-28T15:45:00Z', OFFICIAL, 'carried in the cards of the older edition'],
  [
    'certificates-before',
    '2025-03-31T18:00:00Z',
    COORDINATOR,
    'entered first aid and CPR from the paper folder',
  ],
  ['trainers-2025', '2025-04-03T16:25:00Z', OFFICIAL, 'designated the instructors and evaluators'],
  // The season of 2025.
  [
    'certificates-2025',
    '2025-04-14T15:10:00Z',
    COORDINATOR,
    'entered the first aid and CPR class of 12 April, certificates seen',
  ],
  ['decided-2025-04', '2025-04-14T21:40:00Z', OFFICIAL, 'decided three applications, D-0288 to D-0290'],
  ['decided-2025-05', '2025-05-06T20:15:00Z', OFFICIAL, 'decided three applications, D-0296 to D-0298'],
  ['decided-2025-05-volunteer', '2025-05-09T19:30:00Z', OFFICIAL, 'decided one application, D-0301'],
  ['season-2025', '2025-06-02T14:00:00Z', COORDINATOR, 'published the hitches of the season of 2025'],
  ['decided-2025-06', '2025-06-10T22:20:00Z', OFFICIAL, 'decided three applications, D-0307 to D-0309'],
  ['out-2025-1', '2025-06-16T13:05:00Z', COORDINATOR, 'sent out the log-out of Lower Quill, seven people'],
  [
    'certificates-2025-07',
    '2025-07-14T16:50:00Z',
    COORDINATOR,
    'entered two CPR certificates from a class of the county',
  ],
  [
    'in-2025-1',
    '2025-07-18T23:10:00Z',
    COORDINATOR,
    'closed the log-out of Ashlar Pass: 61 logs cut, four left and why',
  ],
  ['wind-2025', '2025-08-09T02:35:00Z', MANAGER, 'stood down all felling after the windstorm of 8 August'],
  ['out-2025-2', '2025-08-14T13:20:00Z', COORDINATOR, 'sent out the log-out of Heron Flat, six people'],
  [
    'certificates-2025-autumn',
    '2025-09-29T17:15:00Z',
    COORDINATOR,
    'entered first aid and CPR of August and September',
  ],
  ['close-2025', '2025-10-30T21:00:00Z', COORDINATOR, 'closed the season of 2025: 22 hitches, no injury'],
  [
    'certificates-2025-12',
    '2025-12-02T18:30:00Z',
    COORDINATOR,
    'entered two first aid certificates and a CPR certificate',
  ],
  // The season of 2026.
  ['agreements-2026', '2026-01-12T22:40:00Z', LANTERN, 'entered the agreements for 2026'],
  ['certificates-2026-02', '2026-02-05T16:20:00Z', COORDINATOR, 'entered a first aid certificate, seen'],
  [
    'certificates-2026-03',
    '2026-03-09T16:35:00Z',
    COORDINATOR,
    'entered first aid and CPR of a Quill River sawyer, seen',
  ],
  ['decided-2026-04', '2026-04-12T20:45:00Z', OFFICIAL, 'decided two applications, D-0340 and D-0341'],
  [
    'certificates-2026',
    '2026-04-20T15:25:00Z',
    COORDINATOR,
    'entered the first aid and CPR class of 18 April, certificates seen',
  ],
  [
    'cooperator-2026',
    '2026-05-01T21:30:00Z',
    LANTERN,
    'entered the cards of the cooperator book issued on 1 May',
  ],
  ['decided-2026-05-03', '2026-05-03T23:05:00Z', OFFICIAL, 'decided four applications, D-0352 to D-0355'],
  [
    'self-stated-2026',
    '2026-05-04T14:50:00Z',
    COORDINATOR,
    'entered a CPR certificate as its holder stated it, not seen',
  ],
  [
    'decided-2026-05-12',
    '2026-05-12T20:20:00Z',
    OFFICIAL,
    'decided four applications and one reduction, D-0358 to D-0362',
  ],
  ['corps-2026', '2026-05-18T16:10:00Z', CORPS, 'entered corps members and their agreements for 2026'],
  ['decided-2026-05-19', '2026-05-19T19:55:00Z', OFFICIAL, 'decided three applications, D-0363 to D-0365'],
  ['season-2026', '2026-06-01T14:10:00Z', COORDINATOR, 'published the hitches of the season of 2026'],
  ['out-2026-1', '2026-06-15T13:15:00Z', COORDINATOR, 'sent out the log-out of Sable outlet, eight people'],
  [
    'words-2026',
    '2026-06-22T17:05:00Z',
    OFFICIAL,
    'resolved the words on a card after seeing its holder work',
  ],
  ['renewed-2026-07', '2026-07-12T18:30:00Z', OFFICIAL, 'renewed a card whose last day was 10 July, D-0371'],
  [
    'stand-down-2026',
    '2026-07-12T21:15:00Z',
    COORDINATOR,
    'entered the stand-down of 9 July, on paper since that day',
  ],
  ['roster-2026', '2026-07-19T20:00:00Z', MANAGER, 'suspended the corps until its roster is in, to 24 July'],
  [
    'suspended-2026-08',
    '2026-08-18T22:45:00Z',
    OFFICIAL,
    'suspended a sawyer for an unsafe act at Cold Fork',
  ],
  [
    'lifted-2026-08',
    '2026-08-31T16:00:00Z',
    OFFICIAL,
    'lifted the stand-down of 9 July from 1 September, D-0379',
  ],
  [
    'suspended-2026-09',
    '2026-09-08T15:30:00Z',
    OFFICIAL,
    'suspended a card after an incident at the north rim',
  ],
  ['cooperator-2026-09', '2026-09-15T22:20:00Z', LANTERN, 'entered a card of the cooperator book'],
  ['withdrawn-2026', '2026-09-21T19:40:00Z', OFFICIAL, 'withdrew the card, D-0384'],
  [
    'corps-autumn',
    '2026-10-02T16:45:00Z',
    CORPS,
    'entered the corps members of the autumn, agreements and permissions',
  ],
  [
    'certificates-corps',
    '2026-10-12T15:05:00Z',
    COORDINATOR,
    'entered the corps’ first aid and CPR class of 10 October',
  ],
  ['decided-2026-10', '2026-10-12T21:50:00Z', OFFICIAL, 'decided seven applications, D-0389 to D-0395'],
  ['close-2026', '2026-10-29T20:30:00Z', COORDINATOR, 'closed the season of 2026: 24 hitches, one incident'],
  // The winter and the spring before the season of 2027.
  ['survey-winter', '2027-01-11T17:30:00Z', FORESTER, 'entered a survey of Heron Flat on skis, 9 January'],
  ['agreements-2027', '2027-01-11T22:15:00Z', LANTERN, 'entered the agreements for 2027'],
  [
    'incident-2027',
    '2027-01-18T23:20:00Z',
    OFFICIAL,
    'suspended a sawyer after an incident on the winter crew; notice the same day',
  ],
  ['lifted-2027', '2027-02-01T20:05:00Z', OFFICIAL, 'lifted the suspension of 18 January, D-0402'],
  ['certificates-online', '2027-03-03T16:40:00Z', COORDINATOR, 'entered two online CPR renewals'],
  ['contractor-2027', '2027-03-22T18:20:00Z', COORDINATOR, 'entered a contractor, who was on staff before'],
  [
    'hitches-2027',
    '2027-03-29T16:00:00Z',
    COORDINATOR,
    'drafted the 24 hitches of the season and the usual work of each',
  ],
  [
    'season-people-2027',
    '2027-04-05T17:35:00Z',
    CORPS,
    'entered the corps members of the season and their agreements',
  ],
  [
    'lantern-youth',
    '2027-04-10T21:10:00Z',
    LANTERN,
    'entered a young volunteer and the guardian’s permission',
  ],
  ['decided-2027-04-12', '2027-04-12T20:25:00Z', OFFICIAL, 'decided six applications, D-0410 to D-0415'],
  [
    'cpr-corrected',
    '2027-04-14T16:40:00Z',
    COORDINATOR,
    'corrected a CPR last day: the certificate says two years, three had been typed',
  ],
  [
    'certificates-2027',
    '2027-04-19T15:20:00Z',
    COORDINATOR,
    'entered the first aid and CPR class of 17 April, certificates seen',
  ],
  [
    'near-miss-2027',
    '2027-04-19T22:10:00Z',
    OFFICIAL,
    'suspended a sawyer after a near miss at Rough Gate; notice the same day',
  ],
  ['papers-2027', '2027-04-20T16:15:00Z', MANAGER, 'suspended a sawyer until papers are in, to 30 June'],
  [
    'renewed-2027',
    '2027-04-21T20:35:00Z',
    OFFICIAL,
    'renewed a card from the day after its last day, D-0418',
  ],
  [
    'survey-windfall',
    '2027-04-23T17:00:00Z',
    FORESTER,
    'entered the survey of Windfall Basin, log by log, 20 to 22 April',
  ],
  ['survey-sable', '2027-04-26T16:30:00Z', FORESTER, 'entered the survey of the camps and bridges'],
  [
    'late-snow',
    '2027-04-26T21:00:00Z',
    MANAGER,
    'extended the cards that end in the first half of June: the classes are snowed in',
  ],
  ['extended-2027', '2027-04-27T15:50:00Z', OFFICIAL, 'extended one card to the end of August'],
  [
    'closed-basin',
    '2027-04-28T17:25:00Z',
    MANAGER,
    'closed Windfall Basin to all saw work until the slope is looked at, to 20 June',
  ],
  [
    'survey-larch',
    '2027-04-28T20:40:00Z',
    FORESTER,
    'entered the survey of Larch Bench, Cold Fork and Ridge bridge',
  ],
  [
    'approvals',
    '2027-04-29T16:55:00Z',
    FORESTER,
    'went through the approvals to cut: four trees are still without one',
  ],
  [
    'classes-2027',
    '2027-04-29T21:30:00Z',
    OFFICIAL,
    'entered the classes of the spring at Rough Gate and who is on them',
  ],
  ['confirmed-2027', '2027-04-30T18:10:00Z', MANAGER, 'confirmed a rule from memory'],
  ['raised-2027', '2027-05-01T19:45:00Z', COORDINATOR, 'entered two raises by sawyers who walked the trail'],
  [
    'today',
    '2027-05-03T14:30:00Z',
    COORDINATOR,
    'looked through the record on the first day of the demonstration',
  ],
] as const satisfies readonly (readonly [string, string, string, string])[]

/** The key of an entry, by which facts name when they became known. */
export type EntryKey = (typeof told)[number][0]

const numbers = new Map<EntryKey, number>(told.map(([key], index) => [key, index + 1]))

/** The number of an entry. */
export function entry(key: EntryKey): number {
  const number = numbers.get(key)
  if (number === undefined) throw new Error(`no entry ${key}`)
  return number
}

/** The journal as the file states it. */
export const entries: z.input<typeof entrySchema>[] = told.map(([, statedAt, actor, event], index) => ({
  n: index + 1,
  statedAt,
  actor,
  event,
}))
