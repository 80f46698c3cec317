/** One thing to put right: the name of the field (empty for the whole form) and a sentence. */
export type FormProblem = { field: string; message: string }

/** A part of what a form tells before it is done: its heading, and a line for each thing. */
export type ToldSection = { title: string; lines: readonly string[] }

/** One field as it is now on record and as it was typed; empty where it is left out. */
export type Beside = { label: string; here: string; typed: string }

/** How a form stands between two tries. What was typed comes back with it, all but passwords. */
export type FormState = {
  /** The id of the command that the next try sends; a repeat of the same try is one command. */
  command: string
  /** How many tries there were; the form is drawn afresh after each. */
  tries: number
  problems: readonly FormProblem[]
  /** A refusal that belongs to no field. */
  refusal?: string
  values: Readonly<Record<string, string>>
  /** The password was given too long ago: the form asks for it beside the rest. */
  wantsPassword?: true
  /** What it would change, told before it is done; the next try does it where nothing else was typed since. */
  told?: readonly ToldSection[]
  /** What somebody else put on record meanwhile, beside what was typed here. */
  beside?: readonly Beside[]
  /** It was done, and what there is to say of it stands in place of the form. */
  isDone?: true
}

/** What a form does with what was typed. */
export type FormAction = (state: FormState, typed: FormData) => Promise<FormState>

/** The id of a field on the page, which the error summary links to. */
export function fieldId(name: string): string {
  return `field-${name.replaceAll('.', '-')}`
}
