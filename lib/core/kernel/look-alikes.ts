/** Scripts whose letters are easily taken for one another, as Unicode names them. */
const SCRIPTS_ALIKE = ['Latin', 'Greek', 'Cyrillic', 'Coptic', 'Armenian', 'Cherokee', 'Lisu'] as const

/** A script of which some letters look like those of another. */
export type ScriptAlike = (typeof SCRIPTS_ALIKE)[number]

/**
 * Capitals and digits in which a reader sees the first of the row: of other scripts, and the two letters that stand for
 * digits. Only shapes that are the same in ordinary print are here; written by code, because on the page they are alike.
 */
const SEEN_AS: readonly (readonly [seen: string, alike: string])[] = [
  ['A', '\u0391\u0410\u13AA\uA4EE'],
  ['B', '\u0392\u0412\u13F4\uA4D0'],
  ['C', '\u0421\u2CA4\u13DF\uA4DA'],
  ['D', '\u13A0\uA4D3'],
  ['E', '\u0395\u0415\u13AC\uA4F0'],
  ['F', '\u03DC\uA4DD'],
  ['G', '\u050C\u13C0\uA4D6'],
  ['H', '\u0397\u041D\u2C8E\u13BB\uA4E7'],
  ['1', 'I\u0399\u0406\u04C0\u2C92\uA4F2'],
  ['J', '\u037F\u0408\u13AB\uA4D9'],
  ['K', '\u039A\u041A\u2C94\u13E6\uA4D7'],
  ['L', '\u13DE\u053C\uA4E1'],
  ['M', '\u039C\u041C\u2C98\u13B7\uA4DF'],
  ['N', '\u039D\u2C9A\uA4E0'],
  ['0', 'O\u039F\u041E\u0555\u2C9E\uA4F3'],
  ['P', '\u03A1\u0420\u2CA2\u13E2\uA4D1'],
  ['Q', '\u051A'],
  ['R', '\u13A1\uA4E3'],
  ['S', '\u0405\u054F\u13DA\uA4E2'],
  ['T', '\u03A4\u0422\u2CA6\u13A2\uA4D4'],
  ['U', '\u054D\uA4F4'],
  ['V', '\u0474\u13D9\uA4E6'],
  ['W', '\u051C\u13B3\uA4EA'],
  ['X', '\u03A7\u0425\u2CAC\uA4EB'],
  ['Y', '\u03A5\u04AE\u2CA8\uA4EC'],
  ['Z', '\u0396\u13C3\uA4DC'],
]

/** Signs that are no dash to Unicode and one to a reader: minus signs, rules, strokes of other scripts. */
const DASHES =
  /[\p{Pd}\u02D7\u06D4\u1173\u2043\u2212\u23AF\u2500\u2501\u2796\u2CBA\u30FC\u3161\u4E00\u{10191}]/gu

const SEEN = new Map(
  SEEN_AS.flatMap(([seen, alike]) => Array.from(alike, (letter) => [letter, seen] as const)),
)

const OF_SCRIPT = SCRIPTS_ALIKE.map((script) => [script, new RegExp(`\\p{Script=${script}}`, 'u')] as const)

/** A text in capitals as a reader sees it: one kind of dash, and one letter or digit for each shape. */
export function asSeen(capitals: string): string {
  return Array.from(capitals.replace(DASHES, '-'), (letter) => SEEN.get(letter) ?? letter).join('')
}

/** Which of the scripts that look alike a text has letters of. */
export function scriptsAlikeIn(text: string): ScriptAlike[] {
  const plain = text.normalize('NFKC')
  return OF_SCRIPT.flatMap(([script, pattern]) => (pattern.test(plain) ? [script] : []))
}
