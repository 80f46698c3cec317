import { readFileSync } from 'node:fs'

const LETTERS = 200
const repeated = (piece: string) => piece.repeat(LETTERS).slice(0, LETTERS)

/** Invented names as hard as a name may be. */
export const NAMES = {
  arabic: 'ليلى بنت منصور',
  hebrew: 'תמר בן־שלום',
  long: repeated('Querholzzersägungsmeisterei'),
  longArabic: repeated('عبدالمقصودالمنشاري'),
  vietnamese: 'Đặng Thị Ưởng Nghiễm',
  apostrophe: "Maeve O'Fallowmere",
  hyphen: 'Ilse-Margarethe Quendel-Bráthay',
  short: 'Ơ',
} as const

/** Who manages the program here, and so stands in the head of every page. */
export const MANAGER = NAMES.longArabic

type Fact = Record<string, unknown> & { id: string }
type File = Record<string, Fact[]> & { program: { name: string }; entries: Record<string, unknown>[] }

const NAME_OF: Readonly<Record<string, string>> = {
  ines: NAMES.arabic,
  tomo: NAMES.long,
  wren: NAMES.vietnamese,
  'fernhollow-friends': NAMES.hebrew,
  'fernhollow-staff': NAMES.long,
  'fernhollow-all': NAMES.hyphen,
  'upper-fernhollow': NAMES.arabic,
  'kettle-trail': NAMES.long,
  'kettle-log-1': NAMES.long,
  'kettle-rest': NAMES.hebrew,
}

/** Names in the text of records: who saw, issued, decided. */
const IN_WORDS: Readonly<Record<string, string>> = {
  'Ines Fairlamb': NAMES.hebrew,
  'Tomo Askeland': NAMES.long,
  'an invented class': NAMES.arabic,
  'an invented range office': NAMES.long,
  'the invented range office': NAMES.hebrew,
}

/** The program of the example under such names, with people beside who hold nothing yet, stated before today. */
export function namesProgram(): string {
  const text = readFileSync(new URL('../../seeds/examples/small-program.json', import.meta.url), 'utf8')
  const file = JSON.parse(text, (_key, value: unknown) =>
    typeof value === 'string' ? (IN_WORDS[value] ?? value) : value,
  ) as File
  file.program.name = NAMES.arabic
  file.entries = file.entries.map((entry, at) => ({ ...entry, statedAt: `2026-0${at + 1}-02T16:00:00.000Z` }))
  for (const section of ['people', 'organisations', 'places', 'items', 'expectedWork'])
    file[section] = (file[section] ?? []).map((fact) => ({ ...fact, name: NAME_OF[fact.id] ?? fact['name'] }))
  const others = [NAMES.apostrophe, NAMES.hyphen, NAMES.short, NAMES.hebrew, NAMES.longArabic]
  file['people']?.push(...others.map((name, at) => ({ id: `other-${at}`, recordedIn: 2, name })))
  file['memberships']?.push(
    ...others.map((_name, at) => ({
      id: `other-${at}-staff`,
      recordedIn: 2,
      person: `other-${at}`,
      organisation: 'fernhollow-friends',
      unit: 'upper-fernhollow',
      capacity: 'employee',
    })),
  )
  return JSON.stringify(file)
}
