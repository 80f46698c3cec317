import type { CellReading, NamedList, SheetField, SheetKind, WordList } from './sheet-kinds.ts'

type More = Pick<SheetField, 'needed' | 'identifies' | 'of'>

/** A field by its key, its label, how its cell is read and the other headings under which it is found. */
function field(
  key: string,
  label: string,
  reads: CellReading['kind'] | CellReading,
  also: readonly string[],
  more: More = {},
): SheetField {
  const reading = typeof reads === 'string' ? ({ kind: reads } as CellReading) : reads
  return { key, label, reads: reading, also, ...more }
}

const named = (of: NamedList): CellReading => ({ kind: 'named', of })
const word = (of: WordList): CellReading => ({ kind: 'word', of })
const BIRTH: CellReading = { kind: 'day', isBirth: true }
const NEEDED = { needed: true } as const
const FINDS = { of: 'nothing' } as const

const BORN = ['born', 'birth date', 'date of birth', 'dob', 'birthday']
const NAMES = ['full name', 'sawyer', 'person name', 'who']
const PERSON_NUMBER = field('person.number', 'Number here', 'text', ['person', 'person id', 'id'], {
  ...FINDS,
  identifies: 'number',
})
const PERSON_CARD = field('person.card', 'Card number, to find the person', 'text', ['card number', 'card'], {
  ...FINDS,
  identifies: 'card',
})
const PERSON = [
  PERSON_NUMBER,
  field('person.name', 'Name', 'text', NAMES, { ...FINDS, identifies: 'name' }),
  field('person.born', 'Born on, to find the person', BIRTH, BORN, { ...FINDS, identifies: 'born' }),
]

const FROM = ['from', 'start', 'begins', 'first day']
const THROUGH = [
  'through',
  'until',
  'end',
  'ends',
  'expires',
  'expiry',
  'expiration',
  'valid through',
  'valid until',
]
const ATTESTED = field('attestedBy', 'Attested by', 'text', ['attested'])

/** Of a membership; in a sheet of people its fields stand beside the person's own. */
function membership(prefix: string, of: More): readonly SheetField[] {
  return [
    field(
      `${prefix}organisation`,
      'Organisation',
      named('organisations'),
      ['organization', 'partner', 'club'],
      {
        ...NEEDED,
        ...of,
      },
    ),
    field(`${prefix}unit`, 'Unit', named('units'), ['district'], of),
    field(`${prefix}capacity`, 'Capacity', word('capacities'), ['works as', 'type'], of),
    field(
      `${prefix}firstDay`,
      'First day of the agreement',
      'day',
      ['agreement from', 'agreement begins', 'member since', ...FROM],
      of,
    ),
    field(
      `${prefix}lastDay`,
      'Last day of the agreement',
      'last-day',
      ['agreement through', 'agreement until', 'agreement expires', 'agreement ends', ...THROUGH],
      of,
    ),
  ]
}

