/**
 * Characters that steer a terminal or turn the reading order: control characters, line separators, and the marks that
 * override or isolate the direction of text.
 */
// eslint-disable-next-line no-control-regex -- control characters are what this takes out
const STEERING = /[\u0000-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]/g
const LINE_ENDS = /[\t\r\n]+/g

/**
 * A text that is safe to show on one line of a terminal: tabs and line ends become a space, so that no text from a
 * file can pass for a line of the answer, and what steers is shown as the replacement character.
 */
export function printableLine(text: string): string {
  return text.replace(LINE_ENDS, ' ').replace(STEERING, '\ufffd')
}

/** Lines as the text of an answer, each safe to show and ended by a line feed. */
export function printableText(lines: readonly string[]): string {
  return lines.map((line) => `${printableLine(line)}\n`).join('')
}
