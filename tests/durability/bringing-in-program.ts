import { bringInSheet } from '../../lib/usecases/sheets/bring-in-sheet.ts'
import { callAny } from '../builders/call-any.ts'
import { openOnDatabase } from '../builders/test-runtime.ts'
import { MARIT, sheetCalls } from '../usecases/sheets/sheet-calls.ts'

// Run by killed-import.test.ts: brings in the sheet that it names, out of a database that it names, and says how it ended.
const [url = '', sheet = ''] = process.argv.slice(2)
const runtime = await openOnDatabase(url)
try {
  const { digest } = await sheetCalls({ runtime }).tried(sheet)
  const outcome = await callAny(runtime, bringInSheet, { sheet, plan: digest }, MARIT)
  console.log(outcome.kind)
} catch (error) {
  console.log(`broke: ${error instanceof Error ? error.message : String(error)}`)
} finally {
  await runtime.store.close()
}
