import type { Readable } from 'node:stream'
import { finished } from 'node:stream/promises'
import { Worker } from 'node:worker_threads'
import yauzl from 'yauzl'
import { withoutGuard } from '../../wording/csv.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'

/** Why bytes are no workbook that is read here. Data, never sentences. */
export type WorkbookFault =
  | { kind: 'not-a-workbook' }
  | { kind: 'inflates-too-far'; bytes: number; most: number }
  | { kind: 'too-many-parts'; parts: number; most: number }
  | { kind: 'no-such-sheet'; sheet: string; sheets: readonly string[] }
  | { kind: 'took-too-long'; seconds: number }
  | { kind: 'needs-too-much-memory' }
  | { kind: 'too-many-rows'; rows: number; most: number }

/** The table of one sheet of a workbook, and what its sheets are called. */
export type WorkbookTable = {
  sheet: string
  sheets: readonly string[]
  table: readonly (readonly string[])[]
}

/** A workbook of twenty thousand rows inflates to some 20 MB. */
const MOST_INFLATED = 120 * 1024 * 1024
const MOST_RATIO = 200
const MOST_PARTS = 2000
const SECONDS = 30
const HEAP_MEGABYTES = 256

/**
 * Reads one sheet of a workbook: the one named, or the first. The directory of the zip is looked at before anything is
 * inflated, and the reading runs in a thread of its own with limits of time and memory.
 */
export async function readWorkbook(
  bytes: Uint8Array,
  sheet: string | undefined,
  mostRows: number,
): Promise<Result<WorkbookTable, WorkbookFault>> {
  const fault = await directoryFault(bytes)
  if (fault !== undefined) return refusal(fault)
  return inWorker(bytes, sheet, mostRows)
}

/** What the directory of the zip promises; a reader that inflates more than that stops by itself. */
async function directoryFault(bytes: Uint8Array): Promise<WorkbookFault | undefined> {
  let parts = 0
  let inflated = 0
  let isWorkbook = false
  try {
    const zip = await yauzl.fromBufferPromise(Buffer.from(bytes), {
      lazyEntries: true,
      validateEntrySizes: true,
    })
    if (zip.entryCount > MOST_PARTS)
      return { kind: 'too-many-parts', parts: zip.entryCount, most: MOST_PARTS }
    for await (const entry of zip.eachEntry()) {
      parts += 1
      inflated += entry.uncompressedSize
      if (entry.fileName === 'xl/workbook.xml') isWorkbook = true
      const most = Math.min(MOST_INFLATED, Math.max(1024 * 1024, bytes.length * MOST_RATIO))
      if (inflated > most) return { kind: 'inflates-too-far', bytes: inflated, most }
      // The directory may lie: each part is inflated once, nothing of it is kept, and more than it promised is refused.
      if (!entry.fileName.endsWith('/')) await drained(await zip.openReadStreamPromise(entry))
    }
  } catch {
    return { kind: 'not-a-workbook' }
  }
  return parts > 0 && isWorkbook ? undefined : { kind: 'not-a-workbook' }
}

async function drained(stream: Readable): Promise<void> {
  stream.resume()
  await finished(stream)
}

type Answer =
  | { kind: 'table'; sheet: string; sheets: string[]; table: string[][] }
  | { kind: 'no-such-sheet'; sheets: string[] }
  | { kind: 'too-many-rows'; rows: number }
  | { kind: 'not-a-workbook' }

function inWorker(
  bytes: Uint8Array,
  sheet: string | undefined,
  mostRows: number,
): Promise<Result<WorkbookTable, WorkbookFault>> {
  return new Promise((resolve) => {
    const worker = new Worker(new URL('workbook-worker.mjs', import.meta.url), {
      resourceLimits: { maxOldGenerationSizeMb: HEAP_MEGABYTES },
    })
    const end = (result: Result<WorkbookTable, WorkbookFault>) => {
      clearTimeout(timer)
      void worker.terminate()
      resolve(result)
    }
    const timer = setTimeout(() => end(refusal({ kind: 'took-too-long', seconds: SECONDS })), SECONDS * 1000)
    worker.once('error', (error) => {
      const code = 'code' in error ? error.code : undefined
      end(refusal({ kind: code === 'ERR_WORKER_OUT_OF_MEMORY' ? 'needs-too-much-memory' : 'not-a-workbook' }))
    })
    worker.once('message', (answer: Answer) => {
      switch (answer.kind) {
        case 'table':
          // CSV of ours that was saved as a workbook still has what kept its cells from being formulas.
          end(
            success({
              sheet: answer.sheet,
              sheets: answer.sheets,
              table: answer.table.map((cells) => cells.map(withoutGuard)),
            }),
          )
          return
        case 'no-such-sheet':
          end(refusal({ kind: 'no-such-sheet', sheet: sheet ?? '', sheets: answer.sheets }))
          return
        case 'too-many-rows':
          end(refusal({ kind: 'too-many-rows', rows: answer.rows, most: mostRows }))
          return
        case 'not-a-workbook':
          end(refusal({ kind: 'not-a-workbook' }))
      }
    })
    worker.postMessage({ bytes, sheet, mostRows })
  })
}
