import type { RuleOf } from '../core/rulebooks/rules.schema.ts'

/** What a limit of candidates is counted by, to stand after "candidates". */
export const sizeWords = {
  'per-trainer': 'for each trainer in the field',
  'on-roster': 'on a roster',
  'while-cutting': 'with each trainer while one of them cuts',
  'per-item': 'in turn at one log or tree',
} satisfies Record<RuleOf<'course.size'>['limit'], string>

/** Where a module is taught. */
export const settingWords = { classroom: 'in the classroom', field: 'in the field' } satisfies Record<
  RuleOf<'course.module'>['setting'],
  string
>

type Form = NonNullable<RuleOf<'course.prerequisite'>['forms']>[number]

/** What a session is, with its article. */
export const courseFormWords = {
  class: 'a class',
  refresher: 'a refresher',
  evaluation: 'an evaluation',
} satisfies Record<Form, string>

/** What a certification of training rests on. */
export const trainingBasisWords = {
  'taught-here': 'training given here',
  'prior-training': 'training had before',
} satisfies Record<RuleOf<'training-record'>['basis'], string>

/** One thing that a certification of training holds. */
export const trainingRecordWords = {
  identity: 'who was trained',
  'training-dates': 'the days of the training',
  'day-judged-adequate': 'the day on which it was judged adequate',
  signature: 'a signature',
} satisfies Record<RuleOf<'training-record'>['holds'][number], string>

/** Who signs a certification of training. */
export const signerWords = { trainer: 'the trainer', employer: 'the employer' } satisfies Record<
  RuleOf<'training-record'>['signedBy'][number],
  string
>
