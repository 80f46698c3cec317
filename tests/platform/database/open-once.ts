// Opens the database of the environment, says in one line what came of it, and closes. Run as a process of its own.
import { openDatabase } from '../../../lib/platform/database/open-database.ts'
import { DatabaseRefused } from '../../../lib/platform/database/refusal.ts'
import { readSettings } from '../../../lib/platform/database/settings.ts'

async function run(): Promise<object> {
  const settings = readSettings(process.env)
  if (!settings.ok) return { wrong: settings.problem }
  const said: string[] = []
  try {
    const open = await openDatabase(settings.value.database, (line) => said.push(line))
    await open.close()
    return { opened: open.dataFolder, said }
  } catch (error) {
    if (error instanceof DatabaseRefused) return { refused: error.trouble, message: error.message }
    throw error
  }
}

void run().then((line) => console.log(JSON.stringify(line)))
