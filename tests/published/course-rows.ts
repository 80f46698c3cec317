import type { BookRow } from './book-row.ts'

const FEDERAL = 'federal-crosscut-2016'
const INTERAGENCY = 'interagency-faller-1'
const S_212 = 'National Wildfire Coordinating Group, S-212 course page'
const RECORD = '29 CFR 1910.266(i)(10)'

/** What the sources say of courses and of the record of training, and the rule that holds each. */
export const COURSE_ROWS: readonly BookRow[] = [
  {
    fact: 'course information: two hours suggested',
    source: '0667-2804-MTDC',
    mark: 'published',
    edition: FEDERAL,
    rule: 'course.module.course-information',
    figures: { hours: 2, setting: 'classroom' },
  },
  {
    fact: 'crosscut tasks: two hours suggested',
    source: '0667-2804-MTDC',
    mark: 'published',
    edition: FEDERAL,
    rule: 'course.module.crosscut-tasks',
    figures: { hours: 2 },
  },
  {
    fact: 'bucking and felling sessions are not mixed in the field',
    source: '0667-2805-MTDC (December 2006), chapter 6',
    mark: 'published',
    edition: FEDERAL,
    rule: 'course.field-groups',
    figures: { apart: ['bucking', 'felling'] },
  },
  {
    fact: 'six to an evaluator or instructor: practice of course pages',
    source: 'a partner has six sawyers to an evaluator',
    mark: 'common-practice',
    edition: FEDERAL,
    rule: 'course.size.per-trainer',
    figures: { limit: 'per-trainer', count: 6 },
  },
  {
    fact: 'at most eight students in the field: practice of a course page, the strictest of three',
    source: 'eight students into the field',
    mark: 'common-practice',
    edition: FEDERAL,
    rule: 'course.size.on-roster',
    figures: { limit: 'on-roster', count: 8 },
  },
  {
    fact: 'while a student fells, one instructor to one or two: common practice, no source',
    source: 'Common practice, no source',
    mark: 'common-practice',
    edition: FEDERAL,
    rule: 'course.size.while-cutting',
    figures: { limit: 'while-cutting', workKinds: ['felling'], count: 2 },
  },
  {
    fact: 'one field day for bucking, one for felling: common practice, no source',
    source: 'Common practice, no source',
    mark: 'common-practice',
    edition: FEDERAL,
    rule: 'course.field-days',
    figures: { workKinds: ['bucking', 'felling'], days: 1 },
  },
  {
    fact: 'S-212: six students to an instructor',
    source: S_212,
    mark: 'published',
    edition: INTERAGENCY,
    rule: 'course.size.per-trainer',
    figures: { limit: 'per-trainer', count: 6 },
  },
  {
    fact: 'S-212: twenty-four students',
    source: S_212,
    mark: 'published',
    edition: INTERAGENCY,
    rule: 'course.size.on-roster',
    figures: { limit: 'on-roster', count: 24 },
  },
  {
    fact: 'the certification of training: identity, dates, signature of trainer or employer',
    source: RECORD,
    mark: 'published',
    edition: FEDERAL,
    rule: 'training-record.taught',
    figures: {
      holds: ['identity', 'training-dates', 'signature'],
      signedBy: ['trainer', 'employer'],
    },
  },
  {
    fact: 'prior training: the day judged adequate in place of the dates',
    source: RECORD,
    mark: 'published',
    edition: FEDERAL,
    rule: 'training-record.prior',
    figures: { holds: ['identity', 'day-judged-adequate', 'signature'] },
  },
  {
    fact: 'the latest certification is kept: remembered',
    source: RECORD,
    mark: 'from-memory',
    edition: FEDERAL,
    rule: 'training-record.kept',
    figures: { keep: 'latest' },
  },
]
