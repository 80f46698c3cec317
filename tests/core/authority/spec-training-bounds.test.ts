import { describe, expect, it } from 'vitest'
import { card, suspension } from '../../builders/cards.ts'
import { adult, certificate, membership, permission, person } from '../../builders/people.ts'
import type { Part } from '../../builders/records.ts'
import { learning, LEARNS, onLog, SUSPENDED, TRAINING, UNDER_ASSIGNMENT } from './learning.ts'
import { answerTo, expectRow, toldOf, type Row } from './told.ts'

describe('what binds training under an assignment', () => {
  const width = { id: 'width', kind: 'greatest-diameter' as const, inches: 18 }
  const OVER = 'over-diameter diameter=20 limit=18 | restriction | none'
  const felling = (said: Parameters<typeof card>[2] = {}): Part => ({
    cards: [card('p-1', 'B', { workKinds: ['felling'], restrictions: [width], ...said })],
  })
  const stop = (said: Parameters<typeof suspension>[1]): Part => ({
    suspensions: [suspension('stop', { firstDay: '2027-07-01', ...said })],
  })

  const binding: Row[] = [
    {
      name: 'age',
      facts: [
        adult('p-1', {
          people: [person('p-1', { birthDate: '2010-01-01' })],
          memberships: [
            membership('p-1', { capacity: 'volunteer', firstDay: '2027-01-01', lastDay: '2027-12-31' }),
          ],
          permissions: [permission('p-1')],
        }),
        ...learning(),
      ],
      work: onLog,
      standing: 'training',
      findings: [...TRAINING, 'under-age capacity=volunteer years=18 | age.volunteer.bucking | own-level'],
    },
    {
      name: 'certificates',
      facts: [
        adult('p-1', {
          certificates: [
            certificate('p-1', 'first-aid'),
            certificate('p-1', 'cpr', { lastDay: '2027-07-07' }),
          ],
        }),
        ...learning(),
      ],
      work: onLog,
      standing: 'none',
      findings: [...TRAINING, 'certificate-lapsed lastDay=2027-07-07 subject=cpr | certificate.cpr | none'],
    },
    {
      name: 'a suspension that names felling alone',
      facts: [adult('p-1'), ...learning(), stop({ workKinds: ['felling'] })],
      work: onLog,
      standing: 'none',
      findings: [...TRAINING, SUSPENDED],
    },
    {
      name: 'a suspension of a card number of the person',
      facts: [
        adult('p-1', felling({ restrictions: [] })),
        ...learning(),
        stop({ subject: { kind: 'card', number: 'N-p-1' } }),
      ],
      work: onLog,
      standing: 'none',
      findings: [...TRAINING, SUSPENDED],
    },
    {
      name: 'the restriction of a felling card',
      facts: [adult('p-1', felling()), ...learning()],
      work: onLog,
      standing: 'none',
      findings: [...TRAINING, OVER],
    },
    {
      name: 'the restriction of a card of another book',
      facts: [
        adult('p-1', felling({ book: 'interagency-faller', level: 'basic', sawKinds: ['chain-saw'] })),
        ...learning(),
      ],
      work: onLog,
      standing: 'none',
      findings: [...TRAINING, OVER],
    },
  ]
  it.each(binding)('[AU38] $name', expectRow)

  const notBinding: Row[] = [
    {
      name: 'a suspension for the power saw',
      facts: [adult('p-1'), ...learning(), stop({ sawKinds: ['chain-saw'] })],
      work: onLog,
      standing: 'training',
      findings: TRAINING,
    },
    {
      name: 'a restriction that names felling',
      facts: [adult('p-1', felling({ restrictions: [{ ...width, workKinds: ['felling'] }] })), ...learning()],
      work: onLog,
      standing: 'training',
      findings: TRAINING,
    },
    {
      name: 'the restriction of a card that ended the day before',
      facts: [adult('p-1', felling({ lastDay: '2027-07-07' })), ...learning()],
      work: onLog,
      standing: 'training',
      findings: TRAINING,
    },
    {
      name: 'the restriction of a card that begins the day after',
      facts: [adult('p-1', felling({ effectiveDay: '2027-07-09' })), ...learning()],
      work: onLog,
      standing: 'training',
      findings: TRAINING,
    },
  ]
  it.each(notBinding)('[AU38] not $name', expectRow)

  it('[AU38] the restriction of a card that began and has no last day on record', () => {
    const { lastDay: _lastDay, ...endless } = card('p-1', 'B', {
      workKinds: ['felling'],
      restrictions: [width],
      effectiveDay: '2027-07-08',
    })
    expectRow({
      name: '',
      facts: [adult('p-1', { cards: [endless] }), ...learning()],
      work: onLog,
      first: '2027-07-07',
      last: '2027-07-08',
      standing: 'none',
      spans: ['training 2027-07-07 2027-07-07', 'none 2027-07-08 2027-07-08'],
      findings: [...TRAINING, OVER],
    })
  })

  it('[AU39] stopped, it speaks before no card', () => {
    const facts = [adult('p-1', felling({ restrictions: [] })), ...learning(), stop({})]
    expect(toldOf(answerTo({ facts, work: onLog }))).toEqual([UNDER_ASSIGNMENT, SUSPENDED, LEARNS])
  })

  it('[AU39] and after a card that names the work, though that has ended', () => {
    const facts = [
      adult('p-1', { cards: [card('p-1', 'B', { lastDay: '2027-07-07' })] }),
      ...learning(),
      stop({}),
    ]
    expect(toldOf(answerTo({ facts, work: onLog }))).toEqual([
      'card-no-longer-valid lastDay=2027-07-07 | card.days | none',
      SUSPENDED,
    ])
  })
})
