import { beforeAll, expect, it } from 'vitest'
import { buildTestPages, freePort } from '../builders/built-pages.ts'
import { freshDataFolder } from '../durability/data-folder.ts'
import {
  bareStart,
  health,
  IS_UP,
  linkIn,
  npmStart,
  page,
  refusalOf,
  settings,
  stopByInterrupt,
} from './npm-start.ts'
import { exampleText, fileBeside, pastProgramText } from './past-program.ts'

beforeAll(buildTestPages, 400_000)

const PAST_ENTRIES = 5

it('[P11] npm start -- --empty is interrupted while it makes the database, begins again, and its link answers', async () => {
  const folder = freshDataFolder()
  const port = await freePort()
  const broken = npmStart(settings(folder, port), '--empty')
  await broken.prints('A fresh database is made')
  await stopByInterrupt(broken, folder)

  const started = npmStart(settings(folder, port), '--empty')
  await started.prints(/\/begin\/\S+\n/)
  await started.prints(IS_UP)
  expect(started.printed()).toContain('There is no program in it yet.\n')
  expect(started.printed()).toContain('Begin here; the link works once, within a day: ')
  expect(started.printed()).not.toContain('invented')
  expect(await health(port)).toMatchObject({ status: 'up', journal: { entry: 0 } })
  const { status, text } = await page(linkIn(started.printed()))
  expect({ status, isTheForm: text.includes('Found the program') }).toEqual({ status: 200, isTheForm: true })
  await stopByInterrupt(started, folder)

  // Left out, the option still holds: an invented program, whose password everybody knows, is not for this database.
  const again = npmStart(settings(folder, port))
  await again.prints(IS_UP)
  expect(again.printed()).not.toContain('invented')
  expect(await health(port)).toMatchObject({ status: 'up', journal: { entry: 0 } })
  expect(linkIn(again.printed())).not.toBe(linkIn(started.printed()))
  await stopByInterrupt(again, folder)
}, 300_000)

it('[P11] npm start -- --from: a file is refused whole, or brought in whole; then none can be begun with', async () => {
  const folder = freshDataFolder()
  const port = await freePort()
  const future = fileBeside(folder, 'future.json', exampleText())
  const past = fileBeside(folder, 'past.json', pastProgramText())

  const early = await refusalOf(bareStart(settings(folder, port), '--from', future), folder)
  expect(early).toMatch(
    /^Entry 5 of the file is stated as of .*, which is still to come\. Nothing was brought in\.$/m,
  )

  const started = npmStart(settings(folder, port), '--from', past)
  await started.prints(IS_UP)
  expect(started.printed()).toContain(`Brought in ${PAST_ENTRIES} entries.\n`)
  expect(started.printed()).toContain('Nobody manages this program yet.\n')
  expect(await health(port)).toMatchObject({ status: 'up', journal: { entry: PAST_ENTRIES } })
  const { status, text } = await page(linkIn(started.printed()))
  expect({ status, isItsName: text.includes('Fernhollow Trail Saws') }).toEqual({
    status: 200,
    isItsName: true,
  })
  await stopByInterrupt(started, folder)

  for (const words of [['--from', past], ['--empty']]) {
    const refused = await refusalOf(bareStart(settings(folder, port), ...words), folder)
    expect(refused).toBe(
      `This database has ${PAST_ENTRIES} entries already, so it cannot begin anew. Leave the option out to go on with it, or name another folder by KERFBOOK_DATA.\n`,
    )
  }

  // Left out, it goes on with what it has; the demonstration stays out.
  const again = npmStart(settings(folder, port))
  await again.prints(IS_UP)
  expect(await health(port)).toMatchObject({ status: 'up', journal: { entry: PAST_ENTRIES } })
  expect(linkIn(again.printed())).not.toBe(linkIn(started.printed()))
  await stopByInterrupt(again, folder)
}, 300_000)
