import { describe, it } from 'vitest'
import { membership } from '../../builders/people.ts'
import { place } from '../../builders/work.ts'
import { holder, stop, suspended, SUSPENDED, type Said } from './stopping.ts'
import { expectRow, type Row } from './told.ts'

describe('organisations, units and places', () => {
  const ofOrganisation: Said = {
    subject: { kind: 'organisation', organisation: 'agency' },
    firstDay: '2027-07-01',
  }
  const ofUnit: Said = { subject: { kind: 'unit', unit: 'quill' }, firstDay: '2027-07-01' }
  const ofPlace = (id: string): Said => ({ subject: { kind: 'place', place: id }, firstDay: '2027-07-01' })
  const places = [
    place('quill', { kind: 'unit' }),
    place('gate', { parent: 'quill' }),
    place('ford', { parent: 'quill' }),
  ]
  const until = { capacity: 'volunteer' as const, firstDay: '2027-01-01', lastDay: '2027-07-08' }
  const after = { capacity: 'volunteer' as const, firstDay: '2027-07-09', lastDay: '2027-12-31' }

  const rows: Row[] = [
    {
      name: 'an organisation: its people',
      facts: [holder(stop(ofOrganisation))],
      standing: 'none',
      findings: [SUSPENDED],
    },
    {
      name: 'an organisation: on the days of the membership',
      facts: [
        holder({
          memberships: [
            membership('p-1', { id: 'm-1', ...until }),
            membership('p-1', { id: 'm-2', organisation: 'partner', ...after }),
          ],
          ...stop(ofOrganisation),
        }),
      ],
      last: '2027-07-09',
      standing: 'none',
      spans: ['none 2027-07-08 2027-07-08', 'independent 2027-07-09 2027-07-09'],
      findings: [SUSPENDED],
    },
    {
      name: 'a unit: on the days of the membership',
      facts: [
        holder({
          memberships: [
            membership('p-1', { id: 'm-1', unit: 'sable', ...until }),
            membership('p-1', { id: 'm-2', unit: 'quill', ...after }),
          ],
          ...stop(ofUnit),
        }),
      ],
      last: '2027-07-09',
      standing: 'none',
      spans: ['independent 2027-07-08 2027-07-08', 'none 2027-07-09 2027-07-09'],
      findings: [SUSPENDED],
    },
    {
      name: 'a unit of people is not the unit as a place',
      facts: [holder(stop(ofUnit)), { places }],
      work: { place: 'gate' },
      standing: 'independent',
      findings: [],
    },
    {
      name: 'a place: the work in it',
      facts: [holder(stop(ofPlace('gate'))), { places }],
      work: { place: 'gate' },
      standing: 'none',
      findings: [SUSPENDED],
    },
    {
      name: 'a place: what lies in it, a unit too',
      facts: [holder(stop(ofPlace('quill'))), { places }],
      work: { place: 'gate' },
      standing: 'none',
      findings: [SUSPENDED],
    },
    {
      name: 'not a place beside it',
      facts: [holder(stop(ofPlace('ford'))), { places }],
      work: { place: 'gate' },
      standing: 'independent',
      findings: [],
    },
    {
      name: 'not what it lies in',
      facts: [holder(stop(ofPlace('gate'))), { places }],
      work: { place: 'quill' },
      standing: 'independent',
      findings: [],
    },
    {
      name: 'not a question without a place',
      facts: [holder(stop(ofPlace('quill'))), { places }],
      standing: 'independent',
      findings: [],
    },
  ]
  it.each(rows)('[AU55] $name', expectRow)
})

describe('notice', () => {
  const reached = (at: string, person = 'p-1'): Said => ({
    firstDay: '2027-07-08',
    notices: [{ person, at }],
  })
  const rows: Row[] = [
    {
      name: 'the day before it arrived, the day it arrived and later',
      facts: [holder(stop(reached('2027-07-09T18:00:00Z')))],
      last: '2027-07-10',
      standing: 'none',
      spans: ['none 2027-07-08 2027-07-08', 'none 2027-07-09 2027-07-10'],
      findings: [suspended('before'), suspended('after')],
    },
    {
      name: "in the program's time zone: still on the 9th",
      facts: [holder(stop(reached('2027-07-10T05:59:59.999Z')))],
      last: '2027-07-10',
      standing: 'none',
      spans: ['none 2027-07-08 2027-07-08', 'none 2027-07-09 2027-07-10'],
      findings: [suspended('before'), suspended('after')],
    },
    {
      name: 'a millisecond later: on the 10th',
      facts: [holder(stop(reached('2027-07-10T06:00:00Z')))],
      last: '2027-07-10',
      standing: 'none',
      spans: ['none 2027-07-08 2027-07-09', 'none 2027-07-10 2027-07-10'],
      findings: [suspended('before'), suspended('after')],
    },
    {
      name: 'notice to somebody else alone is no notice to the person',
      facts: [holder(stop({ ...reached('2027-07-08T18:00:00Z', 'p-2'), subject: { kind: 'everybody' } }))],
      standing: 'none',
      findings: [SUSPENDED],
    },
    {
      name: 'no notice on record',
      facts: [holder(stop({ firstDay: '2027-07-08' }))],
      standing: 'none',
      findings: [SUSPENDED],
    },
  ]
  it.each(rows)('[AU56] $name', expectRow)
})
