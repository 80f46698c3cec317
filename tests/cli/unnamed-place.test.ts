import { expect, it } from 'vitest'
import type { AnswerJson } from '../../lib/core/authority/answer.schema.ts'
import { answered, DEMO } from './command-line.ts'

const WORK = ['ask', DEMO, '--work', 'bucking', '--diameter', '12', '--complexity', 'least', '--hands', 'two']
const PERSON = ['--person', 'p-siobhan-o-briain', '--today', '2027-05-03']
const STOPPED = ['--from', '2027-05-28', '--through', '2027-05-28']
const LATER = ['--from', '2027-07-08', '--through', '2027-07-08']
const NOT_COUNTED = 'No place is named: stand-downs of places, and books in force at places, are not counted.'

it('[CL24] without a place it says what is not counted, and where the work is stopped', () => {
  const out = answered(...WORK, ...STOPPED, ...PERSON)
  expect(out).toContain(`${NOT_COUNTED} Stopped on these days: Windfall Basin.`)
  const data = JSON.parse(answered(...WORK, ...STOPPED, ...PERSON, '--json')) as AnswerJson
  expect(data.placesNotCounted).toEqual(['windfall-basin'])
  expect(data.answers[0]?.standing).toBe('independent')
})

it('[CL24] on days without a stand-down it says so, and with a place it says nothing', () => {
  expect(answered(...WORK, ...LATER, ...PERSON)).toContain(`${NOT_COUNTED} None is stopped on these days.`)
  const there = answered(...WORK, ...STOPPED, ...PERSON, '--place', 'windfall-basin')
  expect(there).not.toContain(NOT_COUNTED)
  expect(there).toContain('No, and why: 1')
})
