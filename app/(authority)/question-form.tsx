import type { ReactNode } from 'react'
import type { CalendarDate } from '../../lib/core/calendar/dates.ts'
import { COMPLEXITIES, SAW_KINDS, WORK_KINDS } from '../../lib/core/rulebooks/words.ts'
import type { PeopleToAsk } from '../../lib/usecases/authority/people-to-ask.ts'
import type { ItemToAsk, PlaceToAsk } from '../../lib/usecases/authority/what-to-ask.ts'
import { dayText, spanText, weekdayText } from '../../lib/wording/days.ts'
import { complexityWords, sawKindWords, workKindVerbs } from '../../lib/wording/work-words.ts'
import { readDay } from '../../lib/wording/read-day.ts'
import type { FormProblem } from '../_parts/form-state.ts'
import { ErrorSummary } from '../_parts/error-summary.client.tsx'
import { apart } from '../_parts/said.tsx'
import { ChoiceBlank, TextBlank } from './blanks.tsx'
import { CrewChoice } from './crew-choice.tsx'
import type { BlankName, TypedWords } from './typed-question.ts'

const WORK = WORK_KINDS.map((value) => ({ value, label: workKindVerbs[value] }))

const COMPLEXITY = [
  { value: '', label: 'how complex?' },
  ...COMPLEXITIES.map((value) => ({ value, label: complexityWords[value] })),
]

const SAWS = SAW_KINDS.map((value) => ({ value, label: sawKindWords[value] }))

const HANDS = [
  { value: '', label: 'not said' },
  { value: 'one', label: 'one person' },
  { value: 'two', label: 'two people' },
]

/** The question as a sentence with blanks. It asks by the address, so that it can be sent and kept. */
export function QuestionForm({
  typed,
  problems,
  refusal,
  places,
  items,
  people,
}: {
  typed: TypedWords
  problems: readonly FormProblem[]
  /** A refusal that belongs to no blank. */
  refusal?: string
  places: readonly PlaceToAsk[]
  items: readonly ItemToAsk[]
  /** Those of whom a crew can be made. */
  people: PeopleToAsk
}) {
  const blank = (name: BlankName) => ({ name, value: typed[name], problems })
  const isItem = typed.item.trim() !== ''
  return (
    <form className="question" action="/" method="get" noValidate aria-label="The question">
      <ErrorSummary
        state={{
          command: '',
          tries: 1,
          problems,
          values: {},
          ...(refusal === undefined ? {} : { refusal }),
        }}
      />
      <div className="say">
        <Unit>
          Who may <ChoiceBlank {...blank('work')} label="work" options={WORK} />
        </Unit>
        <Unit>
          <TextBlank {...blank('across')} label="inches across" letters={4} /> in across,
        </Unit>
        <Unit>
          <ChoiceBlank {...blank('complexity')} label="complexity" options={COMPLEXITY} />
        </Unit>
        <Unit>
          with <ChoiceBlank {...blank('saw')} label="saw" options={SAWS} />
        </Unit>
        <Unit>
          from <TextBlank {...blank('first')} label={dayLabel('first day', typed.first)} letters={11} />
        </Unit>
        <Unit>
          to <TextBlank {...blank('last')} label={dayLabel('last day', typed.last)} letters={11} />
        </Unit>
        <Unit>
          at{' '}
          <ChoiceBlank
            {...blank('place')}
            label="place"
            options={[
              { value: '', label: 'a place not named' },
              ...places.map(({ id, name }) => ({ value: id, label: name })),
            ]}
          />
          ?
        </Unit>
      </div>
      <details className="more-blanks" open={isOpen(typed, problems)}>
        <summary>
          More to say: people on the saw, species, a log or tree on record, what was known when
        </summary>
        <div className="row">
          <ChoiceBlank {...blank('hands')} label="people on the saw" options={HANDS} />
          <TextBlank {...blank('species')} label="species" letters={14} />
          <TextBlank {...blank('item')} label="log, tree or expected work, by id" letters={22} list="items" />
          <TextBlank {...blank('known')} label="as known at an entry, a day or a moment" letters={18} />
        </div>
        <datalist id="items">
          {items.map(({ id, name, first, last }) => (
            <option key={id} value={id}>
              {first === undefined || last === undefined
                ? name
                : `${apart(name)}, ${spanText({ first, last })}`}
            </option>
          ))}
        </datalist>
        <p className="hint">
          What is on record says its own work, size, complexity and place, and mostly its days: then those
          blanks are left aside. Days may be past. “As known” leaves out what was recorded later: 60 is entry
          60, and a day means its end.
        </p>
      </details>
      <CrewChoice typed={typed} problems={problems} people={people} />
      {typed.person.trim() === '' ? null : (
        <p className="only">
          <TextBlank {...blank('person')} label="about one person alone, by id" letters={22} />
        </p>
      )}
      <div className="row">
        <button type="submit" className="button main">
          Ask
        </button>
        {isItem ? <p className="small">Asked about what is on record as {typed.item}.</p> : null}
      </div>
    </form>
  )
}

/** Words that stay together on a line. */
function Unit({ children }: { children: ReactNode }) {
  return <span className="unit">{children}</span>
}

function dayLabel(label: string, typed: string): string {
  const day = readDay(typed)
  return day.ok ? `${label}, ${weekdayText(day.value)}` : label
}

const MORE_BLANKS: readonly BlankName[] = ['hands', 'species', 'item', 'known']

function isOpen(typed: TypedWords, problems: readonly FormProblem[]): boolean {
  return MORE_BLANKS.some((name) => typed[name].trim() !== '' || problems.some(({ field }) => field === name))
}

/** The blanks of a question that nobody has asked yet: the commonest work, today. */
export function suggestedWords(typed: TypedWords, today: CalendarDate): TypedWords {
  return { ...typed, work: 'bucking', saw: 'crosscut', first: dayText(today), last: dayText(today) }
}