/** The columns of each kind of sheet, in the order in which they are asked and written. */
export const SHEET_FIELDS: Readonly<Record<SheetKind, readonly SheetField[]>> = {
  people: [
    PERSON_NUMBER,
    field('name', 'Name', 'text', NAMES, { ...NEEDED, identifies: 'name' }),
    field('birthDate', 'Born on', BIRTH, BORN, { identifies: 'born' }),
    field('ofAgeFrom', 'Of age from', 'day', ['of age', '18 from', '18th birthday']),
    PERSON_CARD,
    ...membership('membership.', { of: 'membership' }),
    ATTESTED,
  ],
  memberships: [...PERSON, PERSON_CARD, ...membership('', {}), ATTESTED],
  certificates: [
    ...PERSON,
    PERSON_CARD,
    field('subject', 'Of what', named('subjects'), ['certificate', 'class', 'subject', 'training'], NEEDED),
    field('issuedBy', 'Issuing organisation', 'text', ['issued by', 'issuer']),
    field('delivery', 'How it was given', word('deliveries'), ['delivery', 'given', 'how given', 'format']),
    field('firstDay', 'Day taken', 'day', ['taken', 'date', 'issued', 'issued on', 'class date', ...FROM]),
    field('lastDay', 'Last day', 'last-day', ['good through', ...THROUGH]),
    field('seen', 'Seen by somebody else', 'yes-no', ['seen', 'verified']),
    field('by', 'Seen or stated by', 'text', ['seen by', 'stated by', 'verified by']),
  ],
  cards: [
    ...PERSON,
    field('number', 'Card number', 'text', ['card', 'card no', 'number'], NEEDED),
    field('line', 'Line', { kind: 'whole', most: 99 }, ['card line']),
    field('book', 'Rule book', named('books'), ['book', 'rules'], NEEDED),
    field('level', 'Level', named('levels'), ['card level', 'rating', 'class'], NEEDED),
    field('workKinds', 'For', 'work-kinds', ['work', 'work kinds', 'bucking felling']),
    field('sawKinds', 'With', 'saw-kinds', ['saw', 'saws', 'saw kinds'], NEEDED),
    field('effectiveDay', 'Effective from', 'day', ['effective', 'valid from', ...FROM], NEEDED),
    field('lastDay', 'Last day', 'last-day', THROUGH),
    field('evaluationDay', 'Day of the evaluation', 'day', ['evaluated', 'evaluation', 'field day']),
    field('issuedDay', 'Day of issue', 'day', ['issued', 'issued on', 'issue date']),
    field('restrictions', 'Restrictions, in words', 'text', ['restriction', 'restrictions', 'limits']),
    field('carriedIn.issuer', 'Issued by', 'text', ['issuer', 'issuing unit'], NEEDED),
    field('carriedIn.number', 'Its number there', 'text', ['number there', 'original number']),
    field('carriedIn.seenBy', 'Paper seen by', 'text', ['seen by']),
    field('carriedIn.lastReconciled', 'Last compared with its issuer on', 'day', ['last reconciled']),
  ],
  items: [
    field('id', 'Number here', 'text', ['id', 'item', 'number'], FINDS),
    field('name', 'Name', 'text', ['log', 'tree', 'log or tree', 'what'], NEEDED),
    field('workKind', 'Work', 'work-kind', ['kind', 'work kind', 'buck or fell'], NEEDED),
    field('diameter', 'Diameter, inches', 'inches', ['diameter', 'diameter in', 'dia', 'inches'], NEEDED),
    field('place', 'Place', named('places'), ['where', 'trail', 'site']),
    field('firstDay', 'First day', 'day', FROM),
    field('lastDay', 'Last day', 'last-day', THROUGH),
    field('hands', 'Saw', word('hands'), ['hands', 'one or two person']),
    field('species', 'Species', 'text', ['kind of tree']),
    field('list', 'Hitch', named('hitches'), ['tour', 'hitch number']),
    field('height', 'Height, feet', 'feet', ['height', 'height ft']),
    field('trailOpen', 'Is the trail open there?', 'yes-no', ['trail open']),
    field('mayRoll', 'May it roll or slide?', 'yes-no', ['may roll', 'rolls']),
  ],
  hitches: [
    field('number', 'Number', 'text', ['hitch', 'hitch number', 'no'], NEEDED),
    field('name', 'Name', 'text', ['hitch name', 'title'], NEEDED),
    field('place', 'Place', named('places'), ['where', 'trail', 'site'], NEEDED),
    field('firstDay', 'First day', 'day', ['out', ...FROM], NEEDED),
    field('lastDay', 'Last day', 'last-day', ['back', ...THROUGH], NEEDED),
    field('lead', 'Lead of the crew', 'person', ['lead', 'leader', 'crew lead']),
  ],
}

/** Whether a sheet of this kind names people. */
export function namesPeople(kind: SheetKind): boolean {
  return SHEET_FIELDS[kind].some(({ identifies }) => identifies === 'name')
}
