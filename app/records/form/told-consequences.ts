import type { Consequences } from '../../../lib/usecases/records/consequences.ts'
import { changedStandingText } from '../../../lib/wording/consequences.ts'
import { dayText, momentText } from '../../../lib/wording/days.ts'
import type { Names } from '../../../lib/wording/names.ts'
import type { ToldSection } from '../../_parts/form-state.ts'

/** From how many people on their number is told first. */
const MANY = 5

/** How many changes of one person are told; the others are counted. */
const MOST_OF_ONE = 6

/** What a change would do, told before it is made: who would stand otherwise, and which kept answers would be others. */
export function toldConsequences(would: Consequences, names: Names): ToldSection[] {
  return [
    ...standings(would, names),
    {
      title: 'Answers that were kept',
      lines: [
        ...would.kept.map(
          ({ at, question, today, persons }) =>
            `Kept ${momentText(at)}, ${dayText(today)}: ${aboutText(persons.length)}${'item' in question.work ? `, ${names.item(question.work.item)}` : ''}. Asked again now it would say something else; the kept one stays as it was given.`,
        ),
        ...(would.otherKept === 0
          ? []
          : [
              `${would.otherKept} more, about people beyond your reach, would say something else when asked again.`,
            ]),
        ...(would.kept.length + would.otherKept === 0 ? ['None would say anything else.'] : []),
        ...(would.keptAsked === would.keptAll
          ? []
          : [
              `The ${would.keptAsked} kept last were asked again, of ${would.keptAll}; answers as known at an entry never change.`,
            ]),
      ],
    },
  ]
}

function standings(would: Consequences, names: Names): ToldSection[] {
  const rest = [
    ...(would.more === 0 ? [] : [`${would.more} more within your reach would stand otherwise.`]),
    ...(would.others === 0 ? [] : [`${would.others} beyond your reach would stand otherwise.`]),
    ...(would.items
      ? []
      : ['Logs and trees were not looked at one by one: there are too many for all who work here.']),
  ]
  if (would.people.length === 0)
    return [
      {
        title: 'Who would stand otherwise',
        lines: [
          ...(would.others === 0
            ? ['Nobody, on any day from three months ago through the next fifteen months.']
            : []),
          ...rest,
        ],
      },
    ]
  return [
    ...(would.people.length <= MANY
      ? []
      : [
          {
            title: `${would.people.length + would.more} people within your reach would stand otherwise`,
            lines: ['Open a name to see what of theirs.'],
          },
        ]),
    ...would.people.map(({ name, changed }) => ({
      title: name,
      lines: [
        ...changed.slice(0, MOST_OF_ONE).map((one) => changedStandingText(one, names)),
        ...(changed.length > MOST_OF_ONE
          ? [`And ${changed.length - MOST_OF_ONE} more logs, trees or kinds of work.`]
          : []),
      ],
    })),
    ...(rest.length === 0 ? [] : [{ title: 'And others', lines: rest }]),
  ]
}

function aboutText(count: number): string {
  return count === 1 ? 'about one person' : `about ${count} people`
}
