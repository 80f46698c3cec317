import type { AskedQuestion } from '../../lib/usecases/authority/question.schema.ts'

const stated = (
  workKind: string,
  diameter: number,
  complexity: string,
  first: string,
  last: string,
  more: object = {},
) => ({ work: { workKind, sawKind: 'crosscut', diameter, complexity, ...more }, first, last })

const item = (id: string, days: object = {}) => ({ work: { item: id, sawKind: 'crosscut' }, ...days })

/**
 * Twenty questions about the invented demonstration: both kinds of work, each complexity, past and coming days, the
 * places with books of their own, surveyed items and expected work.
 */
export function twentyQuestions(): AskedQuestion[] {
  return [
    stated('bucking', 14, 'least', '2027-06-07', '2027-06-11'),
    stated('bucking', 24, 'moderate', '2027-06-07', '2027-06-16'),
    stated('bucking', 24.0625, 'moderate', '2027-07-05', '2027-07-14'),
    stated('bucking', 36, 'high', '2027-08-02', '2027-08-09'),
    stated('felling', 12, 'least', '2027-07-12', '2027-07-16'),
    stated('felling', 20, 'moderate', '2027-07-12', '2027-07-12'),
    stated('felling', 30, 'high', '2027-07-01', '2027-07-31'),
    stated('bucking', 16, 'least', '2025-08-08', '2025-08-13'),
    stated('felling', 16, 'moderate', '2025-08-08', '2025-08-13'),
    stated('bucking', 20, 'moderate', '2026-04-20', '2026-06-30'),
    stated('bucking', 18, 'moderate', '2027-06-07', '2027-09-30', { place: 'quill-river' }),
    stated('bucking', 18, 'moderate', '2027-06-07', '2027-09-30', { place: 'sable-lake', hands: 'one' }),
    stated('felling', 18, 'least', '2027-06-07', '2027-09-30', { place: 'north-ashlar', hands: 'two' }),
    stated('bucking', 10, 'least', '2022-01-01', '2022-12-31'),
    stated('bucking', 10, 'least', '2028-02-29', '2028-03-01', { species: 'spruce' }),
    item('i-c-01-log-1'),
    item('i-cold-fork-raised', { first: '2027-05-03', last: '2027-10-01' }),
    item('x-h-01-small'),
    item('i-windfall-fir-1'),
    item('i-unrated-log', { first: '2027-06-08', last: '2027-06-09' }),
  ] as AskedQuestion[]
}
