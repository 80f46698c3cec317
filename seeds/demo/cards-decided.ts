import { BOTH, BUCKING, decided, FELLING, restricted } from './card-rows.ts'
import type { Draft } from './draft.ts'

/** Every card that was issued here by a decision. */
export const cardsDecided: Draft<'cards'>[] = [
  ...decided('decided-2025-04', [
    [
      'D-0288',
      ['K-0431', 'lukasz-wrzos', 'B', BOTH, '2025-04-14', '2028-04-13', { evaluationDay: '2025-04-06' }],
    ],
    ['D-0289', ['K-0432', 'anouk-serac-oyelaran', 'B', BOTH, '2025-04-14', '2028-04-13']],
    ['D-0290', ['K-0433', 'cedric-lumbwe', 'B', BUCKING, '2025-04-14', '2028-04-13']],
  ]),
  ...decided('decided-2025-05', [
    ['D-0296', ['K-0434', 'benedikt-aasland', 'B', BOTH, '2025-05-06', '2028-05-05']],
    [
      'D-0297',
      [
        'K-0435',
        'zeynep-karadagli',
        'A',
        BUCKING,
        '2025-05-06',
        '2028-05-05',
        restricted({ id: 'r-1', kind: 'words', text: 'small logs until the wrist is past its check' }),
      ],
    ],
    ['D-0298', ['K-0436', 'ivo-radoslavov', 'A', BUCKING, '2025-05-06', '2028-05-05']],
  ]),
  ...decided('decided-2025-05-volunteer', [
    [
      'D-0301',
      [
        'K-0437',
        'dana-whitlow-2',
        'B',
        BOTH,
        '2025-05-09',
        '2028-05-08',
        restricted({ id: 'r-1', kind: 'places', places: ['quill-river'] }),
      ],
    ],
  ]),
  ...decided('decided-2025-06', [
    ['D-0307', ['K-0438', 'mbali-kamabaso', 'A', BOTH, '2025-06-10', '2028-06-09']],
    ['D-0308', ['K-0439', 'anneli-rautavuoma', 'A', BUCKING, '2025-06-10', '2028-06-09']],
    ['D-0309', ['K-0440', 'tobiah-renquist', 'C', BUCKING, '2025-06-10', '2028-06-09']],
  ]),
  ...decided('decided-2026-04', [
    ['D-0340', ['K-0397', 'siobhan-o-briain', 'C', BOTH, '2026-04-12', '2029-04-11']],
    [
      'D-0341',
      [
        'K-0398',
        'nguyen-thi-suong',
        'B',
        BUCKING,
        '2026-04-12',
        '2029-04-11',
        {
          evaluationDay: '2026-04-05',
          ...restricted(
            { id: 'r-1', kind: 'greatest-diameter', inches: 24 },
            { id: 'r-2', kind: 'double-bucking-only', workKinds: BUCKING },
          ),
        },
      ],
    ],
  ]),
  ...decided('decided-2026-05-03', [
    [
      'D-0352',
      [
        'K-0443',
        'nour-al-din-haddad',
        'B',
        BOTH,
        '2026-05-03',
        '2029-05-02',
        restricted({ id: 'r-1', kind: 'greatest-diameter', workKinds: FELLING, inches: 18 }),
      ],
    ],
    ['D-0353', ['K-0444', 'priyanka-deshkar', 'B', BUCKING, '2026-05-03', '2029-05-02']],
    ['D-0354', ['K-0445', 'farida-qosimova', 'B', BUCKING, '2026-05-03', '2029-05-02']],
    ['D-0355', ['K-0446', 'kwabena-asare-boadi', 'B', BUCKING, '2026-05-03', '2029-05-02']],
  ]),
  ...decided('decided-2026-05-12', [
    ['D-0358', ['K-0447', 'chidinma-ezeigwe', 'A', BUCKING, '2026-05-12', '2029-05-11']],
    ['D-0359', ['K-0448', 'ren-takahara', 'A', BOTH, '2026-05-12', '2029-05-11']],
    ['D-0360', ['K-0449', 'wulandari', 'B', BUCKING, '2026-05-12', '2029-05-11', { line: 1 }]],
    ['D-0361', ['K-0449', 'wulandari', 'A', FELLING, '2026-05-12', '2029-05-11', { line: 2 }]],
    ['D-0362', ['K-0450', 'grigor-tsvetanov', 'A', BUCKING, '2026-05-12', '2029-05-11']],
  ]),
  ...decided('decided-2026-05-19', [
    ['D-0363', ['K-0451', 'dilnoza-yusupbekova', 'A', BUCKING, '2026-05-19', '2029-05-18']],
    ['D-0364', ['K-0452', 'ruadhan-mac-suibhne', 'A', BUCKING, '2026-05-19', '2029-05-18']],
    ['D-0365', ['K-0453', 'halima-warsame-dirie', 'A', BUCKING, '2026-05-19', '2029-05-18']],
  ]),
  ...decided('renewed-2026-07', [
    ['D-0371', ['K-0461', 'tavita-leaupepe', 'B', BUCKING, '2026-07-12', '2029-07-11']],
  ]),
  ...decided('decided-2026-10', [
    ['D-0389', ['K-0470', 'tuuli-harjunpaa', 'A', BUCKING, '2026-10-12', '2029-10-11']],
    ['D-0390', ['K-0471', 'elio-castagneri', 'A', BUCKING, '2026-10-12', '2029-10-11']],
    ['D-0391', ['K-0472', 'senna-vandekerkhove', 'trainee', BUCKING, '2026-10-12', '2027-10-11']],
    ['D-0392', ['K-0473', 'rui-matsuzawa-lobo', 'trainee', BUCKING, '2026-10-12', '2027-10-11']],
    ['D-0393', ['K-0474', 'calla-fenwright', 'trainee', BUCKING, '2026-10-12', '2027-10-11']],
    ['D-0394', ['K-0475', 'kirra-ballantyne-oduya', 'trainee', BUCKING, '2026-10-12', '2027-10-11']],
    ['D-0395', ['K-0476', 'mirza-delalic', 'trainee', BUCKING, '2026-10-12', '2027-10-11']],
  ]),
  ...decided('decided-2027-04-12', [
    ['D-0410', ['K-0490', 'dana-whitlow', 'B', BOTH, '2027-04-12', '2030-04-11']],
    ['D-0411', ['K-0491', 'tavi-marrowby', 'trainee', BUCKING, '2027-04-12', '2028-04-11']],
    ['D-0412', ['K-0492', 'joao-quintanilha', 'trainee', BUCKING, '2027-04-12', '2028-04-11']],
    ['D-0413', ['K-0493', 'losa-fonotia', 'trainee', BUCKING, '2027-04-12', '2028-04-11']],
    ['D-0414', ['K-0494', 'ilke-dauwens', 'trainee', BUCKING, '2027-04-12', '2028-04-11']],
    ['D-0415', ['K-0495', 'eun-ji-baek', 'trainee', BUCKING, '2027-04-12', '2028-04-11']],
  ]),
  ...decided('renewed-2027', [
    [
      'D-0418',
      [
        'K-0496',
        'kaoru-minase',
        'B',
        BUCKING,
        '2027-07-11',
        '2030-07-10',
        { evaluationDay: '2027-04-15', issuedDay: '2027-04-21' },
      ],
    ],
  ]),
]
